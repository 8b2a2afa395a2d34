import { describe, expect, it } from 'vitest';
import { quartersUpTo } from '../../../src/domain/calendar/earlier-periods.js';
import { addDays, plainDate } from '../../../src/domain/calendar/plain-date.js';
import type { Period } from '../../../src/domain/calendar/period.js';
import type { ReferralFacts } from '../../../src/domain/cohort/referral-facts.js';
import { buildQuarterlyReport } from '../../../src/reports/quarterly/build-quarterly-report.js';
import { countedEarlier } from '../../../src/reports/quarterly/comparisons-section.js';
import type { EarlierFacts } from '../../../src/reports/quarterly/earlier-quarter.js';
import { quarterOfTrend } from '../../../src/reports/quarterly/quarter-of-trend.js';
import { trendSections } from '../../../src/reports/quarterly/document/trend.js';
import type { QuarterlyReport } from '../../../src/reports/quarterly/report-model.js';
import { aReferral, aResult, anAssessment, aSession, closed } from '../../support/facts.js';
import { WORKED_INPUT } from '../../support/worked-quarter.js';

const AS_AT = plainDate('2026-09-30');
const QUARTERS = quartersUpTo(plainDate('2026-06-30'), 12);
const [NOW, FORMER] = [lastOf(QUARTERS, 0), lastOf(QUARTERS, 1)];

function lastOf(periods: readonly Period[], back: number): Period {
  const found = periods.at(-1 - back);
  if (found === undefined) throw new Error('There are not so many quarters.');
  return found;
}

/** Referrals received on the first day of a quarter, of whom some started a day later and all others declined. */
function received(
  period: Period,
  numbers: { readonly started: number; readonly of: number },
): ReferralFacts[] {
  const nextDay = addDays(period.firstDay, 1);
  return Array.from({ length: numbers.of }, (_, index) =>
    aReferral({
      referralId: `${period.label}-${index}`,
      receivedOn: period.firstDay,
      ...(index < numbers.started
        ? { contacts: [aSession(nextDay)] }
        : { closure: closed(nextDay, 'declined') }),
    }),
  );
}

/** People discharged in a quarter with these changes of one measure. */
function changed(period: Period, changes: readonly number[]): ReferralFacts[] {
  const day = period.firstDay;
  const health = (value: number) => [
    aResult('cat-total', value, { conditions: { questionnaire: 'copd-assessment-test' } }),
  ];
  return changes.map((change, index) =>
    aReferral({
      referralId: `${period.label}-${index}`,
      receivedOn: addDays(day, -90),
      contacts: [aSession(addDays(day, -60))],
      assessments: [
        anAssessment('baseline', addDays(day, -70), health(20)),
        anAssessment('discharge', day, health(20 + change)),
      ],
      closure: closed(day),
    }),
  );
}

function seen(period: Period, facts: readonly ReferralFacts[]): EarlierFacts {
  return { period, asAt: addDays(period.lastDay, 92), facts };
}

function reportOf(input: Partial<typeof WORKED_INPUT>): QuarterlyReport {
  return buildQuarterlyReport({ ...WORKED_INPUT, period: NOW, asAt: AS_AT, ...input });
}

const counted = (quarters: readonly EarlierFacts[]) =>
  quarters.map((each) => quarterOfTrend(WORKED_INPUT, each));

const told = ({ narrative }: QuarterlyReport): string => narrative.map(({ text }) => text).join(' ');

/** Of many comparisons some are beyond chance by chance: what is told of one says of how many it is picked. */
function amongCompared({ comparisons }: QuarterlyReport): string {
  const shares = (comparisons ?? []).flatMap((each) => each.shares);
  // The wait less chosen days is the same wait again.
  const means = (comparisons ?? []).flatMap((each) => each.means);
  const claims = [
    ...shares.filter(({ figureId }) => figureId !== 'started-within-90-days-less-chosen-delay'),
    ...means,
  ].map(({ claim }) => claim);
  const beyond = claims.filter((claim) => claim === 'beyond-chance').length;
  const compared = claims.filter((claim) => claim !== 'too-few').length;
  const found = beyond === 1 ? 'the only one such' : `one of ${beyond} such`;
  return `${found} among ${compared} compared, where chance alone makes about 1 in 20.`;
}

