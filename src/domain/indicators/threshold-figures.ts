import type { ChosenThreshold } from '../change/choose-threshold.js';
import type { Measure } from '../measures/measure.js';
import type { FigureRule } from './indicator.js';
import { countsIf, countsNot } from './judge.js';
import { pairRule } from './pair-figures.js';

type ChosenBy = ChosenThreshold['chosenBy'];

const CHOICES: Readonly<Record<ChosenBy, string>> = {
  'team, for this diagnosis': 'team-for-diagnosis',
  team: 'team',
  'catalogue default': 'default',
  'published for this diagnosis': 'published-for-diagnosis',
};

/** Which pairs: all that a threshold judged, or those of them with a diagnosis that it was not found in. */
export type JudgedPairs = 'all' | 'of-another-diagnosis';

type Chosen = Pick<ChosenThreshold, 'thresholdId' | 'chosenBy'>;

/** @example 'judged.default.cat-smid-2017.cat-total' */
export function judgedByFigureId(
  measureId: string,
  { thresholdId, chosenBy }: Chosen,
  which: JudgedPairs,
): string {
  const part = which === 'all' ? 'judged' : 'judged-of-another-diagnosis';
  return `${part}.${CHOICES[chosenBy]}.${thresholdId}.${measureId}`;
}

/** Pairs of a measure that one of its thresholds judged, as it was chosen. */
function judgedByRule(measure: Measure, threshold: Chosen, which: JudgedPairs): FigureRule {
  const { thresholdId, chosenBy } = threshold;
  const other = which === 'all' ? '' : ', with a diagnosis that it was not found in';
  return pairRule(measure, {
    id: judgedByFigureId(measure.id, threshold, which),
    ruleId: 'pairs-judged-by@1',
    title: `judged by ${thresholdId}${other}`,
    numerator: `Getting better or worse is judged by ${thresholdId}, chosen by: ${chosenBy}${other}`,
    of: 'all',
    judge: ({ pair: { thresholds } }) => {
      const by = [thresholds.improvement, thresholds.deterioration].find(
        (each) => each?.thresholdId === thresholdId && each.chosenBy === chosenBy,
      );
      if (by === undefined || by === null) return countsNot('Judged by another threshold, or by none');
      const words = by.populationNote ?? 'Found in people with this diagnosis';
      return countsIf(which === 'all' || by.populationNote !== null, words, words);
    },
  });
}

/** All of these figures of a measure. */
export function thresholdRules(measure: Measure): readonly FigureRule[] {
  const choices = Object.keys(CHOICES).filter((choice): choice is ChosenBy => choice in CHOICES);
  return measure.thresholds.flatMap(({ id: thresholdId }) =>
    choices.flatMap((chosenBy) =>
      (['all', 'of-another-diagnosis'] as const).map((which) =>
        judgedByRule(measure, { thresholdId, chosenBy }, which),
      ),
    ),
  );
}
