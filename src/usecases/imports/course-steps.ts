import type { Assessment, AssessmentEntry } from '../../domain/assessment/assessment.js';
import { changedValues } from '../../domain/audit/changed-values.js';
import type { Sourced } from '../../domain/imports/course-draft.js';
import type { ImportedKind } from '../../domain/imports/import-record.js';
import type { Closure, Triage } from '../../domain/referral/referral.js';
import type { Outcome, Refusal } from '../../domain/refusal/refusal.js';
import { checkSessionCounts } from '../../domain/session/session-counts.js';
import type { SessionCounts } from '../../domain/session/session-counts.js';
import { assessmentsOfReferral } from '../../storage/assessments/assessments.js';
import type { Executor } from '../../storage/connection.js';
import { courseOfReferral } from '../../storage/referrals/referral-dates.js';
import { findReferral } from '../../storage/referrals/referrals.js';
import { countedSessionsOfReferral, insertCountedSessions } from '../../storage/sessions/counted-sessions.js';
import { lastContactOn } from '../../storage/sessions/sessions.js';
import { recordEvent } from '../audit/record-event.js';
import { recordAssessment } from '../assessments/record-assessment.js';
import type { Context, TeamMember } from '../context.js';
import { closeReferral, triageReferral } from '../referrals/change-referral.js';
import { sameAssessment } from './same-assessment.js';

/** What became of one part of a course. */
export type StepResult =
  | { readonly kind: 'written'; readonly subjectId: string }
  | { readonly kind: 'already' }
  | { readonly kind: 'refused'; readonly refusal: Refusal };

/** One part of a course on its way into the record. */
export interface Step {
  readonly kind: ImportedKind;
  readonly part: Sourced<object>;
  readonly run: (
    context: Context,
    actor: TeamMember,
    trx: Executor,
    referralId: string,
  ) => Promise<StepResult>;
}

const ALREADY: StepResult = { kind: 'already' };
const NO_REFERRAL: StepResult = { kind: 'refused', refusal: { code: 'not-found', what: 'referral' } };

/** Brings in a triage decision. */
export function triageStep(triage: Sourced<Triage>): Step {
  return {
    kind: 'triage',
    part: triage,
    run: async (context, actor, trx, referralId) => {
      const referral = await findReferral(trx, actor.teamId, referralId);
      if (referral === null) return NO_REFERRAL;
      const { triage: known } = referral;
      if (known === null) {
        return written(
          await triageReferral(context, actor, referralId, {
            ...triage.part,
            mrcGrade: null,
            basedOn: [referral.version],
          }),
          referralId,
        );
      }
      const isSame = known.decision === triage.part.decision && known.decidedOn === triage.part.decidedOn;
      return isSame ? ALREADY : differs('/decision', 'The record has another triage decision.');
    },
  };
}

/** Brings in an assessment. */
export function assessmentStep(assessment: Sourced<AssessmentEntry>, confirmsUnusual: boolean): Step {
  const { part: entry } = assessment;
  return {
    kind: 'assessment',
    part: assessment,
    run: async (context, actor, trx, referralId) => {
      const others = await assessmentsOfReferral(trx, referralId);
      const known = others.filter(
        (other) => other.entry.timepoint === entry.timepoint && other.entry.assessedOn === entry.assessedOn,
      );
      if (known.some((each) => sameAssessment(each, entry))) return ALREADY;
      if (known.length > 0) {
        return differs('/assessedOn', 'The record has other values for the assessment of this day.');
      }
      const atSite = entry.siteId === '' ? await withSiteOf(actor, trx, referralId, entry) : entry;
      const outcome = await recordAssessment(context, actor, referralId, atSite);
      if (!confirmsUnusual || outcome.kind !== 'refused' || outcome.refusal.code !== 'please-check') {
        return writtenAssessment(outcome);
      }
      const confirmed = outcome.refusal.faults.map(({ pointer }) => pointer);
      return writtenAssessment(await recordAssessment(context, actor, referralId, { ...atSite, confirmed }));
    },
  };
}

/** Brings in the counts of sessions. */
export function sessionsStep(sessions: Sourced<SessionCounts>): Step {
  const { part: counts } = sessions;
  return {
    kind: 'sessions',
    part: sessions,
    run: async (context, actor, trx, referralId) => {
      const course = await courseOfReferral(trx, actor.teamId, referralId);
      if (course === null) return NO_REFERRAL;
      const known = await countedSessionsOfReferral(trx, referralId);
      if (known !== null) {
        return JSON.stringify(known) === JSON.stringify(counts)
          ? ALREADY
          : differs('/attended', 'The record has other counts of sessions.');
      }
      if ((await lastContactOn(trx, referralId)) !== null) {
        return differs(
          '/attended',
          'The record has registers of sessions for this referral, and takes no counts beside them.',
        );
      }
      const faults = checkSessionCounts(counts, { ...course, today: context.clock.today() });
      if (faults.length > 0) return { kind: 'refused', refusal: { code: 'rules-broken', faults } };
      await insertCountedSessions(trx, {
        referralId,
        teamId: actor.teamId,
        counts,
        now: context.clock.now(),
        accountId: actor.accountId,
      });
      await recordEvent(context, trx, actor, {
        action: 'sessions-counted',
        patientId: course.patientId,
        referralId,
        details: { changes: changedValues({}, counts, []) },
      });
      return { kind: 'written', subjectId: referralId };
    },
  };
}

/** Brings in a closure. */
export function closureStep(closure: Sourced<Closure>): Step {
  return {
    kind: 'closure',
    part: closure,
    run: async (context, actor, trx, referralId) => {
      const referral = await findReferral(trx, actor.teamId, referralId);
      if (referral === null) return NO_REFERRAL;
      const { closure: known } = referral;
      if (known === null) {
        return written(
          await closeReferral(context, actor, referralId, {
            ...closure.part,
            exercisePlanGivenOn: null,
            basedOn: [referral.version],
          }),
          referralId,
        );
      }
      const isSame = known.closedOn === closure.part.closedOn && known.reason === closure.part.reason;
      return isSame ? ALREADY : differs('/closedOn', 'The record has another closure.');
    },
  };
}

async function withSiteOf(
  actor: TeamMember,
  trx: Executor,
  referralId: string,
  entry: AssessmentEntry,
): Promise<AssessmentEntry> {
  const referral = await findReferral(trx, actor.teamId, referralId);
  return { ...entry, siteId: referral?.siteId ?? entry.siteId };
}

function written(outcome: Outcome<unknown>, subjectId: string): StepResult {
  return outcome.kind === 'refused' ? outcome : { kind: 'written', subjectId };
}

function writtenAssessment(outcome: Outcome<Assessment>): StepResult {
  return outcome.kind === 'refused' ? outcome : { kind: 'written', subjectId: outcome.value.id };
}

function differs(pointer: string, message: string): StepResult {
  return {
    kind: 'refused',
    refusal: { code: 'rules-broken', faults: [{ pointer, code: 'differs-from-record', message }] },
  };
}
