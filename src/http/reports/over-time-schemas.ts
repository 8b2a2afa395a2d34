import { z } from 'zod';
import { dateShown } from '../schema/fields.js';
import { FigureShown, IntervalShown, number } from './figure-schema.js';

const seenPeriod = {
  period: z.strictObject({ kind: z.string(), label: z.string(), firstDay: dateShown, lastDay: dateShown }),
  asAt: dateShown.describe('Data cut of the period: as many days after its end as that of the report'),
};

const claim = z
  .enum(['beyond-chance', 'within-chance', 'too-few'])
  .describe('Whether the interval leaves out 0; nothing is claimed of fewer than 30 on either side');

const MeanOfPeriod = z.strictObject({ n: z.int(), mean: number, sd: number });

export const PeriodComparisonShown = z
  .strictObject({
    than: z.enum(['former-period', 'a-year-earlier']),
    words: z.string(),
    ...seenPeriod,
    shares: z.array(
      z.strictObject({
        figureId: z.string(),
        title: z.string(),
        now: FigureShown,
        then: FigureShown,
        difference: z
          .strictObject({ points: z.number(), interval: IntervalShown })
          .nullable()
          .describe('Now less then in percentage points, 95 % interval of Newcombe'),
        claim,
      }),
    ),
    means: z.array(
      z.strictObject({
        measureId: z.string(),
        shortName: z.string(),
        unit: z.string(),
        betterWhen: z.enum(['higher', 'lower']),
        figureId: z.string(),
        now: MeanOfPeriod,
        then: MeanOfPeriod,
        difference: z
          .strictObject({ value: z.number(), interval: IntervalShown })
          .nullable()
          .describe('Now less then, 95 % interval of Welch'),
        claim,
      }),
    ),
  })
  .meta({ id: 'PeriodComparison' });

export const TrendShown = z
  .strictObject({
    quarters: z.array(z.strictObject(seenPeriod)).describe('The earliest first'),
    rules: z.array(z.strictObject({ rule: z.string(), words: z.string() })),
    charts: z.array(
      z.strictObject({
        id: z.string(),
        title: z.string(),
        unit: z.string().describe('`percent`, `referrals`, `days`, or the unit of a measure'),
        figureId: z.string(),
        ruleId: z.string(),
        kind: z.enum(['xmr', 'p', 'run']),
        centre: number,
        lowerLimitCutAt: number.describe('Where the lower limit was cut off, as no value can lie below'),
        points: z.array(
          z.strictObject({
            quarter: z.string(),
            n: z.int(),
            numerator: z.int().nullable(),
            value: number,
            lower: number,
            upper: number,
          }),
        ),
        signals: z.array(
          z.strictObject({
            rule: z.string(),
            direction: z.enum(['up', 'down']),
            quarters: z.array(z.string()),
            words: z.string(),
          }),
        ),
      }),
    ),
  })
  .meta({ id: 'Trend' });
