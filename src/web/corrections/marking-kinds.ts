import type { Assessment } from '../../domain/assessment/assessment.js';
import { britishDate } from '../../domain/calendar/british-date.js';
import { londonTime } from '../../domain/calendar/london-time.js';
import type { Referral } from '../../domain/referral/referral.js';
import { DIAGNOSIS_WORDS, SOURCE_WORDS } from '../../domain/referral/words.js';
import { STAGE_WORDS } from '../../domain/referral/step-words.js';
import { done } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { getAssessment } from '../../usecases/assessments/record-assessment.js';
import type { Context, TeamMember } from '../../usecases/context.js';
import { markAssessmentInError, restoreAssessment } from '../../usecases/corrections/assessment-in-error.js';
import { namedMarks } from '../../usecases/corrections/named-mark.js';
import { markReferralInError, restoreReferral } from '../../usecases/corrections/referral-in-error.js';
import { TIMEPOINT_WORDS } from '../assessment-entry/words.js';
import { capital } from '../components/words.js';
import { nhsNumberWords } from '../people/person-words.js';
import { loadReferral } from '../steps/load-referral.js';
import type { MarkableEntry, Marking } from './marking.js';

export const REFERRAL_MARKING: Marking = {
  pageId: 'page:referral-in-error',
  root: '/referrals',
  consequence:
    'The referral stays readable and visibly marked. It, its assessments and its attendances count in no figure, outcome, letter or work list until it is restored.',
  load: loadReferralEntry,
  mark: async (...change) => seenAt(await markReferralInError(...change), seenReferral),
  restore: async (...change) => seenAt(await restoreReferral(...change), seenReferral),
};

export const ASSESSMENT_MARKING: Marking = {
  pageId: 'page:assessment-in-error',
  root: '/assessments',
  consequence:
    'The assessment stays readable and visibly marked. None of its tests and questionnaires counts in a figure, outcome, letter or work list until it is restored. This is for one that should not be there at all, such as that of another person; a wrong value is corrected.',
  load: loadAssessmentEntry,
  mark: async (...change) => seenAt(await markAssessmentInError(...change), seenAssessment),
  restore: async (...change) => seenAt(await restoreAssessment(...change), seenAssessment),
};

async function loadReferralEntry(
  context: Context,
  actor: TeamMember,
  id: string,
): Promise<Outcome<MarkableEntry>> {
  const read = await loadReferral(context, actor, id);
  if (read.kind === 'refused') return read;
  const { referral, patient, stage } = read.value;
  const [mark = null] = await namedMarks(context, [referral.enteredInError]);
  return done({
    words: `referral of ${britishDate(referral.receivedOn)}`,
    version: referral.version,
    mark,
    person: patient,
    facts: [
      { term: 'Born', value: britishDate(patient.bornOn) },
      { term: 'NHS number', value: nhsNumberWords(patient) },
      { term: 'Received', value: `${britishDate(referral.receivedOn)}, ${SOURCE_WORDS[referral.source]}` },
      { term: 'Diagnosis', value: capital(DIAGNOSIS_WORDS[referral.diagnosis]) },
      { term: 'Stage', value: capital(STAGE_WORDS[stage]) },
    ],
    seenAt: seenReferral(referral),
  });
}

async function loadAssessmentEntry(
  context: Context,
  actor: TeamMember,
  id: string,
): Promise<Outcome<MarkableEntry>> {
  const read = await getAssessment(context, actor, id);
  if (read.kind === 'refused') return read;
  const { entry, referralId, version, enteredInError, recordedAt } = read.value;
  const of = await loadReferral(context, actor, referralId);
  if (of.kind === 'refused') return of;
  const { referral, patient } = of.value;
  const [mark = null] = await namedMarks(context, [enteredInError]);
  return done({
    words: `${TIMEPOINT_WORDS[entry.timepoint]} of ${britishDate(entry.assessedOn)}`,
    version,
    mark,
    person: patient,
    facts: [
      { term: 'Born', value: britishDate(patient.bornOn) },
      { term: 'Referral', value: `received on ${britishDate(referral.receivedOn)}` },
      { term: 'Assessed', value: britishDate(entry.assessedOn) },
      { term: 'This version', value: `number ${version}, ${londonTime(recordedAt)}` },
    ],
    seenAt: seenAssessment(read.value),
  });
}

function seenAt<Changed>(outcome: Outcome<Changed>, of: (changed: Changed) => string): Outcome<string> {
  return outcome.kind === 'refused' ? outcome : done(of(outcome.value));
}

function seenReferral({ id }: Referral): string {
  return `/referrals/${id}`;
}

function seenAssessment({ referralId }: Assessment): string {
  return `/referrals/${referralId}#assessments`;
}
