import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Figure } from '../../../src/domain/indicators/figure.js';
import { QuarterlyReportShown } from '../../../src/http/reports/quarterly-schema.js';
import { givenDemo, reportOf } from '../../support/report.js';
import { asRecord, asRecords, expectProblem, itemsOf } from '../../support/response.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp, TestClient } from '../../support/start-app.js';

type Json = Readonly<Record<string, unknown>>;

const QUARTER = 'period=2026-27-Q1&asAt=2026-09-20';

let service: TestApp;
let lead: TestClient;
let report: Json;
beforeAll(async () => {
  service = await startApp();
  const [first] = await givenDemo(service);
  if (first === undefined) throw new Error('The scenario has a lead.');
  lead = first;
  report = await reportOf(lead, `${QUARTER}&include=comparisons,trend`);
});
afterAll(() => service.close());

describe('a report that looks at other periods', () => {
  it('is what its schema says, with nothing more and nothing less', () => {
    expect(QuarterlyReportShown.parse(report)).toEqual(report);
  });

  it('differs from the plain one in these parts and what is told of them only', async () => {
    const plain = await reportOf(lead, QUARTER);
    expect(plain).toMatchObject({ comparisons: null, trend: null });
    const { comparisons, trend, narrative, ...rest } = report;
    expect([comparisons, trend, narrative]).not.toContain(undefined);
    expect(rest).toEqual(
      Object.fromEntries(
        Object.entries(plain).filter(([name]) => !['comparisons', 'trend', 'narrative'].includes(name)),
      ),
    );
  });

  it('shows of an earlier period what its own report shows as long after its end', async () => {
    for (const comparison of asRecords(report['comparisons'])) {
      const { label } = asRecord(comparison['period']);
      const own = await reportOf(lead, `period=${String(label)}&asAt=${String(comparison['asAt'])}`);
      const figures = new Map(
        asRecords(own['indicators']).map((row) => {
          const figure = row['figure'] as Figure;
          return [figure.id, figure];
        }),
      );
      const shares = asRecords(comparison['shares']);
      expect(shares.length).toBeGreaterThan(14);
      for (const { figureId, then } of shares) {
        const known = figures.get(String(figureId));
        // A measure that nobody had then stands in no table of its own.
        if (known === undefined) expect(then).toMatchObject({ denominator: 0 });
        else expect(then, String(figureId)).toEqual(known);
      }
    }
    const periods = asRecords(report['comparisons']).map((each) => asRecord(each['period'])['label']);
    expect(periods).toEqual(['2025-26-Q4', '2025-26-Q1']);
  });

  it('ends every chart with the figure of the report itself', () => {
    const figures = new Map(
      asRecords(report['indicators']).map((row) => {
        const figure = row['figure'] as Figure;
        return [figure.id, figure];
      }),
    );
    const charts = asRecords(asRecord(report['trend'])['charts']);
    const shares = charts.filter(({ unit }) => unit === 'percent');
    expect(shares.length).toBeGreaterThan(4);
    for (const { figureId, points } of shares) {
      const last = asRecords(points).at(-1);
      const figure = figures.get(String(figureId));
      expect(last, String(figureId)).toMatchObject({
        quarter: '2026-27-Q1',
        n: figure?.denominator,
        numerator: figure?.numerator,
      });
    }
    for (const { points } of charts) expect(asRecords(points)).toHaveLength(12);
  });

  it('opens the figures of an earlier period by the period and cut it was seen by', async () => {
    const [comparison] = asRecords(report['comparisons']);
    const { label } = asRecord(comparison?.['period']);
    const query = `period=${String(label)}&asAt=${String(comparison?.['asAt'])}`;
    const [share] = asRecords(comparison?.['shares']);
    const path = `/api/v1/reports/quarterly/figures/${String(share?.['figureId'])}/members?${query}`;
    expect((await lead.get(path)).body).toMatchObject({ figure: share?.['then'] });
  });

  it.each([
    ['', 'report-read', {}],
    ['', 'report-read', { include: ['comparisons'] }],
    ['.txt', 'report-read', { include: ['trend'] }],
    ['.csv', 'report-exported', { form: 'csv' }],
    ['.csv', 'report-exported', { form: 'csv', include: ['comparisons', 'trend'] }],
  ])('is told to the trail with what was asked for: quarterly%s, %s, %j', async (form, action, told) => {
    const include = 'include' in told ? `&include=${told.include.join(',')}` : '';
    const answer = await lead.get(`/api/v1/reports/quarterly${form}?${QUARTER}${include}`);
    expect(answer.status).toBe(200);
    const [event] = itemsOf(await lead.get('/api/v1/audit-events?limit=1'));
    expect([event?.['action'], event?.['details']]).toEqual([
      action,
      { period: '2026-27-Q1', asAt: '2026-09-20', ...told },
    ]);
  });

  it.each(['everything', 'trend,', 'trend;comparisons', ''])(
    'is refused where %j is asked for',
    async (include) => {
      const response = await lead.get(`/api/v1/reports/quarterly?${QUARTER}&include=${include}`);
      expectProblem(response, { status: 400, type: 'malformed-request', pointers: ['include'] });
    },
  );
});
