import { z } from 'zod';
import { dateShown } from '../schema/fields.js';

const number = z.number().nullable();
const interval = z.strictObject({ low: z.number(), high: z.number() }).nullable();

const Figure = z
  .strictObject({
    id: z.string(),
    ruleId: z.string(),
    title: z.string(),
    cohort: z.enum(['referral', 'start', 'discharge']),
    numerator: z.int(),
    denominator: z.int().describe('Referrals decided as at the cut; those still open are left out'),
    excluded: z.array(z.strictObject({ id: z.string(), reason: z.string(), count: z.int() })),
    open: z.int().describe('Not decided as at the cut; above 0 the figure is provisional'),
    people: z.strictObject({ numerator: z.int(), denominator: z.int() }),
    percentage: number.describe('0 to 100, unrounded; null where the denominator is 0'),
    interval: interval.describe('95 % Wilson interval in percent'),
    bounds: z
      .strictObject({ worst: z.number(), best: z.number() })
      .nullable()
      .describe('If no open case, and if every open case, came to count'),
  })
  .meta({ id: 'Figure' });

const Summary = z
  .strictObject({
    n: z.int(),
    mean: number,
    sd: number,
    median: number,
    lowerQuartile: number,
    upperQuartile: number,
  })
  .meta({ id: 'Summary' });

const Source = z
  .strictObject({
    text: z.string(),
    doi: z.string().nullable(),
    status: z.string(),
    mark: z.string().nullable(),
  })
  .meta({ id: 'ReportSource' });

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
  source: Source,
});

const PairsOutcome = z
  .strictObject({
    pairs: z.int(),
    baseline: Summary,
    discharge: Summary,
    change: z
      .strictObject({ n: z.int(), mean: number, sd: number, interval, standardisedResponseMean: number })
      .describe('Discharge minus baseline, 95 % t interval'),
    changeSummary: Summary,
    midReached: Figure.nullable(),
    littleChange: Figure.nullable(),
    worse: Figure.nullable(),
  })
  .meta({ id: 'PairsOutcome' });

const Outcome = z
  .strictObject({
    measureId: z.string(),
    name: z.string(),
    shortName: z.string(),
    unit: z.string(),
    betterWhen: z.enum(['higher', 'lower']),
    pairsOverStarters: Figure,
    likeForLikePairsOverStarters: Figure,
    likeForLike: PairsOutcome.describe('The headline'),
    allPairs: PairsOutcome,
    differences: z.array(z.strictObject({ condition: z.string(), name: z.string(), pairs: z.int() })),
    practiceWalk: z.strictObject({ baseline: Figure, discharge: Figure }).nullable(),
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
  notClosed: Figure,
});

const Wait = z.strictObject({
  to: z.string(),
  from: z.string(),
  title: z.string(),
  label: z.string(),
  daysOfThoseWhoReachedIt: Summary,
  reached: Figure,
  stillWaiting: Figure,
  longestStillWaitingDays: z.int().nullable(),
  left: Figure,
  passedOver: Figure.nullable(),
});

const Completion = z.strictObject({
  reading: z.string(),
  ruleId: z.string(),
  title: z.string(),
  isHeadline: z.boolean(),
  cells: z.array(z.strictObject({ of: z.string(), all: Figure, withoutDeathsAndMoves: Figure })),
});

const Predicted = z.strictObject({
  measureId: z.string(),
  shortName: z.string(),
  equationId: z.string(),
  equationTitle: z.string(),
  source: Source,
  pairs: z.int(),
  baseline: Summary,
  discharge: Summary,
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
      source: Source,
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
      source: Source,
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
      bySource: z.array(Figure),
      byPathway: z.array(Figure),
      byDiagnosis: z.array(Figure),
    }),
    uptake: z.strictObject({ assessed: Figure, started: Figure }),
    waits: z.array(Wait),
    completion: z.array(Completion),
    outcomes: z.array(Outcome),
    percentPredicted: z.array(Predicted),
    indicators: z.array(
      z.strictObject({
        figure: Figure,
        target: z.strictObject({ percent: z.number(), source: z.string() }).nullable(),
        isReached: z.boolean().nullable(),
        isBeyondChance: z.boolean().nullable(),
      }),
    ),
    reasons: z.strictObject({ notStarting: z.array(Figure), notCompleting: z.array(Figure) }),
  })
  .meta({ id: 'QuarterlyReport' });
