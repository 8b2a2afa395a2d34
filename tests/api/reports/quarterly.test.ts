import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import { QuarterlyReportShown } from '../../../src/http/reports/quarterly-schema.js';
import { buildDemo } from '../../../seeds/build-demo.js';
import { clientOf, startApp } from '../../support/start-app.js';
import type { TestApp, TestClient } from '../../support/start-app.js';

interface Figure {
  id: string;
  numerator: number;
  denominator: number;
  open: number;
  excluded: { count: number }[];
  percentage: number | null;
  interval: { low: number; high: number } | null;
  bounds: { worst: number; best: number } | null;
}

describe('the quarterly report', () => {
  let service: TestApp;
  let lead: TestClient;

  beforeAll(async () => {
    service = await startApp();
    const demo = await buildDemo(service.record.context, {
      today: plainDate('2026-11-25'),
      seed: 7,
      scale: 0.08,
    });
    const account = demo.accounts.find((candidate) => candidate.role === 'lead');
    lead = clientOf(service.app, account?.token ?? '');
  });
  afterAll(() => service.close());

  const report = async (query: string, client = lead): Promise<unknown> => {
    const answer = await client.get(`/api/v1/reports/quarterly?${query}`);
    expect(answer.status).toBe(200);
    return answer.body as unknown;
  };

  it.each([
    'period=2026-27-Q2',
    'period=2025-26',
    'period=2026-05-01..2026-07-15',
    'period=2026-27-Q1&asAt=2026-06-30',
  ])('is what its schema says, and every figure holds together: %s', async (query) => {
    const body = await report(query);
    expect(() => QuarterlyReportShown.parse(body)).not.toThrow();
    const figures = figuresIn(body);
    expect(figures.length).toBeGreaterThan(60);
    for (const figure of figures) {
      const { numerator, denominator, open, percentage, interval, bounds } = figure;
      expect(numerator, figure.id).toBeLessThanOrEqual(denominator);
      expect(percentage === null, figure.id).toBe(denominator === 0);
      if (percentage !== null && interval !== null) {
        expect(percentage, figure.id).toBeCloseTo((100 * numerator) / denominator, 9);
        expect(interval.low, figure.id).toBeLessThanOrEqual(percentage);
        expect(interval.high, figure.id).toBeGreaterThanOrEqual(percentage);
      }
      expect(bounds === null, figure.id).toBe(open === 0);
      if (bounds !== null && percentage !== null) {
        expect(bounds.worst, figure.id).toBeLessThanOrEqual(percentage);
        expect(bounds.best, figure.id).toBeGreaterThanOrEqual(percentage);
      }
    }
  });

  it('is well formed where there is nothing to count', async () => {
    const body = await report('period=2026-27-Q1', service.as('lead'));
    expect(() => QuarterlyReportShown.parse(body)).not.toThrow();
    expect(body).toMatchObject({ referrals: { received: 0, people: 0 } });
    expect(JSON.stringify(body)).not.toContain('NaN');
  });

  it('sees nothing later than its data cut', async () => {
    const early = (await report('period=2026-27-Q1&asAt=2026-05-01')) as { referrals: { received: number } };
    const late = (await report('period=2026-27-Q1')) as { referrals: { received: number } };
    expect(early.referrals.received).toBeLessThan(late.referrals.received);
  });

  it('gives the same numbers on the terminal', async () => {
    const body = (await report('period=2026-27-Q2')) as {
      indicators: { figure: Figure & { title: string } }[];
    };
    const { text } = await lead.get('/api/v1/reports/quarterly.txt?period=2026-27-Q2');
    for (const { figure } of body.indicators.slice(0, 8)) {
      expect(text).toContain(`${figure.numerator} of ${figure.denominator}`);
    }
  });

  it.each([
    ['no period', 'period=2026-28-Q1', 'period'],
    ['a fifth quarter', 'period=2026-27-Q5', 'period'],
    ['reversed dates', 'period=2026-05-02..2026-05-01', 'period'],
    ['a period that has not begun', 'period=2027-28', 'period'],
    ['a cut in the future', 'period=2026-27-Q1&asAt=2026-11-26', 'asAt'],
  ])('refuses %s', async (_name, query, pointer) => {
    const answer = await lead.get(`/api/v1/reports/quarterly?${query}`);
    expect(answer.status).toBe(422);
    expect(answer.body).toMatchObject({ type: '/problems/rules-broken', errors: [{ pointer }] });
  });
});

/** Every figure anywhere in a report. */
function figuresIn(value: unknown): readonly Figure[] {
  if (value === null || typeof value !== 'object') return [];
  const own = 'ruleId' in value && 'percentage' in value ? [value as unknown as Figure] : [];
  return [...own, ...Object.values(value).flatMap(figuresIn)];
}
