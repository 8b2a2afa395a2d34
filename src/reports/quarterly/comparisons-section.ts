import { COHORT_KINDS } from '../../domain/cohort/cohorts.js';
import { countFigures } from '../../domain/indicators/count.js';
import type { Figure } from '../../domain/indicators/figure.js';
import { ruleOf } from '../../domain/indicators/indicator.js';
import type { FigureRule } from '../../domain/indicators/indicator.js';
import { INDICATORS } from '../../domain/indicators/registered.js';
import { outcomeFigures } from '../../domain/indicators/outcome-figures.js';
import { toNumber } from '../../domain/exact/fraction.js';
import { findMeasure, MEASURES } from '../../domain/measures/catalogue.js';
import { welchDifference } from '../../domain/statistics/difference-of-means.js';
import type { Interval } from '../../domain/statistics/interval.js';
import { pairedChange } from '../../domain/statistics/paired-change.js';
import { differenceInPoints } from './breakdown-section.js';
import { earlierQuarter, LEAST_TO_CLAIM } from './earlier-quarter.js';
import type { EarlierFacts } from './earlier-quarter.js';
import { measuredStarters } from './outcomes-section.js';
import type { MeasuredStarters } from './outcomes-section.js';
import type {
  Claim,
  MeanComparison,
  MeanOfPeriod,
  PeriodComparison,
  SeenPeriod,
  ShareComparison,
} from './over-time-models.js';
import type { Quarter, QuarterInput } from './quarter.js';
import type { IndicatorRow, MeasureOutcomes } from './report-model.js';

/** An earlier period that has been counted, to be compared with: counts, and nothing of anybody. */
export interface EarlierToCompare extends SeenPeriod, Pick<PeriodComparison, 'than'> {
  /** By figure id. */
  readonly figures: ReadonlyMap<string, Figure>;
  /** Mean like-for-like change by measure id; of measures that somebody had. */
  readonly changes: ReadonlyMap<string, MeanOfPeriod>;
}

const THAN_WORDS: Readonly<Record<PeriodComparison['than'], string>> = {
  'former-period': 'the period before',
  'a-year-earlier': 'the same period a year earlier',
};

/** The figures that are compared: the table of indicators, whatever was measured. */
const RULES: readonly FigureRule[] = [
  ...INDICATORS.map(ruleOf),
  ...MEASURES.map((measure) => outcomeFigures(measure).likeForLike.midReached),
];

/** Counts an earlier period; its facts are not needed any more. */
export function countedEarlier(
  input: Pick<QuarterInput, 'settings' | 'sites' | 'narrowing'>,
  earlier: EarlierFacts & Pick<PeriodComparison, 'than'>,
): EarlierToCompare {
  const quarter = earlierQuarter(input, earlier);
  const { than, period, asAt } = earlier;
  const changes = measuredStarters(quarter).map(
    (starters) => [starters.measure.id, meanChange(starters)] as const,
  );
  return { than, period, asAt, figures: figuresById(RULES, quarter), changes: new Map(changes) };
}

/** The indicators, and the mean change of each measure, beside those of earlier periods. */
export function comparisonsSection(
  present: { readonly indicators: readonly IndicatorRow[]; readonly outcomes: readonly MeasureOutcomes[] },
  earlierPeriods: readonly EarlierToCompare[],
): readonly PeriodComparison[] {
  return earlierPeriods.map(({ than, period, asAt, figures, changes }) => ({
    than,
    words: THAN_WORDS[than],
    period,
    asAt,
    shares: sharesCompared(
      present.indicators.map(({ figure }) => figure),
      figures,
    ),
    means: meansCompared(present.outcomes, changes),
  }));
}

function sharesCompared(
  figures: readonly Figure[],
  then: EarlierToCompare['figures'],
): readonly ShareComparison[] {
  return figures.flatMap((now) => {
    const before = then.get(now.id);
    if (before === undefined) return [];
    const difference = differenceInPoints(now, before);
    return [
      {
        figureId: now.id,
        title: now.title,
        now,
        then: before,
        difference,
        claim: claimOf([now.denominator, before.denominator], difference?.interval),
      },
    ];
  });
}

/** Figures of a quarter by id, each cohort gone through once. */
export function figuresById(
  rules: readonly FigureRule[],
  { cohorts, context }: Quarter,
): ReadonlyMap<string, Figure> {
  const figures = COHORT_KINDS.flatMap((kind) =>
    countFigures(
      rules.filter(({ cohort }) => cohort === kind),
      cohorts[kind],
      context,
    ),
  );
  return new Map(figures.map((figure) => [figure.id, figure]));
}

function meansCompared(
  outcomes: readonly MeasureOutcomes[],
  changesThen: EarlierToCompare['changes'],
): readonly MeanComparison[] {
  return outcomes.flatMap(({ measureId, shortName, unit, betterWhen, likeForLike }) => {
    const measure = findMeasure(measureId);
    if (measure === undefined) return [];
    const now = meanOf(likeForLike.change);
    const then = changesThen.get(measureId) ?? meanChange(undefined);
    const found = welchDifference(now, then);
    return [
      {
        measureId,
        shortName,
        unit,
        betterWhen,
        figureId: outcomeFigures(measure).likeForLikePairs.id,
        now,
        then,
        difference: found === null ? null : { value: found.difference, interval: found.interval },
        claim: claimOf([now.n, then.n], found?.interval),
      },
    ];
  });
}

/** Mean like-for-like change of a measure; of nobody where it was not measured. */
export function meanChange(starters: MeasuredStarters | undefined): MeanOfPeriod {
  const strict = (starters?.pairs ?? []).filter(({ comparison }) => comparison.isLikeForLike);
  return meanOf(pairedChange(strict.map(({ comparison }) => toNumber(comparison.change))));
}

function meanOf({ n, mean, sd }: MeanOfPeriod): MeanOfPeriod {
  return { n, mean, sd };
}

/** An interval that leaves out 0 is more than chance, where both sides have enough people to say anything. */
function claimOf(numbers: readonly number[], interval: Interval | undefined): Claim {
  if (interval === undefined || numbers.some((n) => n < LEAST_TO_CLAIM)) return 'too-few';
  return interval.low > 0 || interval.high < 0 ? 'beyond-chance' : 'within-chance';
}
