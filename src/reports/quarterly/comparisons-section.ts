import { COHORT_KINDS } from '../../domain/cohort/cohorts.js';
import { countFigures } from '../../domain/indicators/count.js';
import type { Figure } from '../../domain/indicators/figure.js';
import type { FigureRule } from '../../domain/indicators/indicator.js';
import { outcomeFigures } from '../../domain/indicators/outcome-figures.js';
import { toNumber } from '../../domain/exact/fraction.js';
import { findMeasure } from '../../domain/measures/catalogue.js';
import { welchDifference } from '../../domain/statistics/difference-of-means.js';
import type { Interval } from '../../domain/statistics/interval.js';
import { pairedChange } from '../../domain/statistics/paired-change.js';
import { differenceInPoints } from './breakdown-section.js';
import { earlierQuarter, LEAST_TO_CLAIM } from './earlier-quarter.js';
import type { EarlierFacts } from './earlier-quarter.js';
import { findFigureRule } from '../../domain/indicators/figure-rules.js';
import { measuredStarters } from './outcomes-section.js';
import type { MeasuredStarters } from './outcomes-section.js';
import type {
  Claim,
  MeanComparison,
  MeanOfPeriod,
  PeriodComparison,
  ShareComparison,
} from './over-time-models.js';
import type { Quarter, QuarterInput } from './quarter.js';
import type { IndicatorRow, MeasureOutcomes } from './report-model.js';

/** An earlier period to be compared with. */
export type EarlierToCompare = EarlierFacts & Pick<PeriodComparison, 'than'>;

const THAN_WORDS: Readonly<Record<PeriodComparison['than'], string>> = {
  'former-period': 'the period before',
  'a-year-earlier': 'the same period a year earlier',
};

/** The indicators, and the mean change of each measure, beside those of earlier periods. */
export function comparisonsSection(
  input: Pick<QuarterInput, 'settings' | 'sites' | 'narrowing'>,
  present: { readonly indicators: readonly IndicatorRow[]; readonly outcomes: readonly MeasureOutcomes[] },
  earlierPeriods: readonly EarlierToCompare[],
): readonly PeriodComparison[] {
  return earlierPeriods.map((earlier) => {
    const quarter = earlierQuarter(input, earlier);
    return {
      than: earlier.than,
      words: THAN_WORDS[earlier.than],
      period: earlier.period,
      asAt: earlier.asAt,
      shares: sharesCompared(
        present.indicators.map(({ figure }) => figure),
        quarter,
      ),
      means: meansCompared(present.outcomes, measuredStarters(quarter)),
    };
  });
}

function sharesCompared(figures: readonly Figure[], earlier: Quarter): readonly ShareComparison[] {
  const then = figuresById(
    figures.flatMap(({ id }) => findFigureRule(id) ?? []),
    earlier,
  );
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
  measuredThen: readonly MeasuredStarters[],
): readonly MeanComparison[] {
  return outcomes.flatMap(({ measureId, shortName, unit, betterWhen, likeForLike }) => {
    const measure = findMeasure(measureId);
    if (measure === undefined) return [];
    const now = meanOf(likeForLike.change);
    const then = meanOf(meanChange(measuredThen.find((found) => found.measure.id === measureId)));
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
