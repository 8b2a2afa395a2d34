import {
  aYearEarlier,
  formerPeriod,
  quartersUpTo,
  sameAgeCut,
} from '../../src/domain/calendar/earlier-periods.js';
import type { QuarterlyReportInput } from '../../src/reports/quarterly/build-quarterly-report.js';
import { countedEarlier } from '../../src/reports/quarterly/comparisons-section.js';
import { quarterOfTrend } from '../../src/reports/quarterly/quarter-of-trend.js';

/** With earlier periods and a trend over the same facts, seen as the service sees them. */
export function wholeInput(input: QuarterlyReportInput): QuarterlyReportInput {
  const { facts, period, asAt } = input;
  const seen = (each: typeof period) => ({ period: each, asAt: sameAgeCut(each, period, asAt), facts });
  const yearEarlier = aYearEarlier(period);
  return {
    ...input,
    compareWith: [
      countedEarlier(input, { than: 'former-period', ...seen(formerPeriod(period)) }),
      ...(yearEarlier === null
        ? []
        : [countedEarlier(input, { than: 'a-year-earlier' as const, ...seen(yearEarlier) })]),
    ],
    trendOver: quartersUpTo(period.lastDay, 12).map((each) => quarterOfTrend(input, seen(each))),
  };
}