describe('a report beside the period before', () => {
  const compare = (now: readonly ReferralFacts[], then: readonly ReferralFacts[]): QuarterlyReport =>
    reportOf({
      facts: now,
      compareWith: [countedEarlier(WORKED_INPUT, { than: 'former-period', ...seen(FORMER, then) })],
    });

  // Newcombe 1998, Statist Med 17:873-890, Table II: 56/70 less 48/80 by method 10, 0.0524 to 0.3339.
  it('gives the published interval of 56 of 70 less 48 of 80', () => {
    const report = compare(received(NOW, { started: 56, of: 70 }), received(FORMER, { started: 48, of: 80 }));
    const [comparison] = report.comparisons ?? [];
    expect(comparison).toMatchObject({ than: 'former-period', period: FORMER, asAt: '2026-07-01' });
    const uptake = comparison?.shares.find(({ figureId }) => figureId === 'uptake');
    expect([uptake?.now.numerator, uptake?.then.numerator]).toEqual([56, 48]);
    expect(uptake?.difference?.points).toBeCloseTo(20, 9);
    expect(uptake?.difference?.interval.low).toBeCloseTo(5.24, 2);
    expect(uptake?.difference?.interval.high).toBeCloseTo(33.39, 2);
    expect(uptake?.claim).toBe('beyond-chance');
    expect(told(report)).toContain(
      'Started, of those referred: 80.0 % (56 of 70); the period before, 2025-26-Q4 (January to March 2026), 60.0 % (48 of 80): a difference of 20 points (5 to 33), more than chance; ',
    );
    expect(told(report)).toContain(amongCompared(report));
  });

  // Newcombe, the same table: 9/10 less 3/10, 0.1705 to 0.8090.
  it('claims nothing of ten people, whatever the interval', () => {
    const report = compare(received(NOW, { started: 9, of: 10 }), received(FORMER, { started: 3, of: 10 }));
    const uptake = report.comparisons?.[0]?.shares.find(({ figureId }) => figureId === 'uptake');
    expect(uptake?.difference?.interval.low).toBeCloseTo(17.05, 2);
    expect(uptake?.difference?.interval.high).toBeCloseTo(80.9, 2);
    expect(uptake?.claim).toBe('too-few');
    expect(told(report)).not.toContain('a difference of');
  });

  it('claims nothing of a difference that chance may make: 24 of 40 and 26 of 40', () => {
    const report = compare(received(NOW, { started: 24, of: 40 }), received(FORMER, { started: 26, of: 40 }));
    const uptake = report.comparisons?.[0]?.shares.find(({ figureId }) => figureId === 'uptake');
    expect(uptake?.claim).toBe('within-chance');
  });

  // Student 1908, extra hours of sleep by two drugs, taken as two groups: R's t.test prints -1.58, -3.3654832 to 0.2054832.
  it('gives the published interval of two means', () => {
    const first = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2];
    const second = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];
    const report = compare(changed(NOW, first), changed(FORMER, second));
    const change = report.comparisons?.[0]?.means.find(({ measureId }) => measureId === 'cat-total');
    expect(change?.now.mean).toBeCloseTo(0.75, 9);
    expect(change?.then.mean).toBeCloseTo(2.33, 9);
    expect(change?.difference?.value).toBeCloseTo(-1.58, 9);
    expect(change?.difference?.interval.low).toBeCloseTo(-3.3654832, 6);
    expect(change?.difference?.interval.high).toBeCloseTo(0.2054832, 6);
    expect(change?.claim).toBe('too-few');
  });

  it('tells of a mean change that differs by more than chance, of enough pairs', () => {
    // Twenty of -1 and twenty of -5: mean -3, SD 2 x sqrt(40 / 39) = 2.0255; then twenty of 0 and twenty of -2: mean -1,
    // SD 1.0127. Welch: variance 2.0255^2 / 40 + 1.0127^2 / 40 = 0.12820, square root 0.35806; degrees of freedom 57.35,
    // t 2.0022; half-width 0.7169.
    const twice = (a: number, b: number): readonly number[] => [
      ...Array<number>(20).fill(a),
      ...Array<number>(20).fill(b),
    ];
    const report = compare(changed(NOW, twice(-1, -5)), changed(FORMER, twice(0, -2)));
    expect(told(report)).toContain(
      'CAT, mean change in points: -3.0 (40 pairs); the period before, 2025-26-Q4 (January to March 2026), -1.0 (40 pairs): ' +
        'a difference of -2.0 (-2.7 to -1.3), more than chance; ',
    );
    expect(told(report)).toContain(amongCompared(report));
  });

  it('is well formed where there was nobody before', () => {
    const report = compare(received(NOW, { started: 24, of: 40 }), []);
    const [comparison] = report.comparisons ?? [];
    expect(comparison?.shares.length).toBeGreaterThan(10);
    for (const { difference, claim } of comparison?.shares ?? []) {
      expect([difference, claim]).toEqual([null, 'too-few']);
    }
  });

  it('is null where nobody asked', () => {
    expect(reportOf({})).toMatchObject({ comparisons: null, trend: null });
  });
});

