import type { Measure, Threshold } from './measure.js';
import type { PhysicalTest } from './physical-test.js';
import type { Questionnaire } from './questionnaire.js';
import { PHYSICAL_TESTS, QUESTIONNAIRES, SIT_TO_STAND_TESTS, WALK_TESTS } from './registered.js';
import type { SitToStandTest } from './sit-to-stand-test.js';
import type { WalkTest } from './walk-test.js';

/** Every measure of the catalogue: walk tests, sit-to-stand tests, questionnaires, physical tests, in this order. */
export const MEASURES: readonly Measure[] = [
  ...WALK_TESTS.map((test) => test.measure),
  ...SIT_TO_STAND_TESTS.map((test) => test.measure),
  ...QUESTIONNAIRES.flatMap((questionnaire) => questionnaire.measures),
  ...PHYSICAL_TESTS.flatMap((test) => test.measures),
];

const measures = byId(MEASURES);
const walkTests = byId(WALK_TESTS);
const sitToStandTests = byId(SIT_TO_STAND_TESTS);
const questionnaires = byId(QUESTIONNAIRES);
const physicalTests = byId(PHYSICAL_TESTS);
const thresholds = byId(MEASURES.flatMap((measure) => measure.thresholds));

/** The measure with this id; undefined where there is none. @example findMeasure('cat-total')?.shortName -> 'CAT' */
export function findMeasure(id: string): Measure | undefined {
  return measures.get(id);
}

/** The walk test with this id; undefined where there is none. */
export function findWalkTest(id: string): WalkTest | undefined {
  return walkTests.get(id);
}

/** The sit-to-stand test with this id; undefined where there is none. */
export function findSitToStandTest(id: string): SitToStandTest | undefined {
  return sitToStandTests.get(id);
}

/** The questionnaire with this id; undefined where there is none. */
export function findQuestionnaire(id: string): Questionnaire | undefined {
  return questionnaires.get(id);
}

/**
 * The questionnaire that yields a measure; undefined where the measure is of a test.
 *
 * @example questionnaireOf('crq-mastery')?.shortName -> 'CRQ'
 */
export function questionnaireOf(measureId: string): Questionnaire | undefined {
  return QUESTIONNAIRES.find(({ measures: scored }) => scored.some((measure) => measure.id === measureId));
}

/** The physical test with this id; undefined where there is none. */
export function findPhysicalTest(id: string): PhysicalTest | undefined {
  return physicalTests.get(id);
}

/** The threshold with this id; undefined where there is none. Ids are unique over all measures. */
export function findThreshold(id: string): Threshold | undefined {
  return thresholds.get(id);
}

function byId<T extends { readonly id: string }>(entries: readonly T[]): ReadonlyMap<string, T> {
  return new Map(entries.map((entry) => [entry.id, entry]));
}
