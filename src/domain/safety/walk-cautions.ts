import type { WalkTestEntry } from '../assessment/assessment.js';
import type { LocatedResult } from '../assessment/results.js';
import type { Citation } from '../evidence/citation.js';
import type { WalkTest } from '../measures/walk-test.js';
import { findSafetyItem } from './conduct.js';
import { DESATURATION_DEFINITIONS, desaturationOf, STOP_BELOW_SPO2_PERCENT } from './desaturation.js';
import type { DesaturationDefinitionId } from './desaturation.js';
import type { DoneWalks } from './done-walks.js';
import type { SafetyCaution } from './safety-caution.js';
import { cautionToAcknowledge, cautionToShow } from './safety-caution.js';
import { COURSE_LENGTH_PRACTICE } from './safety-sources.js';

/** What must be known of one walk test that was done: how it went, and what its result is worth. */
export function walkCautions(
  { test, attempts }: DoneWalks,
  results: readonly LocatedResult[],
  definitionId: DesaturationDefinitionId,
): readonly SafetyCaution[] {
  const result = results.find((each) => each.measureId === test.measure.id);
  return [
    ...stopRuleCaution(test, attempts),
    ...stopReasonCautions(test, attempts),
    ...desaturationCaution(test, attempts, definitionId),
    ...(result?.hadPracticeWalk === false ? [noPracticeWalk(test)] : []),
    ...courseCaution(test, attempts),
    ...(result?.isCeiling === true ? [ceilingCaution(test)] : []),
  ];
}

function stopRuleCaution(test: WalkTest, attempts: readonly WalkTestEntry[]): readonly SafetyCaution[] {
  const below = attempts.flatMap((walk) =>
    walk.lowestSpo2Percent !== null && walk.lowestSpo2Percent < STOP_BELOW_SPO2_PERCENT
      ? [walk.lowestSpo2Percent]
      : [],
  );
  if (below.length === 0) return [];
  const text =
    `${test.shortName}: SpO2 fell to ${Math.min(...below)} %, below ${STOP_BELOW_SPO2_PERCENT} %, where the ` +
    'recommendation is to stop the walk.';
  return [
    cautionToAcknowledge({ ...about(test, 'stop-saturation-below-80'), id: 'saturation-below-80', text }),
  ];
}

/** Reasons for stopping that are signs to stop: which item of the checklist each of them is. */
const STOP_SIGNS = [
  { reason: 'chest-pain', itemId: 'stop-chest-pain', words: 'chest pain' },
  { reason: 'dizziness', itemId: 'community-dizziness', words: 'dizziness' },
] as const;

function stopReasonCautions(test: WalkTest, attempts: readonly WalkTestEntry[]): readonly SafetyCaution[] {
  return STOP_SIGNS.flatMap(({ reason, itemId, words }) => {
    if (!attempts.some((walk) => walk.stopReason === reason)) return [];
    const text = `${test.shortName}: a walk ended because of ${words}, a sign to stop.`;
    return [cautionToAcknowledge({ ...about(test, itemId), id: `ended-by-${reason}`, text })];
  });
}

function desaturationCaution(
  test: WalkTest,
  attempts: readonly WalkTestEntry[],
  definitionId: DesaturationDefinitionId,
): readonly SafetyCaution[] {
  const definition = DESATURATION_DEFINITIONS[definitionId];
  const lowest = attempts
    .filter((walk) => {
      const { kind } = desaturationOf(walk, definitionId);
      return kind === 'desaturated' || kind === 'possibly-desaturated';
    })
    .sort((a, b) => (a.lowestSpo2Percent ?? 0) - (b.lowestSpo2Percent ?? 0))[0];
  if (lowest === undefined) return [];
  const { startSpo2Percent: start, lowestSpo2Percent } = lowest;
  const from = start === null ? '' : ` from ${start} %`;
  const verdict = definition.notJudged === null ? 'Desaturation' : 'Possible desaturation';
  const text =
    `${test.shortName}: SpO2 fell${from} to ${String(lowestSpo2Percent)} %. ${verdict} by this meaning: ${definition.text}.` +
    (definition.notJudged === null ? '' : ` ${definition.notJudged}`);
  return [
    cautionToShow({ id: 'desaturation', measureId: test.measure.id, text, citation: definition.citation }),
  ];
}

function noPracticeWalk(test: WalkTest): SafetyCaution {
  const text = `${test.shortName}: a single walk. Without a practice walk the first result tends to be too low.`;
  return cautionToShow({ ...about(test, 'two-tests-and-best'), id: 'no-practice-walk', text });
}

function courseCaution(test: WalkTest, attempts: readonly WalkTestEntry[]): readonly SafetyCaution[] {
  const { usual } = test.courseLengthM;
  const others = attempts.flatMap(({ courseLengthM }) =>
    courseLengthM !== null && courseLengthM !== usual ? [courseLengthM] : [],
  );
  if (others.length === 0) return [];
  const text =
    `${test.shortName}: walked on a course of ${[...new Set(others)].join(' and ')} m. Usual are ${usual} m; distances on ` +
    'courses of another length are not compared with each other.';
  const citation =
    test.id === 'six-minute-walk' ? sourceOf('six-minute-walk-course') : COURSE_LENGTH_PRACTICE;
  return [cautionToShow({ id: 'course-length-not-usual', measureId: test.measure.id, text, citation })];
}

function ceilingCaution(test: WalkTest): SafetyCaution {
  const { unit, range } = test.measure;
  const text =
    `${test.shortName}: the result is ${String(test.ceiling)} ${unit}, where the test ends by itself. The person could have ` +
    'gone on: later improvement cannot show.';
  return cautionToShow({ id: 'ceiling', measureId: test.measure.id, text, citation: range.citation });
}

function about(test: WalkTest, itemId: string): Pick<SafetyCaution, 'measureId' | 'citation'> {
  return { measureId: test.measure.id, citation: sourceOf(itemId) };
}

function sourceOf(itemId: string): Citation {
  const item = findSafetyItem(itemId);
  if (item === undefined) throw new Error(`The checklist has no item ${itemId}`);
  return item.citation;
}
