import { z } from 'zod';
import { DELIVERY_MODES, DIAGNOSES, PATHWAYS } from '../../domain/referral/closed-sets.js';
import { REPORT_PARTS } from '../../usecases/reports/report-request.js';
import { dateField, idField } from '../schema/fields.js';

/** What a report is of, as it stands in an address: the address is the whole report, and names nobody. */
export const ReportQuery = z.strictObject({
  period: z
    .string()
    .max(40)
    .describe('`2026-27-Q1` (1 April to 30 June 2026), `2026-27`, or `2026-04-01..2026-05-31`'),
  asAt: dateField.optional().describe('Data cut; today where it is left out'),
  siteId: idField.optional(),
  commissionerId: idField.optional(),
  diagnosis: z.enum(DIAGNOSES).optional(),
  pathway: z.enum(PATHWAYS).optional(),
  mode: z.enum(DELIVERY_MODES).optional().describe('As decided for the referral'),
  firstReferralsOnly: z
    .enum(['true', 'false'])
    .transform((value) => value === 'true')
    .optional()
    .describe('Leave out people referred before'),
  include: z
    .string()
    .regex(
      /^(comparisons|trend)(,(comparisons|trend))?$/,
      'Give comparisons, trend, or both with a comma between.',
    )
    .transform((parts) => REPORT_PARTS.filter((part) => parts.split(',').includes(part)))
    .optional()
    .describe('Parts that read other periods too: `comparisons`, `trend`, or `comparisons,trend`'),
});
