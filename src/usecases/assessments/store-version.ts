import type { Assessment, AssessmentEntry, CheckedAssessment } from '../../domain/assessment/assessment.js';
import { checkAssessment } from '../../domain/assessment/check-assessment.js';
import type { AssessmentContext } from '../../domain/assessment/check-assessment.js';
import { findSameContent } from '../../domain/assessment/same-content.js';
import { resultsOf } from '../../domain/assessment/results.js';
import type { Fraction } from '../../domain/exact/fraction.js';
import type { EnteredInError } from '../../domain/history/entered-in-error.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome, Refusal } from '../../domain/refusal/refusal.js';
import { insertAssessment } from '../../storage/assessments/assessments.js';
import type { Executor } from '../../storage/connection.js';
import type { Context, TeamMember } from '../context.js';
import { checkPlaces } from '../referrals/check-places.js';

/** Checks an entry against its referral and the other assessments of it; what is there already is not taken twice. */
export async function checkEntry(
  context: Context,
  actor: TeamMember,
  trx: Executor,
  input: {
    readonly entry: AssessmentEntry;
    readonly course: Pick<AssessmentContext, 'bornOn' | 'receivedOn' | 'closedOn'>;
    readonly others: readonly Assessment[];
  },
): Promise<Outcome<CheckedAssessment>> {
  const { entry, course, others } = input;
  const verdict = checkAssessment(entry, {
    ...course,
    today: context.clock.today(),
    others: others.map((other) => other.entry),
    baseline: entry.timepoint === 'baseline' ? new Map<string, Fraction>() : baselineValues(others),
  } satisfies AssessmentContext);
  const places = await checkPlaces(trx, actor.teamId, entry);
  if (places.length > 0 || verdict.kind === 'faulty') {
    const faults = verdict.kind === 'faulty' ? [...places, ...verdict.faults] : places;
    return refused({ code: 'rules-broken', faults } satisfies Refusal);
  }
  if (verdict.kind === 'unconfirmed') return refused({ code: 'please-check', faults: verdict.queries });
  const same = findSameContent(verdict.checked, others);
  if (same !== undefined) return refused({ code: 'assessment-already-recorded', existingId: same.id });
  return done(verdict.checked);
}

/** Baseline value by measure id. */
export function baselineValues(others: readonly Assessment[]): ReadonlyMap<string, Fraction> {
  const results = others.filter((other) => other.entry.timepoint === 'baseline').flatMap(resultsOf);
  return new Map(results.map((result) => [result.measureId, result.value]));
}

/** Stores a version of an assessment; gives it as it then stands. */
export async function storeVersion(
  context: Context,
  actor: TeamMember,
  trx: Executor,
  version: {
    readonly id: string;
    readonly version: number;
    readonly referralId: string;
    readonly checked: CheckedAssessment;
    readonly correctionReason: string | null;
    readonly enteredInError?: EnteredInError | null;
  },
): Promise<Assessment> {
  const recordedAt = context.clock.now();
  const versionId = context.newId();
  const { enteredInError = null } = version;
  await insertAssessment(trx, {
    ...version,
    enteredInError,
    versionId,
    teamId: actor.teamId,
    now: recordedAt,
    accountId: actor.accountId,
  });
  return {
    ...version.checked,
    id: version.id,
    version: version.version,
    versionId,
    referralId: version.referralId,
    recordedAt,
    recordedBy: actor.accountId,
    correctionReason: version.correctionReason,
    supersededAt: null,
    enteredInError,
  };
}
