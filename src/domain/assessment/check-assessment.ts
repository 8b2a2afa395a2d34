import type { Fraction } from '../exact/fraction.js';
import { compare, decimal, negate, subtract, toNumber } from '../exact/fraction.js';
import { findMeasure } from '../measures/catalogue.js';
import type { Fault } from '../refusal/refusal.js';
import { checkSafetyFindings } from '../safety/check-safety-findings.js';
import type { AssessmentEntry, CheckedAssessment } from './assessment.js';
import { checkCourse } from './check-course.js';
import type { CourseContext } from './check-course.js';
import { checkPhysicalTest } from './check-physical-test.js';
import { checkQuestionnaire } from './check-questionnaire.js';
import { checkSitToStand } from './check-sit-to-stand.js';
import { checkWalkTest } from './check-walk-test.js';
import { checkField, FIELD_LIMITS, gather, pleaseCheck } from './field-limits.js';
import type { FieldLimits, Findings } from './field-limits.js';
import { resultsOf } from './results.js';
import { inStoredOrder } from './stored-order.js';

/** What an assessment is checked against: the course of its referral, and what was measured at baseline. */
export interface AssessmentContext extends CourseContext {
  /** Baseline value by measure id; empty when the entry is itself the baseline. */
  readonly baseline: ReadonlyMap<string, Fraction>;
}

/** The verdict on an entry: to be stored, refused for faults, or to be confirmed first. */
export type AssessmentVerdict =
  | { readonly kind: 'accepted'; readonly checked: CheckedAssessment }
  | { readonly kind: 'faulty'; readonly faults: readonly Fault[] }
  | { readonly kind: 'unconfirmed'; readonly queries: readonly Fault[] };

/**
 * Checks a whole assessment: dates, every limit, every test, every score.
 *
 * Everything that is wrong is named at once. Values outside the usual range pass only when their pointer is listed in
 * `confirmed`.
 *
 * @returns an accepted entry comes back in the order in which it is stored, with the pointers that confirmed something
 */
export function checkAssessment(entry: AssessmentEntry, context: AssessmentContext): AssessmentVerdict {
  const walks = entry.walkTests.map((walk, index) => checkWalkTest(walk, `/walkTests/${index}`));
  const questionnaires = entry.questionnaires.map((questionnaire, index) =>
    checkQuestionnaire(questionnaire, `/questionnaires/${index}`),
  );
  const physicalTests = entry.physicalTests.map((test, index) =>
    checkPhysicalTest(test, `/physicalTests/${index}`),
  );
  const checked: CheckedAssessment = {
    entry: { ...entry, walkTests: walks.map((walk) => walk.entry) },
    scores: questionnaires.flatMap((questionnaire) => questionnaire.scores),
    physicalResults: physicalTests.flatMap((test) => test.results),
  };
  const findings = gather([
    checkCourse(entry, context),
    checkPerson(entry),
    checkDuplicates(entry),
    checkSafetyFindings(entry.safetyFindings, '/safetyFindings'),
    ...walks.map((walk) => walk.findings),
    ...entry.sitToStands.map((stand, index) => checkSitToStand(stand, `/sitToStands/${index}`)),
    ...questionnaires.map((questionnaire) => questionnaire.findings),
    ...physicalTests.map((test) => test.findings),
  ]);
  const isOpen = (query: Fault): boolean => !entry.confirmed.includes(query.pointer);
  if (findings.faults.length > 0) {
    return { kind: 'faulty', faults: [...findings.faults, ...findings.queries.filter(isOpen)] };
  }
  const queries = [...findings.queries, ...largeChanges(checked, context.baseline)];
  const open = queries.filter(isOpen);
  return open.length > 0
    ? { kind: 'unconfirmed', queries: open }
    : { kind: 'accepted', checked: inStoredOrder(checked, queries) };
}

