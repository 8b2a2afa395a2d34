import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Figure } from '../../../src/domain/indicators/figure.js';
import { QuarterlyReportShown } from '../../../src/http/reports/quarterly-schema.js';
import { givenDemo, reportOf } from '../../support/report.js';
import { figuresIn } from '../../support/reported.js';
import { asRecord } from '../../support/response.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp, TestClient } from '../../support/start-app.js';

const PERIODS = [
  ['a quarter that is over', 'period=2026-27-Q2'],
  ['a year that is over', 'period=2025-26'],
  ['two dates', 'period=2026-05-01..2026-07-15'],
  ['a quarter that is not over', 'period=2026-27-Q3'],
  ['a quarter as it was on its last day', 'period=2026-27-Q1&asAt=2026-06-30'],
] as const;

/** z of a 95 % interval, from tables of the normal distribution. */
const Z = 1.959964;

describe('the quarterly report', () => {
  let service: TestApp;
  let lead: TestClient;
  const reports = new Map<string, Readonly<Record<string, unknown>>>();

  beforeAll(async () => {
    service = await startApp();
    const [large] = await givenDemo(service);
    if (large === undefined) throw new Error('The scenario has no lead.');
    lead = large;
    for (const [, query] of PERIODS) reports.set(query, await reportOf(lead, query));
  });
  afterAll(() => service.close());

  const report = (query: string): Readonly<Record<string, unknown>> => asRecord(reports.get(query));
  const figures = (query: string): readonly Figure[] => figuresIn(report(query));

  describe.each(PERIODS)('of %s', (_name, query) => {
    it('is what its schema says, with nothing more and nothing less', () => {
      expect(QuarterlyReportShown.parse(report(query))).toEqual(report(query));
    });

    it('holds many figures, and every one counts somebody in some period', () => {
      expect(figures(query).length).toBeGreaterThan(100);
      expect(figures(query).filter((figure) => figure.denominator > 0).length).toBeGreaterThan(60);
    });

    it('accounts in each figure for every referral of its cohort, once', () => {
      const cohorts = asRecord(report(query)['cohorts']);
      for (const figure of figures(query)) {
        if (figure.cohort === 'waiting') continue;
        const { referrals, registeredInError } = asRecord(cohorts[figure.cohort]);
        const leftOut = figure.excluded.reduce((sum, { count }) => sum + count, 0);
        const all = figure.denominator + figure.open + leftOut;
        expect(all, figure.id).toBe(Number(referrals) + Number(registeredInError));
      }
    });

    it('keeps numerators within denominators, and people within referrals', () => {
      for (const { id, numerator, denominator, open, people, excluded } of figures(query)) {
        expect(numerator, id).toBeGreaterThanOrEqual(0);
        expect(numerator, id).toBeLessThanOrEqual(denominator);
        expect(open, id).toBeGreaterThanOrEqual(0);
        expect(people.numerator, id).toBeLessThanOrEqual(numerator);
        expect(people.denominator, id).toBeLessThanOrEqual(denominator);
        expect(people.numerator, id).toBeLessThanOrEqual(people.denominator);
        expect(people.denominator > 0, id).toBe(denominator > 0);
        for (const { count } of excluded) expect(count, id).toBeGreaterThan(0);
      }
    });

    it('gives percentages that are their counts, within the interval of Wilson', () => {
      for (const { id, numerator, denominator, percentage, interval } of figures(query)) {
        if (denominator === 0) {
          expect([percentage, interval], id).toEqual([null, null]);
          continue;
        }
        const share = numerator / denominator;
        expect(percentage, id).toBeCloseTo(100 * share, 9);
        // (p + z2/2n -+ z sqrt(p(1 - p)/n + z2/4n2)) / (1 + z2/n)
        const spread = (Z * Z) / denominator;
        const half = Z * Math.sqrt((share * (1 - share)) / denominator + spread / (4 * denominator));
        const { low, high } = asRecord(interval);
        expect(low, id).toBeCloseTo((100 * (share + spread / 2 - half)) / (1 + spread), 4);
        expect(high, id).toBeCloseTo((100 * (share + spread / 2 + half)) / (1 + spread), 4);
        expect(Number(low), id).toBeLessThanOrEqual(Number(percentage));
        expect(Number(high), id).toBeGreaterThanOrEqual(Number(percentage));
      }
    });

    it('brackets every figure with open cases by its bounds', () => {
      for (const { id, numerator, denominator, open, percentage, bounds } of figures(query)) {
        if (open === 0) {
          expect(bounds, id).toBeNull();
          continue;
        }
        const { worst, best } = asRecord(bounds);
        expect(worst, id).toBeCloseTo((100 * numerator) / (denominator + open), 9);
        expect(best, id).toBeCloseTo((100 * (numerator + open)) / (denominator + open), 9);
        if (percentage === null) continue;
        expect(Number(worst), id).toBeLessThanOrEqual(percentage);
        expect(Number(best), id).toBeGreaterThanOrEqual(percentage);
      }
    });

    it('shows one id as one figure, wherever it stands', () => {
      const known = new Map<string, Figure>();
      for (const figure of figures(query)) {
        expect(figure, figure.id).toEqual(known.get(figure.id) ?? figure);
        known.set(figure.id, figure);
      }
    });

    it('prints the rule of every figure among its definitions', () => {
      const { rules } = asRecord(report(query)['definitions']);
      const printed = new Set((rules as { ruleId: string }[]).map(({ ruleId }) => ruleId));
      const unprinted = figures(query).filter(({ ruleId }) => !printed.has(ruleId));
      expect(unprinted.map(({ id }) => id)).toEqual([]);
    });
  });

  it('shares out referrals by source, pathway and diagnosis, none twice and none left', () => {
    for (const [, query] of PERIODS) {
      const { received, ...parts } = asRecord(report(query)['referrals']);
      for (const name of ['bySource', 'byPathway', 'byDiagnosis']) {
        const rows = parts[name] as Figure[];
        expect(
          rows.reduce((sum, { numerator }) => sum + numerator, 0),
          name,
        ).toBe(received);
      }
    }
  });

  it('has open cases with bounds in a quarter that is not over, so that these checks check something', () => {
    expect(figures('period=2026-27-Q3').filter(({ open }) => open > 0).length).toBeGreaterThan(10);
    expect(report('period=2026-27-Q3')).toMatchObject({
      provisional: { isProvisional: true, isPeriodOver: false },
    });
  });

  it('is well formed where there is nothing to count', async () => {
    const empty = await reportOf(service.as('lead'), 'period=2026-27-Q1');
    expect(QuarterlyReportShown.parse(empty)).toEqual(empty);
    expect(empty).toMatchObject({
      teamName: 'Marram Coast PR team',
      settingsVersion: 0,
      referrals: { received: 0, people: 0, bySource: [], byPathway: [], byDiagnosis: [] },
      outcomes: [],
      percentPredicted: [],
      reasons: { notStarting: [], notCompleting: [] },
    });
    for (const figure of figuresIn(empty)) {
      expect(figure, figure.id).toMatchObject({
        numerator: 0,
        denominator: 0,
        open: 0,
        excluded: [],
        percentage: null,
        interval: null,
        bounds: null,
      });
    }
  });
});
