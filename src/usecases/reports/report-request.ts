import { parsePeriod } from '../../domain/calendar/period.js';
import type { Period } from '../../domain/calendar/period.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Narrowing } from '../../domain/cohort/narrowing.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Fault, Outcome } from '../../domain/refusal/refusal.js';

/** Parts of a report that read other periods too. */
export const REPORT_PARTS = ['comparisons', 'trend'] as const;
export type ReportPart = (typeof REPORT_PARTS)[number];

/** What report is asked for. */
export interface ReportRequest {
  readonly period: Period;
  /** The data cut: facts of that day are seen, later ones are not. */
  readonly asAt: PlainDate;
  /** What it is narrowed to; everything of the team where it is left out. */
  readonly narrowing?: Narrowing;
  /** Parts that cost more than the rest, asked for by name. */
  readonly include?: readonly ReportPart[];
}

/** What the trail is told of a report; parts that read other periods only where they were asked for. */
export function toldOfReport({ period, asAt, narrowing = {}, include = [] }: ReportRequest): ToldOfReport {
  return { period: period.label, asAt, ...narrowing, ...(include.length === 0 ? {} : { include }) };
}

interface ToldOfReport extends Narrowing {
  readonly period: string;
  readonly asAt: PlainDate;
  readonly include?: readonly ReportPart[];
}

/** What a report is of, as it stands in an address. */
export interface AskedReport extends Narrowing {
  /** A period by its label, not yet read. */
  readonly period: string;
  /** Today where it is left out. */
  readonly asAt?: PlainDate | undefined;
  /** None where it is left out. */
  readonly include?: readonly ReportPart[] | undefined;
}

/**
 * The request that an address makes.
 *
 * @param today the day on which it is asked: no data cut lies after it
 * @returns refused where the period is none, has not begun at the cut, or the cut is in the future
 */
export function reportRequest(
  { period: label, asAt: cut, include = [], ...narrowing }: AskedReport,
  today: PlainDate,
): Outcome<ReportRequest> {
  const faults: Fault[] = [];
  const period = parsePeriod(label);
  if (period === null) {
    const message =
      'Give a financial quarter as 2026-27-Q1, a financial year as 2026-27, or two dates as 2026-04-01..2026-05-31.';
    faults.push({ pointer: 'period', code: 'not-a-period', message });
  }
  const asAt = cut ?? today;
  if (asAt > today) {
    faults.push({ pointer: 'asAt', code: 'in-the-future', message: 'The data cut cannot be in the future.' });
  }
  if (period !== null && period.firstDay > asAt) {
    faults.push({
      pointer: 'period',
      code: 'in-the-future',
      message: 'The period has not begun at the data cut.',
    });
  }
  if (period === null || faults.length > 0) return refused({ code: 'rules-broken', faults });
  return done({ period, asAt, narrowing, include });
}
