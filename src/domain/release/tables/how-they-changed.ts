import { toNumber } from '../../exact/fraction.js';
import { outcomeFigures } from '../../indicators/outcome-figures.js';
import { findMeasure } from '../../measures/catalogue.js';
import type { Measure } from '../../measures/measure.js';
import type { Course } from '../../pathway/course.js';
import type { JudgeContext } from '../../indicators/indicator.js';
import { gathered } from '../code-lists.js';
import type { TableDefinition } from '../table-definition.js';

/** The measures of which a release tells: one of each kind, so that few people can be known by what they were measured by. */
const RELEASED_MEASURES = [
  'six-minute-walk-distance',
  'incremental-shuttle-walk-distance',
  'mrc-dyspnoea',
  'cat-total',
] as const;

const PAIRED = ['reached', 'little', 'worse'] as const;

/** A released measure with its table. */
export interface ReleasedMeasure {
  readonly measure: Measure;
  readonly table: TableDefinition;
}

/** How people changed, a table for each measure. A table of fewer pairs than means need is left out. */
export const RELEASED: readonly ReleasedMeasure[] = RELEASED_MEASURES.map((id) => {
  const measure = findMeasure(id);
  if (measure === undefined) throw new Error(`There is no measure ${id}.`);
  return { measure, table: changeTable(measure) };
});

/** Discharge minus baseline of a like-for-like pair that a threshold judged, in the measure's unit; null where there is none. */
export function judgedChange(course: Course, { changesOf }: JudgeContext, measureId: string): number | null {
  const comparison = changesOf(course).get(measureId)?.comparison;
  if (comparison?.kind !== 'pair' || !comparison.isLikeForLike || comparison.class === 'change-only')
    return null;
  return toNumber(comparison.change);
}

/** Categories of the table that hold the people behind the mean change. */
export const CHANGED_CATEGORIES: readonly string[] = PAIRED;

function changeTable(measure: Measure): TableDefinition {
  const { midReached } = outcomeFigures(measure).likeForLike;
  return {
    id: `change.${measure.id}`,
    title: `How people changed: ${measure.name}`,
    explanation:
      'The same test before and after the programme under the same conditions. Better or worse means by at least the smallest change that people notice.',
    universe: 'discharged',
    categories: [
      { id: 'reached', words: 'better' },
      { id: 'little', words: 'little change' },
      { id: 'worse', words: 'worse' },
      { id: 'no-pair', words: 'not measured alike at both ends' },
    ],
    categoryOf: (course, { changesOf }) => {
      const comparison = changesOf(course).get(measure.id)?.comparison;
      if (comparison?.kind !== 'pair' || !comparison.isLikeForLike) return 'no-pair';
      switch (comparison.class) {
        case 'improved':
          return 'reached';
        case 'little-change':
          return 'little';
        case 'worse':
          return 'worse';
        case 'change-only':
          return 'no-pair';
      }
    },
    codeLists: [
      gathered('fine', [
        ['reached', 'better', 'reached'],
        ['little', 'little change', 'little'],
        ['worse', 'worse', 'worse'],
        ['no-pair', 'not measured alike at both ends', 'no-pair'],
      ]),
      gathered('coarse', [
        ['reached', 'better', 'reached'],
        ['not-reached', 'little change, or worse', 'little', 'worse'],
        ['no-pair', 'not measured alike at both ends', 'no-pair'],
      ]),
    ],
    shares: [
      {
        id: midReached.id,
        title: `${measure.shortName}: better by at least the smallest change that people notice`,
        numerator: ['reached'],
        denominator: PAIRED,
        ruleId: midReached.ruleId,
        targetKey: null,
      },
    ],
    periods: 'every',
    needs: PAIRED,
  };
}
