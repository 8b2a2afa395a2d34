import type { CheckedAssessment } from './assessment.js';

/**
 * The assessment that says exactly what another entry of the same timepoint and day says; typed twice, it would count as
 * a second visit.
 *
 * Everything that was recorded is compared: place, body, resting values, safety, tests, questionnaires, notes. What was
 * confirmed as unusual is no content.
 *
 * @param entry as it would be stored
 * @param others the assessments of the referral that stand
 * @returns undefined where there is none
 */
export function findSameContent<Other extends CheckedAssessment>(
  entry: CheckedAssessment,
  others: readonly Other[],
): Other | undefined {
  const sameDay = others.filter(
    (other) =>
      other.entry.timepoint === entry.entry.timepoint && other.entry.assessedOn === entry.entry.assessedOn,
  );
  if (sameDay.length === 0) return undefined;
  const content = contentOf(entry);
  return sameDay.find((other) => contentOf(other) === content);
}

/**
 * The content as text. What has two forms is left to its result: level and shuttles to the distance, typed scores and
 * parts to the exact figures that they give.
 */
function contentOf({ entry, scores, physicalResults }: CheckedAssessment): string {
  const { walkTests, questionnaires, physicalTests } = entry;
  return JSON.stringify(
    {
      ...entry,
      confirmed: [],
      walkTests: walkTests.map((walk) => ({ ...walk, level: null, shuttles: null })),
      questionnaires: questionnaires.map((questionnaire) => ({ ...questionnaire, typedScores: [] })),
      physicalTests: physicalTests.map((test) => ({ ...test, measure: null, value: null })),
      scores,
      physicalResults,
    },
    sortedKeys,
  );
}

/** Names in one order, whatever order they were typed or stored in. */
function sortedKeys(_name: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
}
