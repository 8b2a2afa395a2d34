import type { Assessment } from '../../domain/assessment/assessment.js';
import { britishDate } from '../../domain/calendar/british-date.js';
import { londonTime } from '../../domain/calendar/london-time.js';
import type { Referral } from '../../domain/referral/referral.js';
import { DIAGNOSIS_WORDS, SOURCE_WORDS } from '../../domain/referral/words.js';
import { OFFER_WORDS, RESPONSE_WORDS, STAGE_WORDS } from '../../domain/referral/step-words.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { getAssessment } from '../../usecases/assessments/record-assessment.js';
import type { Context, TeamMember } from '../../usecases/context.js';
import { namedMarks } from '../../usecases/corrections/named-mark.js';
import { sitesOfTeam } from '../../usecases/providers.js';
import { getSession } from '../../usecases/sessions/keep-register.js';
import type { SessionRegister } from '../../usecases/sessions/keep-register.js';
import { TIMEPOINT_WORDS } from '../assessment-entry/words.js';
import { dayWords, kindWords, registerWords } from '../classes/class-words.js';
import { capital } from '../components/words.js';
import { nhsNumberWords } from '../people/person-words.js';
import { loadReferral } from '../steps/load-referral.js';
import type { MarkableEntry, MarkingParams } from './marking.js';

/** A referral as it is marked. */
export async function loadReferralEntry(
  context: Context,
  actor: TeamMember,
  { id }: MarkingParams,
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

/** An assessment as it is marked. */
export async function loadAssessmentEntry(
  context: Context,
  actor: TeamMember,
  { id }: MarkingParams,
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

/** An offer as it is marked; its version is that of its referral. */
export async function loadOfferEntry(
  context: Context,
  actor: TeamMember,
  { id, referralId }: MarkingParams,
): Promise<Outcome<MarkableEntry>> {
  const read = await loadReferral(context, actor, referralId);
  if (read.kind === 'refused') return read;
  const { referral, patient } = read.value;
  const offer = referral.offers.find((each) => each.id === id);
  if (offer === undefined) return refused({ code: 'not-found', what: 'offer' });
  const [mark = null] = await namedMarks(context, [offer.enteredInError]);
  const { kind, offeredOn, appointmentOn, response } = offer;
  return done({
    words: `offer of ${britishDate(offeredOn)}: ${OFFER_WORDS[kind]}`,
    version: referral.version,
    mark,
    person: patient,
    facts: [
      { term: 'Born', value: britishDate(patient.bornOn) },
      { term: 'For the day', value: appointmentOn === null ? 'none' : britishDate(appointmentOn) },
      { term: 'Answer', value: RESPONSE_WORDS[response] },
    ],
    seenAt: seenOffers(referral),
  });
}

/** A class as it is marked, its register with it. */
export async function loadSessionEntry(
  context: Context,
  actor: TeamMember,
  { id }: MarkingParams,
): Promise<Outcome<MarkableEntry>> {
  const read = await getSession(context, actor, id);
  if (read.kind === 'refused') return read;
  const session = read.value;
  const sites = await sitesOfTeam(context, actor);
  const [mark = null] = await namedMarks(context, [session.enteredInError]);
  return done({
    words: `class of ${dayWords(session.heldOn)}`,
    version: session.version,
    mark,
    person: null,
    facts: [
      { term: 'Site', value: sites.find((site) => site.id === session.siteId)?.name ?? '' },
      { term: 'Delivered', value: kindWords(session) },
      { term: 'Register', value: registerWords(session.attendances) || 'nobody stands on it' },
    ],
    seenAt: seenClass(session),
  });
}

/** Where a referral is seen. */
export function seenReferral({ id }: Referral): string {
  return `/referrals/${id}`;
}

/** Where an assessment is seen: on the page of its referral. */
export function seenAssessment({ referralId }: Assessment): string {
  return `/referrals/${referralId}#assessments`;
}

/** Where the offers of a referral are seen. */
export function seenOffers({ id }: Referral): string {
  return `/referrals/${id}/offers`;
}

/** Where a class is seen. */
export function seenClass({ id }: SessionRegister): string {
  return `/classes/${id}`;
}
