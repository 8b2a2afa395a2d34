import { z } from 'zod';
import { COUNTED_OVER } from '../../domain/cohort/cohorts.js';

/* Parts of the schemas of reports. */

export const number = z.number().nullable();
export const IntervalShown = z.strictObject({ low: z.number(), high: z.number() });
export const interval = IntervalShown.nullable();

export const FigureShown = z
  .strictObject({
    id: z.string(),
    ruleId: z.string(),
    title: z.string(),
    cohort: z.enum(COUNTED_OVER),
    numerator: z.int(),
    denominator: z
      .int()
      .describe('Referrals decided by the day of the data cut; those still open are left out'),
    excluded: z.array(z.strictObject({ id: z.string(), reason: z.string(), count: z.int() })),
    open: z.int().describe('Not decided by the day of the data cut; above 0 the figure is provisional'),
    people: z.strictObject({ numerator: z.int(), denominator: z.int() }),
    percentage: number.describe('0 to 100, unrounded; null where the denominator is 0'),
    interval: interval.describe('95 % Wilson interval in percent'),
    bounds: z
      .strictObject({ worst: z.number(), best: z.number() })
      .nullable()
      .describe('If no open case, and if every open case, came to count'),
  })
  .meta({ id: 'Figure' });

export const SummaryShown = z
  .strictObject({
    n: z.int(),
    mean: number,
    sd: number,
    median: number,
    lowerQuartile: number,
    upperQuartile: number,
  })
  .meta({ id: 'Summary' });

export const SourceShown = z
  .strictObject({
    text: z.string(),
    doi: z.string().nullable(),
    status: z.string(),
    mark: z.string().nullable(),
  })
  .meta({ id: 'ReportSource' });
