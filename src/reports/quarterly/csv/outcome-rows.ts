import { PAIR_FIGURE_IDS } from '../../../domain/indicators/pair-figures.js';
import { judgedByFigureId } from '../../../domain/indicators/threshold-figures.js';
import type { ThresholdUse } from '../definitions-model.js';
import type { MeasureOutcomes, PairsOutcome, PairsSummary, QuarterlyReport } from '../report-model.js';
import { ends, figureRow, numberRow, summaryRows } from './row.js';
import type { CsvRow } from './row.js';

const SECTION = 'outcomes';

/** Outcomes of every measure: who has a pair, both ends, the change, and who reached the threshold. */
export function outcomeRows({ outcomes }: QuarterlyReport): readonly CsvRow[] {
  return outcomes.flatMap((measure) => [
    figureRow(SECTION, measure.pairsOverStarters),
    figureRow(SECTION, measure.likeForLikePairsOverStarters),
    ...pairsRows(measure, measure.likeForLike, 'like for like', measure.likeForLikePairsOverStarters.id),
    ...pairsRows(measure, measure.allPairs, 'all pairs', measure.pairsOverStarters.id),
    ...(measure.atHome === null
      ? []
      : summaryOfPairs(
          measure,
          measure.atHome,
          'like for like, at home',
          PAIR_FIGURE_IDS.atHome(measure.measureId),
        )),
    ...respondersRows(measure),
    ...(measure.practiceWalk === null
      ? []
      : [
          figureRow(SECTION, measure.practiceWalk.baseline),
          figureRow(SECTION, measure.practiceWalk.discharge),
        ]),
    ...distributionRows(measure),
    ...measure.differences.map(({ name, figureId, pairs }) =>
      countRow(measure, `Pairs not like for like: ${name}`, pairs, figureId),
    ),
    countRow(
      measure,
      'Pairs with a result at the ceiling',
      measure.pairsAtCeiling,
      PAIR_FIGURE_IDS.atCeiling(measure.measureId),
    ),
    ...(measure.practiceWalkDiffers === null
      ? []
      : [
          countRow(
            measure,
            'Pairs with a practice walk at one end only',
            measure.practiceWalkDiffers,
            PAIR_FIGURE_IDS.practiceWalkDiffers(measure.measureId),
          ),
        ]),
    ...measure.thresholds.flatMap((threshold) => thresholdRows(measure, threshold)),
  ]);
}

/** The threshold itself, and how many of the pairs that it judged have a diagnosis that it was not found in. */
function thresholdRows(
  { measureId, shortName }: MeasureOutcomes,
  threshold: ThresholdUse,
): readonly CsvRow[] {
  const { thresholdId, chosenBy, purpose, value, unit, pairs, pairsOfAnotherDiagnosis, source } = threshold;
  const said = {
    section: SECTION,
    title: `${shortName}: threshold of ${purpose}`,
    ruleId: thresholdId,
    group: chosenBy,
    n: pairs,
    source: source.text,
  };
  return [
    numberRow({
      ...said,
      figureId: judgedByFigureId(measureId, threshold, 'all'),
      statistic: 'threshold',
      value,
      unit,
    }),
    numberRow({
      ...said,
      figureId: judgedByFigureId(measureId, threshold, 'of-another-diagnosis'),
      statistic: 'judged, of a diagnosis that it was not found in',
      value: pairsOfAnotherDiagnosis,
      unit: 'pairs',
    }),
  ];
}

function pairsRows(
  measure: MeasureOutcomes,
  outcome: PairsOutcome,
  basis: string,
  figureId: string,
): readonly CsvRow[] {
  const classes = [outcome.midReached, outcome.littleChange, outcome.worse].filter(
    (figure) => figure !== null,
  );
  return [
    ...summaryOfPairs(measure, outcome, basis, figureId),
    ...classes.map((figure) => figureRow(SECTION, figure, { group: basis })),
  ];
}

function summaryOfPairs(
  { shortName, unit }: MeasureOutcomes,
  { baseline, discharge, change, changeSummary }: PairsSummary,
  group: string,
  figureId: string,
): readonly CsvRow[] {
  const said = { section: SECTION, title: shortName, figureId, group, unit };
  return [
    ...summaryRows(baseline, { ...said, statistic: 'baseline' }),
    ...summaryRows(discharge, { ...said, statistic: 'discharge' }),
    numberRow({
      ...said,
      statistic: 'mean change',
      n: change.n,
      value: change.mean,
      ...ends(change.interval),
    }),
    ...summaryRows(changeSummary, { ...said, statistic: 'change' }),
    numberRow({
      ...said,
      statistic: 'standardised response mean',
      n: change.n,
      value: change.standardisedResponseMean,
      unit: 'standard deviations',
    }),
  ];
}

function respondersRows({
  measureId,
  shortName,
  responders,
  likeForLike,
}: MeasureOutcomes): readonly CsvRow[] {
  if (responders === null) return [];
  const { achieved, measured, eligible, worst, best, measuredShare } = responders;
  return [
    numberRow({
      section: SECTION,
      title: `${shortName}: reached the threshold, with what those not measured again could make of it`,
      figureId: likeForLike.midReached?.id ?? null,
      statistic: 'share of those measured',
      n: measured,
      numerator: achieved,
      denominator: measured,
      value: likeForLike.midReached?.percentage ?? null,
      unit: 'percent',
      worst,
      best,
    }),
    numberRow({
      section: SECTION,
      title: `${shortName}: measured again like for like, of those with a baseline result`,
      figureId: PAIR_FIGURE_IDS.withBaseline(measureId),
      statistic: 'share measured again',
      n: eligible,
      numerator: measured,
      denominator: eligible,
      value: measuredShare,
      unit: 'percent',
    }),
  ];
}

function distributionRows({ shortName, unit, distribution }: MeasureOutcomes): readonly CsvRow[] {
  if (distribution === null) return [];
  const ends =
    distribution.holdsEnd === 'lower'
      ? 'from one value to below the other'
      : 'above one value up to the other';
  return distribution.classes.map(({ from, to, figureId, pairs }) =>
    numberRow({
      section: SECTION,
      title: `${shortName}: changes ${ends}, in ${unit}`,
      figureId,
      group: 'like for like',
      statistic: 'pairs between low and high',
      value: pairs,
      unit: 'pairs',
      low: from,
      high: to,
    }),
  );
}

function countRow({ shortName }: MeasureOutcomes, title: string, value: number, figureId: string): CsvRow {
  return numberRow({
    section: SECTION,
    title: `${shortName}: ${title}`,
    figureId,
    statistic: 'count',
    value,
    unit: 'pairs',
  });
}
