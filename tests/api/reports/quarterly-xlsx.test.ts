import type { Response } from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Figure } from '../../../src/domain/indicators/figure.js';
import type { QuarterlyReport } from '../../../src/reports/quarterly/report-model.js';
import { givenDemo, reportOf } from '../../support/report.js';
import { figuresIn } from '../../support/reported.js';
import { asRecords, asRecord } from '../../support/response.js';
import { readSheets, tableCalled, tablesOf } from '../../support/sheets.js';
import type { ReadSheet, SheetTable } from '../../support/sheets.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp, TestClient } from '../../support/start-app.js';

const PATH = '/api/v1/reports/quarterly.xlsx';

describe('the report as a spreadsheet', () => {
  let service: TestApp;
  let lead: TestClient;
  let report: QuarterlyReport;
  let sheets: readonly ReadSheet[];
  /** Those of the sections. */
  let tables: readonly SheetTable[];
  beforeAll(async () => {
    service = await startApp();
    lead = (await givenDemo(service))[0] ?? service.as(null);
    report = (await reportOf(lead, 'period=2025-26')) as unknown as QuarterlyReport;
    sheets = await readSheets(await fileOf(lead, 'period=2025-26'));
    tables = tablesOf(sheets).filter(({ sheet }) => sheet !== 'All numbers');
  });
  afterAll(() => service.close());

  it('has a sheet a section, each with the team, the period and the data cut', () => {
    expect(sheets.map(({ sheet }) => sheet)).toEqual([
      'Summary',
      'Steps',
      'Waiting',
      'Completion',
      'Outcomes',
      'Predicted',
      'Indicators',
      'Breakdowns',
      'Sites',
      'Data quality',
      'Definitions',
      'All numbers',
    ]);
    for (const { rows } of sheets) {
      expect(rows[0]?.[0]).toMatch(/^Marram Coast PR team: 2025-26 \(April 2025 to March 2026\): /);
      expect(rows[1]?.[0]).toBe('1 April 2025 to 31 March 2026. Data cut 25 November 2026.');
    }
  });

  it('has every number of every figure of the JSON, unrounded', () => {
    const rows = tables.flatMap((table) => table.rows).filter((row) => row['n'] !== undefined);
    const figures = tabledFigures(report);
    expect(figures.length).toBeGreaterThan(400);
    for (const figure of figures) {
      const found = rows.filter((row) => row['Figure id'] === figure.id);
      expect(found.length, figure.id).toBeGreaterThan(0);
      for (const row of found) expect(numbersOf(row), figure.id).toEqual(expectedNumbers(figure));
    }
  });

  it('has no figure that the JSON has not', () => {
    const toMend = report.dataQuality.mendFirst.map(({ figureId }) => figureId);
    const known = new Set([...figuresIn([report]).map(({ id }) => id), ...toMend]);
    const ids = tables.flatMap(({ rows }) => rows).flatMap((row) => row['Figure id'] ?? []);
    expect(ids.filter((id) => !known.has(String(id)))).toEqual([]);
  });

  it('has both ends and the change of every measure, unrounded', () => {
    const rows = tableCalled(tables, 'Both ends and the change, by measure');
    expect(report.outcomes.length).toBeGreaterThan(5);
    for (const { measureId, likeForLike, allPairs } of report.outcomes) {
      for (const [who, pairs] of [
        ['like for like (headline)', likeForLike],
        ['all pairs', allPairs],
      ] as const) {
        const row = rows.find((each) => each['Measure id'] === measureId && each['Who'] === who);
        expect(row, `${measureId} ${who}`).toMatchObject({
          Pairs: pairs.pairs,
          'Baseline, mean': pairs.baseline.mean,
          'Baseline, SD': pairs.baseline.sd,
          'Discharge, mean': pairs.discharge.mean,
          'Discharge, SD': pairs.discharge.sd,
          'Change, mean': pairs.change.mean,
          '95 % interval: low': pairs.change.interval?.low ?? null,
          '95 % interval: high': pairs.change.interval?.high ?? null,
          'Change, median': pairs.changeSummary.median,
          'Quartiles: low': pairs.changeSummary.lowerQuartile,
          'Quartiles: high': pairs.changeSummary.upperQuartile,
          'Standardised response mean': pairs.change.standardisedResponseMean,
        });
      }
    }
  });

  it('has what the missing pairs could make of every share that is judged', () => {
    const rows = tableCalled(tables, 'Reached the MID like for like, if none or all');
    const judged = report.outcomes.filter(({ responders }) => (responders?.eligible ?? 0) > 0);
    expect(judged.length).toBeGreaterThan(5);
    expect(rows).toHaveLength(judged.length);
    judged.forEach(({ shortName, responders }, index) => {
      expect(rows[index]).toMatchObject({
        Measure: shortName,
        'Reached it': responders?.achieved,
        'Measured again': responders?.measured,
        'With a baseline': responders?.eligible,
        '% if none or all of the missing: low': responders?.worst,
        '% if none or all of the missing: high': responders?.best,
        'Measured again, %': responders?.measuredShare,
      });
    });
  });

  it('has how changes spread, and the pairs add up to the headline', () => {
    const spread = report.outcomes.filter(({ distribution }) => distribution !== null);
    expect(spread.length).toBeGreaterThan(5);
    for (const { shortName, distribution, likeForLike } of spread) {
      const rows = tableCalled(tables, `${shortName}: pairs by change`);
      expect(rows.map((row) => row['Pairs'])).toEqual(distribution?.classes.map(({ pairs }) => pairs));
      expect(rows.reduce((sum, row) => sum + Number(row['Pairs']), 0)).toBe(likeForLike.pairs);
    }
  });

  it('has the cumulative incidence of both clocks and the simple waits', () => {
    const [receipt] = report.waiting.clocks;
    const rows = tableCalled(tables, 'From receipt of the referral to the start: cumulative incidence');
    expect(rows).toHaveLength(5);
    receipt?.days.forEach(({ day, atRisk, started, startedByDay, stillWaitingPercent }, index) => {
      expect(rows[index]).toMatchObject({
        'By day': `day ${day}`,
        'Seen so long': atRisk,
        'Started by then': startedByDay.numerator,
        'Started, %': started?.percent ?? null,
        '95 % interval: low': started?.interval?.low ?? null,
        '95 % interval: high': started?.interval?.high ?? null,
        'Still waiting, %': stillWaitingPercent,
      });
    });
    const waits = tableCalled(tables, 'Simple waits in days');
    report.waits.forEach(({ reached, daysOfThoseWhoReachedIt, stillWaiting, left }, index) => {
      expect(waits[index]).toMatchObject({
        'Reached it': reached.numerator,
        of: reached.denominator,
        'Median, days': daysOfThoseWhoReachedIt.median,
        'Still waiting': stillWaiting.numerator,
        Left: left.numerator,
      });
    });
  });

  it('has the definitions by which it was counted', () => {
    const rules = tableCalled(tables, 'Rules').map((row) => row['Rule']);
    expect(rules).toEqual(report.definitions.rules.map(({ ruleId }) => ruleId));
    const thresholds = tableCalled(tables, 'Thresholds that judged a change');
    expect(thresholds.map((row) => row['Value'])).toEqual(
      report.definitions.thresholds.map(({ value }) => value),
    );
  });

  it('is narrowed and cut as the address says, and named for it', async () => {
    const response = await lead.get(`${PATH}?period=2026-27-Q2&asAt=2026-10-31&diagnosis=copd`);
    expect(response.status).toBe(200);
    expect(response.headers['content-type']).toBe(
      'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
    );
    expect(response.headers['content-disposition']).toBe(
      'attachment; filename="report-2026-27-Q2-as-at-2026-10-31-narrowed.xlsx"',
    );
    const [summary] = await readSheets(
      await fileOf(lead, 'period=2026-27-Q2&asAt=2026-10-31&diagnosis=copd'),
    );
    const texts = summary?.rows.map(([first]) => first);
    expect(texts).toContain('Narrowed to diagnosis: COPD.');
    expect(texts?.[1]).toContain('Data cut 31 October 2026.');
  });

  it('is refused as the JSON is', async () => {
    const refused = await lead.get(`${PATH}?period=2026-27-Q5`);
    expect(refused.status).toBe(422);
    expect(refused.headers['content-type']).toBe('application/problem+json');
  });

  it('is told to the trail as an export', async () => {
    await fileOf(lead, 'period=2026-27-Q1&diagnosis=copd');
    const trail = await lead.get('/api/v1/audit-events?limit=20');
    const exported = asRecords(asRecord(trail.body)['items']).filter(
      ({ action }) => action === 'report-exported',
    );
    expect(exported.map(({ details }) => details)).toContainEqual({
      form: 'xlsx',
      period: '2026-27-Q1',
      asAt: '2026-11-25',
      diagnosis: 'copd',
    });
  });
});

