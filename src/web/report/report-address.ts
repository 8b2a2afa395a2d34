import { z } from 'zod';
import { latestClosedQuarter } from '../../domain/calendar/period.js';
import { parsePlainDate } from '../../domain/calendar/plain-date.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import { DELIVERY_MODES, DIAGNOSES, PATHWAYS } from '../../domain/referral/closed-sets.js';
import type { AskedReport } from '../../usecases/reports/report-request.js';
import { readDate } from '../forms/date-entry.js';
import type { TypedDate } from '../forms/date-entry.js';

const id = z.uuid().toLowerCase().optional().catch(undefined);
const typed = z.string().max(4).catch('').default('');

/** As the form of the filter sends it: an empty choice narrows nothing. */
const Query = z.object({
  period: z.string().max(40).catch('').default(''),
  asAt: z.string().max(10).catch('').default(''),
  siteId: id,
  commissionerId: id,
  diagnosis: z.enum(DIAGNOSES).optional().catch(undefined),
  pathway: z.enum(PATHWAYS).optional().catch(undefined),
  mode: z.enum(DELIVERY_MODES).optional().catch(undefined),
  firstReferralsOnly: z.enum(['true', 'yes']).optional().catch(undefined),
  ...Object.fromEntries(
    ['from', 'to', 'cut'].flatMap((name) =>
      ['day', 'month', 'year'].map((part) => [`${name}-${part}`, typed]),
    ),
  ),
});

/** What is asked for, and the dates as they were typed. */
export interface ReportAddress {
  readonly asked: AskedReport;
  readonly typed: Readonly<Record<'from' | 'to' | 'cut', TypedDate>>;
  /** What is wrong with the dates, by the field. */
  readonly faults: readonly { readonly field: string; readonly message: string }[];
}

/**
 * Reads the address of a report: the query of the API, or the fields of the filter, in which two dates stand before the
 * period that was chosen.
 *
 * @param today for the period that is shown where none was asked for: the latest quarter that is over
 */
export function readReportAddress(query: unknown, today: PlainDate): ReportAddress {
  const read = Query.parse(query ?? {});
  const { period, asAt, siteId, commissionerId, diagnosis, pathway, mode, firstReferralsOnly } = read;
  const parts: Readonly<Record<string, unknown>> = read;
  const typedOf = (name: string): TypedDate => ({
    day: String(parts[`${name}-day`]).trim(),
    month: String(parts[`${name}-month`]).trim(),
    year: String(parts[`${name}-year`]).trim(),
  });
  const dates = { from: typedOf('from'), to: typedOf('to'), cut: typedOf('cut') };
  const [from, to, cut] = [readDate(dates.from), readDate(dates.to), readDate(dates.cut)];
  const faults = (['from', 'to', 'cut'] as const).flatMap((field) => {
    const entry = readDate(dates[field]);
    return entry.kind === 'no-date' ? [{ field, message: entry.message }] : [];
  });
  const isHalf = (from.kind === 'empty') !== (to.kind === 'empty');
  if (isHalf && faults.length === 0) {
    faults.push({
      field: from.kind === 'empty' ? 'from' : 'to',
      message: 'Give both the first and the last day.',
    });
  }
  const label = from.kind === 'date' && to.kind === 'date' ? `${from.date}..${to.date}` : period;
  return {
    asked: {
      period: label === '' ? latestClosedQuarter(today).label : label,
      asAt: cut.kind === 'date' ? cut.date : (parsePlainDate(asAt) ?? undefined),
      siteId,
      commissionerId,
      diagnosis,
      pathway,
      mode,
      ...(firstReferralsOnly === undefined ? {} : { firstReferralsOnly: true }),
    },
    typed: dates,
    faults,
  };
}

/**
 * The query that is the whole report, the same on pages and in the API.
 *
 * @example reportQuery({ period: '2026-27-Q1', diagnosis: 'copd' }) -> 'period=2026-27-Q1&diagnosis=copd'
 */
export function reportQuery(asked: AskedReport): string {
  const { period, asAt, siteId, commissionerId, diagnosis, pathway, mode, firstReferralsOnly } = asked;
  const query = new URLSearchParams({ period });
  const parts = { asAt, siteId, commissionerId, diagnosis, pathway, mode };
  for (const [name, value] of Object.entries(parts)) if (value !== undefined) query.set(name, value);
  if (firstReferralsOnly === true) query.set('firstReferralsOnly', 'true');
  return query.toString();
}
