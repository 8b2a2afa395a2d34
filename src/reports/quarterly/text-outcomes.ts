import { placesFor } from '../../domain/measures/shown-value.js';
import type { ThresholdUse } from './definitions-model.js';
import type { MeasureOutcomes, PairsOutcome, PercentPredicted } from './report-model.js';
import { figureHeader, leftOutLines, plainFigureLines } from './text-figures.js';
import type { Column } from './text-layout.js';
import { row, wrap } from './text-layout.js';
import { NONE, range, rounded } from './text-numbers.js';

const COLUMNS: readonly Column[] = [
  { width: 26, align: 'left' },
  { width: 6, align: 'right' },
  { width: 18, align: 'right' },
  { width: 18, align: 'right' },
  { width: 28, align: 'right' },
];

/** The outcomes of one measure. */
export function outcomeLines(outcome: MeasureOutcomes): readonly string[] {
  const { name, shortName, unit, betterWhen, likeForLike, allPairs } = outcome;
  const places = placesFor(unit);
  return [
    '',
    ...wrap(`${name} (${shortName}): ${unit}, ${betterWhen} is better`),
    ...row(COLUMNS, ['', 'pairs', 'baseline (SD)', 'discharge (SD)', 'mean change (95 % interval)']),
    ...pairsLines('Like for like (headline)', likeForLike, places),
    ...pairsLines('All pairs', allPairs, places),
    ...figureHeader(),
    ...plainFigureLines(outcome.pairsOverStarters, 'Pairs over starters'),
    ...plainFigureLines(outcome.likeForLikePairsOverStarters, 'Like-for-like pairs over starters'),
    ...classLines(likeForLike, allPairs),
    ...respondersLines(outcome),
    ...(outcome.practiceWalk === null
      ? []
      : [
          ...plainFigureLines(outcome.practiceWalk.baseline, 'Practice walk at baseline'),
          ...plainFigureLines(outcome.practiceWalk.discharge, 'Practice walk at discharge'),
        ]),
    ...remarkLines(outcome),
    ...outcome.thresholds.flatMap(thresholdLines),
  ];
}

/** Percentage of predicted at both ends by one equation. */
export function percentPredictedLines(predicted: PercentPredicted): readonly string[] {
  const { shortName, equationId, source, pairs, baseline, discharge, belowLowerLimit } = predicted;
  const mark = source.mark === null ? '' : ` [${source.mark}]`;
  const end = ({ mean, sd }: { mean: number | null; sd: number | null }): string =>
    mean === null ? NONE : `${rounded(mean, 1)} % (SD ${rounded(sd, 1)})`;
  const left = [
    ...(predicted.beyondAgesStudied > 0 ? [`${predicted.beyondAgesStudied} beyond the ages studied`] : []),
    ...predicted.notPredicted.map(
      (each) => `${each.pairs} not predicted (${each.reason.replace(/\.$/, '')})`,
    ),
  ];
  return [
    ...wrap(
      `${shortName} by ${equationId}${mark}: baseline ${end(baseline)}, discharge ${end(discharge)}; ` +
        `${baseline.n} of ${pairs} like-for-like pairs`,
    ),
    ...(belowLowerLimit === null
      ? []
      : wrap(
          `below the lower limit of normal: ${belowLowerLimit.baseline} at baseline, ${belowLowerLimit.discharge} at discharge`,
          4,
        )),
    ...(left.length === 0 ? [] : wrap(`left out: ${left.join(', ')}`, 4)),
  ];
}

function pairsLines(
  title: string,
  { pairs, baseline, discharge, change }: PairsOutcome,
  places: number,
): readonly string[] {
  const end = ({ mean, sd }: { mean: number | null; sd: number | null }): string =>
    mean === null ? NONE : `${rounded(mean, places)} (${rounded(sd, places)})`;
  const interval = change.interval === null ? '' : ` (${range(change.interval, places)})`;
  return row(COLUMNS, [
    title,
    String(pairs),
    end(baseline),
    end(discharge),
    `${rounded(change.mean, places, change.n)}${interval}`,
  ]);
}

function classLines(likeForLike: PairsOutcome, allPairs: PairsOutcome): readonly string[] {
  const { midReached, worse, littleChange } = likeForLike;
  if (midReached === null || worse === null || littleChange === null) {
    return ['No threshold: the change is shown and not judged'];
  }
  return [
    ...plainFigureLines(midReached, 'Reached the MID, like for like'),
    ...leftOutLines(midReached),
    ...plainFigureLines(littleChange, 'Little change, like for like'),
    ...plainFigureLines(worse, 'Worse, like for like'),
    ...(allPairs.midReached === null
      ? []
      : plainFigureLines(allPairs.midReached, 'Reached the MID, all pairs')),
    ...(allPairs.worse === null ? [] : plainFigureLines(allPairs.worse, 'Worse, all pairs')),
  ];
}

function respondersLines({ responders }: MeasureOutcomes): readonly string[] {
  if (responders === null || responders.eligible === 0) return [];
  const { worst, best, measured, eligible, measuredShare, fewMeasured } = responders;
  const few = fewMeasured ? ': fewer than 70 % were measured again, so the share says little' : '';
  return wrap(
    `Reached the MID if none, or all, of those not measured again had: ${rounded(worst, 1)} to ${rounded(best, 1)} % ` +
      `(${measured} of ${eligible} with a baseline measured again like for like, ${rounded(measuredShare, 1)} %)${few}`,
    4,
  );
}

function remarkLines({
  differences,
  practiceWalkDiffers,
  pairsAtCeiling,
}: MeasureOutcomes): readonly string[] {
  return [
    ...(differences.length === 0
      ? []
      : wrap(
          `pairs not like for like by: ${differences.map(({ name, pairs }) => `${name} ${pairs}`).join(', ')}`,
          4,
        )),
    ...(practiceWalkDiffers === null || practiceWalkDiffers === 0
      ? []
      : wrap(`pairs with a practice walk at one end only: ${practiceWalkDiffers}`, 4)),
    ...(pairsAtCeiling === 0 ? [] : wrap(`pairs at the ceiling of the test: ${pairsAtCeiling}`, 4)),
  ];
}

function thresholdLines(threshold: ThresholdUse): readonly string[] {
  const { purpose, amountsTo, source, pairs, pairsOfAnotherDiagnosis, chosenBy } = threshold;
  const mark = source.mark === null ? '' : ` [${source.mark}]`;
  const others =
    pairsOfAnotherDiagnosis === 0
      ? ''
      : `; ${pairsOfAnotherDiagnosis} of them with a diagnosis it was not found in`;
  return wrap(
    `threshold for ${purpose}: ${amountsTo} ${source.text}${mark}; ${chosenBy}, pairs judged by it: ${pairs}${others}`,
    4,
  );
}