async function fileOf(client: TestClient, query: string): Promise<Buffer> {
  const response = await client.get(`${PATH}?${query}`).buffer(true).parse(readBytes);
  if (response.status !== 200) throw new Error(String(response.status));
  return response.body as Buffer;
}

function readBytes(response: Response, done: (error: Error | null, body: Buffer) => void): void {
  const chunks: Buffer[] = [];
  const stream = response as unknown as NodeJS.ReadableStream;
  stream.on('data', (chunk: Buffer) => chunks.push(chunk));
  stream.on('end', () => done(null, Buffer.concat(chunks)));
}

/** Figures of the sections that stand in tables of figures. */
function tabledFigures(report: QuarterlyReport): readonly Figure[] {
  const { funnel, referrals, uptake, completion, outcomes, indicators, reasons } = report;
  const { breakdowns, sites, benchmarks, dataQuality } = report;
  return figuresIn([
    funnel,
    referrals,
    uptake,
    completion,
    outcomes,
    indicators,
    reasons,
    breakdowns,
    sites,
    benchmarks,
    dataQuality,
  ]);
}

const NUMBERS = [
  'n',
  'of',
  '%',
  '95 % interval: low',
  '95 % interval: high',
  'Open',
  '% if none or all of the open: low',
  '% if none or all of the open: high',
  'People',
] as const;

function numbersOf(row: Readonly<Record<string, unknown>>): readonly unknown[] {
  return NUMBERS.map((name) => row[name]);
}

function expectedNumbers({
  numerator,
  denominator,
  percentage,
  interval,
  open,
  bounds,
  people,
}: Figure): readonly unknown[] {
  return [
    numerator,
    denominator,
    percentage,
    interval?.low ?? null,
    interval?.high ?? null,
    open,
    bounds?.worst ?? null,
    bounds?.best ?? null,
    people.numerator,
  ];
}
