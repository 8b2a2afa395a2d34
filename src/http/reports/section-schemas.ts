import { z } from 'zod';
import { dateShown } from '../schema/fields.js';
import { FigureShown, interval, IntervalShown, number, SourceShown } from './figure-schema.js';

/* Sections of the quarterly report, each as its model in reports/quarterly/section-models.ts says. */

export const NarrativeShown = z
  .array(
    z.strictObject({
      text: z.string(),
      figureIds: z.array(z.string()).describe('The figures that the sentence rests on'),
    }),
  )
  .describe('Three to six sentences made by rules, the most important first');

export const FunnelStepShown = z
  .strictObject({
    step: z.enum(['referred', 'accepted', 'assessed', 'started', 'completed']),
    title: z.string(),
    reached: FigureShown,
    left: FigureShown.nullable().describe('Of those who reached the step; open are those still at it'),
    leftBecause: z.array(FigureShown),
  })
  .meta({ id: 'FunnelStep' });

const Clock = z.strictObject({
  from: z.enum(['receipt', 'hospital-discharge']),
  title: z.string(),
  methodId: z.string(),
  referrals: z.int().describe('To which this clock applies'),
  days: z.array(
    z.strictObject({
      day: z.int(),
      atRisk: z.int().describe('Neither started nor left before the day, and seen up to it'),
      seenSoLong: FigureShown.describe('The same people, to be opened'),
      startedByDay: FigureShown.describe('The counts behind it; they leave out those who wait for less'),
      started: z
        .strictObject({ percent: z.number(), interval: IntervalShown.nullable() })
        .nullable()
        .describe('Cumulative incidence of Aalen and Johansen, 95 % interval'),
      leftBy: z.array(z.strictObject({ ending: z.string(), words: z.string(), percent: number })),
      stillWaitingPercent: number,
    }),
  ),
  curve: z
    .array(z.strictObject({ day: z.int(), startedPercent: z.number(), leftPercent: z.number() }))
    .describe(
      'The same between those days; a step holds until the next, and nothing is known beyond the last',
    ),
});

export const WaitingShown = z
  .strictObject({
    clocks: z.array(Clock),
    now: z
      .strictObject({
        waiting: FigureShown,
        byStage: z.array(z.strictObject({ stage: z.string(), words: z.string(), waiting: FigureShown })),
        overDays: z.array(z.strictObject({ days: z.int(), waiting: FigureShown })),
        longest: z.array(
          z.strictObject({ referralId: z.string(), receivedOn: dateShown, days: z.int(), stage: z.string() }),
        ),
      })
      .describe('Everybody who waits for a start on the day of the data cut, whenever they were received'),
  })
  .meta({ id: 'WaitingSection' });

export const DistributionShown = z
  .strictObject({
    classWidth: z.number(),
    holdsEnd: z
      .enum(['lower', 'upper'])
      .describe(
        'The end that is in its class: the upper where lower is better, so that a threshold counts as reached',
      ),
    classes: z.array(
      z.strictObject({
        figureId: z.string().describe('Opens to the people of these pairs'),
        from: z.number(),
        to: z.number(),
        pairs: z.int(),
      }),
    ),
  })
  .meta({ id: 'Distribution' });

export const DifferenceShown = z
  .strictObject({ points: z.number(), interval: IntervalShown })
  .meta({ id: 'DifferenceInPoints' })
  .describe('In percentage points, with the 95 % interval of Newcombe');

export const BreakdownShown = z
  .strictObject({
    figureId: z.string(),
    title: z.string(),
    whole: FigureShown,
    dimensions: z.array(
      z.strictObject({
        dimension: z.string(),
        title: z.string(),
        rows: z.array(
          z.strictObject({
            group: z.string(),
            words: z.string(),
            figure: FigureShown,
            differenceToRest: DifferenceShown.nullable(),
          }),
        ),
      }),
    ),
  })
  .meta({ id: 'Breakdown' });

export const SiteComparisonShown = z
  .strictObject({
    figureId: z.string(),
    title: z.string(),
    kind: z.enum(['funnel', 'intervals']).describe('A funnel from five sites on'),
    whole: FigureShown,
    sites: z.array(
      z.strictObject({
        siteId: z.string(),
        name: z.string(),
        figure: FigureShown,
        limits: z.strictObject({ inner: IntervalShown, outer: IntervalShown }).nullable(),
        place: z.enum(['within', 'beyond-inner', 'beyond-outer', 'too-few']).nullable(),
      }),
    ),
  })
  .meta({ id: 'SiteComparison' });

export const BenchmarkShown = z
  .strictObject({
    id: z.string(),
    title: z.string(),
    own: FigureShown,
    published: z.strictObject({
      percent: z.number(),
      n: z.int().nullable(),
      population: z.string(),
      source: SourceShown,
    }),
    caution: z.string(),
  })
  .meta({ id: 'Benchmark' })
  .describe('Context, never a target');

export const BenchmarkMeanShown = z
  .strictObject({
    id: z.string(),
    measureId: z.string(),
    shortName: z.string(),
    unit: z.string(),
    betterWhen: z.string(),
    figureId: z.string().describe('Opens to the like-for-like pairs'),
    own: z.strictObject({
      n: z.int(),
      mean: number,
      sd: number,
      interval,
      standardisedResponseMean: number,
    }),
    published: z.strictObject({
      mean: z.number(),
      sd: number,
      interval,
      n: z.int(),
      population: z.string(),
      source: SourceShown,
    }),
    caution: z.string(),
  })
  .meta({ id: 'BenchmarkMean' })
  .describe('Mean change, discharge minus baseline: context, never a target');

export const DataQualityShown = z
  .strictObject({
    completeness: z.array(FigureShown),
    pairsLost: z.array(
      z.strictObject({
        measureId: z.string(),
        shortName: z.string(),
        figureId: z.string(),
        starters: z.int(),
        pairs: z.int(),
        lost: z.array(
          z.strictObject({
            reason: z.string(),
            words: z.string(),
            figureId: z.string(),
            referrals: z.int(),
          }),
        ),
      }),
    ),
    gradesConverted: z
      .array(
        z.strictObject({
          measureId: z.string().describe('The scale of the baseline: mrc-dyspnoea or mmrc-dyspnoea'),
          shortName: z.string(),
          figureId: z.string().describe('Opens to the people of these pairs'),
          pairs: z.int(),
          ofPairs: z.int().describe('All pairs of the scale, these among them'),
        }),
      )
      .describe(
        'Pairs that there are only because the grade at discharge was converted from the other breathlessness scale; none is like for like. One entry for each scale that was measured, with 0 where no grade was converted',
      ),
    entry: z.array(FigureShown),
    confirmedValues: FigureShown,
    entriesInError: z
      .strictObject({
        referrals: z.int(),
        offers: z.int(),
        sessions: z.int(),
        assessments: z.int(),
        words: z.string(),
      })
      .describe('Dated in the period, of the whole team, whatever the report is narrowed to'),
    mendFirst: z.array(
      z.strictObject({
        figureId: z.string(),
        members: z.enum(['numerator', 'not-numerator']).describe('Which of those whom the figure counts'),
        words: z.string(),
        referrals: z.int(),
      }),
    ),
  })
  .meta({ id: 'DataQuality' });
