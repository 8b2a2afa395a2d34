import type { Result } from '../cohort/referral-facts.js';
import { compare, decimal } from '../exact/fraction.js';
import type { Fraction } from '../exact/fraction.js';
import {
  findPhysicalTest,
  findQuestionnaire,
  findSitToStandTest,
  findWalkTest,
} from '../measures/catalogue.js';
import { formsOf } from '../measures/form-score.js';
import type {
  CheckedAssessment,
  PhysicalResult,
  PhysicalTestEntry,
  Score,
  SitToStandEntry,
  WalkTestEntry,
} from './assessment.js';

/** A result, and where in the entry it stands. */
export interface LocatedResult extends Result {
  readonly pointer: string;
}

/**
 * The results of an assessment: one per measure, the better of two attempts, with the conditions that must match.
 *
 * @source Best of two attempts: Holland AE 2014, Eur Respir J 44:1428 (both are kept, the better is reported)
 */
export function resultsOf(
  checked: Pick<CheckedAssessment, 'scores' | 'physicalResults'> & { readonly entry: TestedEntry },
): readonly LocatedResult[] {
  const { entry, scores } = checked;
  return [
    ...bestWalks(entry.walkTests),
    ...entry.sitToStands.flatMap(sitToStandResult),
    ...scores.map((score) => questionnaireResult(score, entry)),
    ...checked.physicalResults.map((result) => physicalResult(result, entry)),
  ];
}

/** The part of a walk that its result comes from. */
export type TestedWalk = Pick<
  WalkTestEntry,
  | 'test'
  | 'place'
  | 'distanceM'
  | 'timeS'
  | 'speedLevel'
  | 'courseLengthM'
  | 'walkingAid'
  | 'oxygenLPerMin'
  | 'notDoneReason'
>;

/** The part of an assessment that results come from. */
export interface TestedEntry {
  readonly walkTests: readonly TestedWalk[];
  readonly sitToStands: readonly SitToStandEntry[];
  readonly questionnaires: readonly { readonly questionnaire: string; readonly form: string | null }[];
  readonly physicalTests: readonly Pick<PhysicalTestEntry, 'test' | 'place' | 'conditions'>[];
}

function bestWalks(walks: readonly TestedWalk[]): readonly LocatedResult[] {
  const best = new Map<string, LocatedResult>();
  walks.forEach((walk, index) => {
    const result = walkResult(walk, index);
    if (result === null) return;
    const former = best.get(result.measureId);
    if (former === undefined) {
      best.set(result.measureId, result);
      return;
    }
    const better = compare(result.value, former.value) > 0 ? result : former;
    const asksForPractice = former.hadPracticeWalk !== null;
    best.set(result.measureId, { ...better, hadPracticeWalk: asksForPractice ? true : null });
  });
  return [...best.values()];
}

function walkResult(walk: TestedWalk, index: number): LocatedResult | null {
  const test = findWalkTest(walk.test);
  if (test === undefined) return null;
  const isTimed = test.records === 'endurance';
  const value = isTimed ? walk.timeS : walk.distanceM;
  if (value === null) return null;
  return {
    pointer: `/walkTests/${index}/${isTimed ? 'timeS' : 'distanceM'}`,
    measureId: test.measure.id,
    value: decimal(value),
    conditions: {
      test: test.id,
      place: walk.place,
      courseLengthM: asText(walk.courseLengthM),
      walkingAid: walk.walkingAid,
      oxygenLPerMin: asText(walk.oxygenLPerMin),
      ...(isTimed ? { speedLevel: asText(walk.speedLevel) } : {}),
    },
    hadPracticeWalk: test.needsPracticeWalk ? false : null,
    isCeiling: test.ceiling !== null && value >= test.ceiling,
  };
}

function sitToStandResult(stand: SitToStandEntry, index: number): readonly LocatedResult[] {
  const test = findSitToStandTest(stand.test);
  if (test === undefined) return [];
  const name = test.records === 'repetitions' ? 'repetitions' : 'timeS';
  const value = stand[name];
  if (value === null) return [];
  return [
    {
      pointer: `/sitToStands/${index}/${name}`,
      measureId: test.measure.id,
      value: decimal(value),
      conditions: {
        test: test.id,
        place: stand.place,
        // Asked for, but no published rule makes a test without them incomparable: they count where they are known.
        ...(stand.handsUsed === null ? {} : { handsUsed: stand.handsUsed ? 'yes' : 'no' }),
        ...(stand.chairHeightCm === null ? {} : { chairHeightCm: String(stand.chairHeightCm) }),
      },
      hadPracticeWalk: null,
      isCeiling: false,
    },
  ];
}

function questionnaireResult(score: Score, entry: TestedEntry): LocatedResult {
  const index = entry.questionnaires.findIndex(
    (candidate) => candidate.questionnaire === score.questionnaire,
  );
  const questionnaire = findQuestionnaire(score.questionnaire);
  const forms = questionnaire === undefined ? [] : formsOf(questionnaire, score.measure);
  return {
    pointer: `/questionnaires/${index}`,
    measureId: score.measure,
    value: score.value satisfies Fraction,
    conditions: {
      questionnaire: score.questionnaire,
      ...(forms.length > 0 ? { form: entry.questionnaires[index]?.form ?? null } : {}),
    },
    hadPracticeWalk: null,
    isCeiling: false,
  };
}

function physicalResult(result: PhysicalResult, entry: TestedEntry): LocatedResult {
  const index = entry.physicalTests.findIndex((candidate) => candidate.test === result.test);
  const recorded = entry.physicalTests[index];
  const conditions = (findPhysicalTest(result.test)?.conditions ?? []).map(({ id, neverComparable }) => {
    const value = recorded?.conditions[id] ?? null;
    // A value such as "other" says too little to be the same as itself.
    return [id, value !== null && neverComparable.includes(value) ? null : value] as const;
  });
  return {
    pointer: `/physicalTests/${index}/${result.basis === 'parts' ? 'parts' : 'value'}`,
    measureId: result.measure,
    value: result.value,
    conditions: { test: result.test, place: recorded?.place ?? null, ...Object.fromEntries(conditions) },
    hadPracticeWalk: null,
    isCeiling: false,
  };
}

function asText(value: number | null): string | null {
  return value === null ? null : String(value);
}