describe('twelve quarters', () => {
  /** As many who started as the numbers say, of so many in each quarter. */
  const trendOf = (started: readonly number[], of: number): QuarterlyReport => {
    const quarters = QUARTERS.map((period, index) =>
      seen(period, received(period, { started: started[index] ?? 0, of })),
    );
    return reportOf({ facts: quarters.at(-1)?.facts ?? [], trendOver: counted(quarters) });
  };
  const chartOf = ({ trend }: QuarterlyReport, id: string) => {
    const chart = trend?.charts.find((each) => each.id === id);
    if (chart === undefined) throw new Error(`No chart ${id}.`);
    return chart;
  };

  it('show a last quarter outside its limits', () => {
    // Eleven quarters of 20 of 40 and one of 38: 258 of 480, 53.75 %. Sigma of 40: sqrt(.5375 x .4625 / 40) = 7.8835 %.
    const report = trendOf([...Array<number>(11).fill(20), 38], 40);
    const chart = chartOf(report, 'trend.uptake');
    expect(chart.kind).toBe('p');
    expect(chart.centre).toBeCloseTo(53.75, 9);
    expect(chart.points[11]).toMatchObject({ quarter: '2026-27-Q1', n: 40, numerator: 38, value: 95 });
    expect(chart.points[11]?.lower).toBeCloseTo(53.75 - 3 * 7.8835, 2);
    expect(chart.points[11]?.upper).toBeCloseTo(53.75 + 3 * 7.8835, 2);
    expect(chart.signals).toMatchObject([
      { rule: 'outside', direction: 'up', quarters: ['2026-27-Q1'] },
      // Eleven quarters below the centre.
      { rule: 'shift', direction: 'down' },
    ]);
    expect(told(report)).toContain(
      'Started, of those referred, over 12 quarters: a point outside its limits, upwards, up to 2026-27-Q1 (April to June 2026).',
    );
  });

  it('tell signals of one rule and side in one sentence, and rows of neighbours once', () => {
    // Six quarters of 5 of 40 and six of 35: half of all, sigma 7.9 %, so that every quarter lies outside.
    const report = trendOf([...Array<number>(6).fill(5), ...Array<number>(6).fill(35)], 40);
    const plots = trendSections(report).flatMap(({ blocks }) =>
      blocks.filter((block) => block.kind === 'plot'),
    );
    const title =
      plots.map((plot) => plot.title).find((each) => each.startsWith('Started, of those referred')) ?? '';
    const [first = '', ...more] = title.split('; ');
    expect(first).toContain(
      'a point outside its limits, below, in 2023-24-Q2 (July to September 2023), in 2023-24-Q3',
    );
    expect(first).toContain(' and in 2024-25-Q3 (October to December 2024)');
    expect(more.map((each) => each.replaceAll(/ \([^)]*\)/g, ''))).toEqual([
      'a point outside its limits, above, in 2024-25-Q4, in 2025-26-Q1, in 2025-26-Q2, in 2025-26-Q3, in 2025-26-Q4 and in 2026-27-Q1',
      'two of three points in a row beyond two thirds of the way to the same limit, below, from 2023-24-Q2 to 2024-25-Q3',
      'two of three points in a row beyond two thirds of the way to the same limit, above, from 2024-25-Q4 to 2026-27-Q1',
    ]);
  });

  it('show a shift of seven, but not of fewer than 30 referrals', () => {
    // Five quarters of 1 and seven of 3: the centre lies between. Seven quarters of 5 hold 35 referrals, of 4 only 28.
    const started = [1, 1, 1, 1, 1, 3, 3, 3, 3, 3, 3, 3];
    expect(chartOf(trendOf(started, 5), 'trend.uptake').signals).toMatchObject([
      { rule: 'shift', direction: 'up', quarters: QUARTERS.slice(5).map(({ label }) => label) },
    ]);
    expect(chartOf(trendOf(started, 4), 'trend.uptake').signals).toEqual([]);
  });

  it('show nothing where chance explains all', () => {
    const report = trendOf([20, 22, 19, 21, 20, 18, 21, 22, 19, 20, 21, 20], 40);
    expect(chartOf(report, 'trend.uptake').signals).toEqual([]);
    expect(told(report)).not.toContain('quarters');
  });

  it('chart numbers received about their mean, with limits by the moving range', () => {
    // 40 and 44 in turn: mean 42, every moving range 4, limits 42 -+ 2.66 x 4 = 31.36 and 52.64.
    const quarters = QUARTERS.map((period, index) =>
      seen(period, received(period, { started: 10, of: index % 2 === 0 ? 40 : 44 })),
    );
    const chart = chartOf(reportOf({ trendOver: counted(quarters) }), 'trend.received');
    expect(chart).toMatchObject({ kind: 'xmr', unit: 'referrals', centre: 42, signals: [] });
    expect(chart.points[0]?.lower).toBeCloseTo(31.36, 9);
    expect(chart.points[0]?.upper).toBeCloseTo(52.64, 9);
  });

  it('take no quarter from before the first referral for one in which nobody was referred', () => {
    const quarters = QUARTERS.map((period, index) =>
      seen(period, index < 2 ? [] : received(period, { started: 10, of: index === 5 ? 1 : 40 })),
    );
    const chart = chartOf(reportOf({ trendOver: counted(quarters) }), 'trend.received');
    expect(chart.points.map(({ value }) => value)).toEqual([
      null,
      null,
      40,
      40,
      40,
      1,
      ...Array<number>(6).fill(40),
    ]);
    expect(chart).toMatchObject({ kind: 'run', centre: 40, signals: [] });
  });

  it('are a run chart about the median where some quarters have nobody', () => {
    const quarters = QUARTERS.map((period, index) =>
      seen(period, index < 6 ? [] : received(period, { started: 15 + index, of: 40 })),
    );
    const chart = chartOf(reportOf({ trendOver: counted(quarters) }), 'trend.uptake');
    // 21 to 26 of 40: the median lies between 23 and 24 of 40, 58.75 %.
    expect(chart).toMatchObject({ kind: 'run', signals: [] });
    expect(chart.centre).toBeCloseTo(58.75, 9);
    expect(chart.points[0]).toMatchObject({ n: 0, value: null, lower: null, upper: null });
  });

  it('chart the median wait of those who started', () => {
    const chart = chartOf(trendOf(Array<number>(12).fill(20), 40), 'trend.days-to-start');
    expect(chart.points.map(({ n, value }) => [n, value])).toEqual(Array(12).fill([20, 1]));
    // They do not vary at all: nothing to signal.
    expect(chart.signals).toEqual([]);
  });
});
