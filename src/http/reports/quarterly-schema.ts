import { z } from 'zod';
import { dateShown } from '../schema/fields.js';
import { FigureShown, interval, number, SourceShown, SummaryShown } from './figure-schema.js';
import { PeriodComparisonShown, TrendShown } from './over-time-schemas.js';
import {
  BenchmarkMeanShown,
  BenchmarkShown,
  BreakdownShown,
  DataQualityShown,
  DistributionShown,
  FunnelStepShown,
  NarrativeShown,
  SiteComparisonShown,
  WaitingShown,
} from './section-schemas.js';

const ThresholdUse = z.strictObject({
  thresholdId: z.string(),
  purpose: z.enum(['improvement', 'deterioration']),
  value: z.number(),
  unit: z.string(),
  amountsTo: z.string(),
  population: z.string(),
  chosenBy: z.string(),
  pairs: z.int(),
  pairsOfAnotherDiagnosis: z.int(),
  source: SourceShown,
});

const pairsSummary = {
  pairs: z.int(),
  baseline: SummaryShown,
  discharge: SummaryShown,
  change: z
    .strictObject({ n: z.int(), mean: number, sd: number, interval, standardisedResponseMean: number })
    .describe('Discharge minus baseline, 95 % t interval'),
  changeSummary: SummaryShown,
};

const PairsOutcome = z
  .strictObject({
    ...pairsSummary,
    midReached: FigureShown.nullable(),
    littleChange: FigureShown.nullable(),
    worse: FigureShown.nullable(),
  })
  .meta({ id: 'PairsOutcome' });

const Outcome = z
  .strictObject({
    measureId: z.string(),
    name: z.string(),
    shortName: z.string(),
    unit: z.string(),
    betterWhen: z.enum(['higher', 'lower']),
    pairsOverStarters: FigureShown,
    likeForLikePairsOverStarters: FigureShown,
    likeForLike: PairsOutcome.describe('The headline'),
    allPairs: PairsOutcome,
    atHome: z.strictObject(pairsSummary).nullable().describe('Like-for-like pairs with both tests at home'),
    distribution: DistributionShown.nullable().describe('Of like-for-like changes'),
    differences: z.array(
      z.strictObject({ condition: z.string(), name: z.string(), figureId: z.string(), pairs: z.int() }),
    ),
    practiceWalk: z.strictObject({ baseline: FigureShown, discharge: FigureShown }).nullable(),
    practiceWalkDiffers: z.int().nullable(),
    pairsAtCeiling: z.int(),
    responders: z
      .strictObject({
        achieved: z.int(),
        measured: z.int(),
        eligible: z.int(),
        worst: number,
        best: number,
        measuredShare: number,
        fewMeasured: z.boolean(),
      })
      .nullable(),
    thresholds: z.array(ThresholdUse),
    marks: z.array(z.string()),
  })
  .meta({ id: 'MeasureOutcomes' });

const Cohort = z.strictObject({
  kind: z.enum(['referral', 'start', 'discharge']),
  words: z.string(),
  referrals: z.int(),
  people: z.int(),
  registeredInError: z.int(),
  notClosed: FigureShown,
});

const Wait = z.strictObject({
  to: z.string(),
  from: z.string(),
  title: z.string(),
  label: z.string(),
  daysOfThoseWhoReachedIt: SummaryShown,
  reached: FigureShown,
  stillWaiting: FigureShown,
  longestStillWaitingDays: z.int().nullable(),
  left: FigureShown,
  passedOver: FigureShown.nullable(),
});

const Completion = z.strictObject({
  reading: z.string(),
  ruleId: z.string(),
  title: z.string(),
  isHeadline: z.boolean(),
  cells: z.array(z.strictObject({ of: z.string(), all: FigureShown, withoutDeathsAndMoves: FigureShown })),
});

const Predicted = z.strictObject({
  measureId: z.string(),
  shortName: z.string(),
  equationId: z.string(),
  equationTitle: z.string(),
  source: SourceShown,
  pairs: z.int(),
  baseline: SummaryShown,
  discharge: SummaryShown,
  belowLowerLimit: z.strictObject({ baseline: z.int(), discharge: z.int() }).nullable(),
  beyondAgesStudied: z.int(),
  notPredicted: z.array(z.strictObject({ reason: z.string(), pairs: z.int() })),
});

const Definitions = z.strictObject({
  completionReading: z.string(),
  rules: z.array(
    z.strictObject({
      ruleId: z.string(),
      numerator: z.string(),
      denominators: z.array(z.string()),
      exclusions: z.array(z.string()),
      source: SourceShown,
    }),
  ),
  thresholds: z.array(ThresholdUse.extend({ measureId: z.string(), shortName: z.string() })),
  equations: z.array(
    z.strictObject({
      equationId: z.string(),
      measureId: z.string(),
      title: z.string(),
      population: z.string(),
      agesStudiedYears: z.looseObject({ min: number, max: number }),
      cautions: z.array(z.string()),
      source: SourceShown,
    }),
  ),
  methods: z.array(z.string()),
});

export const QuarterlyReportShown = z
  .strictObject({
    teamName: z.string(),
    period: z.strictObject({ kind: z.string(), label: z.string(), firstDay: dateShown, lastDay: dateShown }),
    asAt: dateShown.describe('Data cut: nothing dated later is counted'),
    settingsVersion: z.int(),
    narrowedTo: z.array(z.strictObject({ field: z.string(), value: z.string(), words: z.string() })),
    narrative: NarrativeShown,
    provisional: z.strictObject({
      isProvisional: z.boolean(),
      isPeriodOver: z.boolean(),
      notes: z.array(z.string()),
    }),
    definitions: Definitions,
    cohorts: z.strictObject({ referral: Cohort, start: Cohort, discharge: Cohort }),
    referrals: z.strictObject({
      received: z.int(),
      people: z.int(),
      bySource: z.array(FigureShown),
      byPathway: z.array(FigureShown),
      byDiagnosis: z.array(FigureShown),
    }),
    uptake: z.strictObject({ assessed: FigureShown, started: FigureShown }),
    funnel: z.array(FunnelStepShown),
    waiting: WaitingShown,
    waits: z.array(Wait),
    completion: z.array(Completion),
    outcomes: z.array(Outcome),
    percentPredicted: z.array(Predicted),
    indicators: z.array(
      z.strictObject({
        figure: FigureShown,
        target: z.strictObject({ percent: z.number(), source: z.string() }).nullable(),
        isReached: z.boolean().nullable(),
        isBeyondChance: z
          .boolean()
          .nullable()
          .describe(
            'Whether the interval leaves the target out however the open ones end; null without a target, of fewer than ' +
              '30 that are decided, and where too many are open to say so',
          ),
      }),
    ),
    reasons: z.strictObject({ notStarting: z.array(FigureShown), notCompleting: z.array(FigureShown) }),
    breakdowns: z.array(BreakdownShown),
    sites: z.array(SiteComparisonShown),
    benchmarks: z.array(BenchmarkShown),
    benchmarkMeans: z.array(BenchmarkMeanShown),
    dataQuality: DataQualityShown,
    comparisons: z.array(PeriodComparisonShown).nullable().describe('Null where not asked for by `include`'),
    trend: TrendShown.nullable().describe('Null where not asked for by `include`'),
  })
  .meta({ id: 'QuarterlyReport' });