function checkPerson(entry: AssessmentEntry): Findings {
  const field = (pointer: string, limits: FieldLimits, value: number | null | undefined): Findings =>
    checkField({ pointer, limits, value: value ?? null });
  const { resting, spirometry } = entry;
  return gather([
    field('/heightCm', FIELD_LIMITS.heightCm, entry.heightCm),
    field('/weightKg', FIELD_LIMITS.weightKg, entry.weightKg),
    field('/spirometry/fev1L', FIELD_LIMITS.fev1L, spirometry?.fev1L),
    field(
      '/spirometry/fev1PercentPredicted',
      FIELD_LIMITS.fev1PercentPredicted,
      spirometry?.fev1PercentPredicted,
    ),
    field('/spirometry/fev1FvcPercent', FIELD_LIMITS.fev1FvcPercent, spirometry?.fev1FvcPercent),
    field('/resting/spo2Percent', FIELD_LIMITS.restingSpo2Percent, resting?.spo2Percent),
    field('/resting/heartRateBpm', FIELD_LIMITS.restingHeartRateBpm, resting?.heartRateBpm),
    field('/resting/systolicMmHg', FIELD_LIMITS.systolicMmHg, resting?.systolicMmHg),
    field('/resting/diastolicMmHg', FIELD_LIMITS.diastolicMmHg, resting?.diastolicMmHg),
    checkPressures(resting?.systolicMmHg ?? null, resting?.diastolicMmHg ?? null),
  ]);
}

function checkPressures(systolicMmHg: number | null, diastolicMmHg: number | null): Findings {
  if (systolicMmHg === null || diastolicMmHg === null || systolicMmHg > diastolicMmHg) return gather([]);
  const message = 'The systolic pressure must be above the diastolic. Have the two been exchanged?';
  return { faults: [{ pointer: '/resting/systolicMmHg', code: 'pressures-reversed', message }], queries: [] };
}

function checkDuplicates(entry: AssessmentEntry): Findings {
  const lists = [
    { name: 'walkTests', keys: entry.walkTests.map((walk) => `${walk.test} ${walk.attempt}`) },
    { name: 'sitToStands', keys: entry.sitToStands.map((stand) => stand.test) },
    { name: 'physicalTests', keys: entry.physicalTests.map((test) => test.test) },
    {
      name: 'questionnaires',
      keys: entry.questionnaires.map((questionnaire) => questionnaire.questionnaire),
    },
  ];
  const repeated = lists.flatMap(({ name, keys }) =>
    keys.flatMap((key, index): readonly Fault[] => {
      if (keys.indexOf(key) === index) return [];
      return [
        {
          pointer: `/${name}/${index}`,
          code: 'listed-twice',
          message: 'This stands in the assessment twice.',
        },
      ];
    }),
  );
  const secondWithoutFirst = entry.walkTests.flatMap((walk, index): readonly Fault[] => {
    const hasFirst = entry.walkTests.some((other) => other.test === walk.test && other.attempt === 1);
    if (walk.attempt === 1 || hasFirst) return [];
    const message = 'There is a second attempt but no first. Number a single attempt 1.';
    return [{ pointer: `/walkTests/${index}/attempt`, code: 'no-first-attempt', message }];
  });
  return { faults: [...repeated, ...secondWithoutFirst], queries: [] };
}

/** A change from baseline so large that it is likelier a slip than a result (common practice, no source). */
const LARGE_CHANGE: Readonly<Record<string, number>> = { m: 200, repetitions: 20 };

function largeChanges(checked: CheckedAssessment, baseline: ReadonlyMap<string, Fraction>): readonly Fault[] {
  if (baseline.size === 0) return [];
  return resultsOf(checked).flatMap((result): readonly Fault[] => {
    const before = baseline.get(result.measureId);
    const measure = findMeasure(result.measureId);
    const limit = measure === undefined ? undefined : LARGE_CHANGE[measure.unit];
    if (before === undefined || measure === undefined || limit === undefined) return [];
    const change = subtract(result.value, before);
    const size = change.numerator < 0 ? negate(change) : change;
    if (compare(size, decimal(limit)) <= 0) return [];
    const message = `Please check: the ${measure.name} differs from baseline by ${toNumber(size)} ${measure.unit}. Confirm it if it is right.`;
    return [pleaseCheck(result.pointer, message)];
  });
}
