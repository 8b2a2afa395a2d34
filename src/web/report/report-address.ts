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
  /** What cannot be read, by the field: nothing of it is passed over, or the report would be of more than was asked for. */
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
  const asAtRead = parsePlainDate(asAt) ?? undefined;
  const faults: { field: string; message: string }[] = (['from', 'to', 'cut'] as const).flatMap((field) => {
    const entry = readDate(dates[field]);
    return entry.kind === 'no-date' ? [{ field, message: entry.message }] : [];
  });
  faults.push(
    ...unread(query, {
      period: period === '' ? undefined : period,
      asAt: asAtRead,
      siteId,
      commissionerId,
      diagnosis,
      pathway,
      mode,
      firstReferralsOnly,
    }),
  );
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
      asAt: cut.kind === 'date' ? cut.date : asAtRead,
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

const FIELD_WORDS = {
  period: 'period',
  asAt: 'data cut',
  siteId: 'site',
  commissionerId: 'commissioner',
  diagnosis: 'diagnosis',
  pathway: 'pathway',
  mode: 'mode of delivery',
  firstReferralsOnly: 'choice of first referrals',
} as const;

/** What stands in the query and was not understood. */
function unread(
  query: unknown,
  read: Readonly<Record<keyof typeof FIELD_WORDS, unknown>>,
): ReportAddress['faults'] {
  const given = new Map(Object.entries(query ?? {}));
  return Object.entries(FIELD_WORDS).flatMap(([field, words]) => {
    const value: unknown = given.get(field);
    const isGiven =
      value !== undefined && value !== '' && !(field === 'firstReferralsOnly' && value === 'false');
    const isRead = Object.entries(read).some(([name, value]) => name === field && value !== undefined);
    return isGiven && !isRead ? [{ field, message: `The ${words} in the address cannot be read.` }] : [];
  });
}

/** The page that says what is wrong with an address, for every other page of the report. */
export function faultsAddress(url: string): string {
  const start = url.indexOf('?');
  return `/report${start < 0 ? '' : url.slice(start)}`;
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
