import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Figure } from '../../../src/domain/indicators/figure.js';
import { buildQuarterlyReport } from '../../../src/reports/quarterly/build-quarterly-report.js';
import { csvTable } from '../../../src/reports/quarterly/csv/csv-table.js';
import type { QuarterlyReport } from '../../../src/reports/quarterly/report-model.js';
import { writeCsv } from '../../../src/sheets/write-csv.js';
import { givenDemo, reportOf } from '../../support/report.js';
import { figuresIn } from '../../support/reported.js';
import { itemsOf } from '../../support/response.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp, TestClient } from '../../support/start-app.js';
import { WORKED_INPUT } from '../../support/worked-quarter.js';

type Row = Readonly<Record<string, string>>;

const QUERY = 'period=2025-26-Q4&include=comparisons,trend';

function readCsv(text: string | Buffer): readonly Row[] {
  return parse(text, { columns: true, bom: true });
}

/** A number of the file; null where the cell is empty. */
function numberIn(row: Row, column: string): number | null {
  const cell = row[column];
  if (cell === undefined) throw new Error(`The file has no column ${column}.`);
  if (cell === '') return null;
  const value = Number(cell);
  if (!Number.isFinite(value)) throw new Error(`${column} holds ${cell}, which is no number.`);
  return value;
}

const NUMBERS = [
  ...['n', 'numerator', 'denominator', 'open', 'excluded'],
  ...['value', 'low', 'high', 'worst', 'best', 'target'],
];

describe('the report as CSV', () => {
  let service: TestApp;
  let lead: TestClient;
  let report: QuarterlyReport;
  let rows: readonly Row[];
  let headers: Readonly<Record<string, string>>;
  beforeAll(async () => {
    service = await startApp();
    const [first] = await givenDemo(service);
    if (first === undefined) throw new Error('The scenario has a lead.');
    lead = first;
    report = (await reportOf(lead, QUERY)) as unknown as QuarterlyReport;
    const response = await lead
      .get(`/api/v1/reports/quarterly.csv?${QUERY}`)
      .buffer(true)
      .parse((answer, done) => {
        const parts: Buffer[] = [];
        answer.on('data', (part: Buffer) => parts.push(part));
        answer.on('end', () => done(null, Buffer.concat(parts)));
      });
    expect(response.status).toBe(200);
    headers = response.headers;
    const file: unknown = response.body;
    if (!Buffer.isBuffer(file)) throw new Error('The answer is no file.');
    rows = readCsv(file);
  });
  afterAll(() => service.close());

  it('is a file named for its period, in UTF-8', () => {
    expect(headers['content-type']).toBe('text/csv; charset=utf-8; header=present');
    expect(headers['content-disposition']).toBe(
      'attachment; filename="report-2025-26-Q4-as-at-2026-11-25.csv"',
    );
  });

  it('says in every row which report it is of, and in every number cell a number or nothing', () => {
    expect(rows.length).toBeGreaterThan(500);
    for (const row of rows) {
      expect(row).toMatchObject({
        team: 'Marram Coast PR team',
        period: '2025-26-Q4',
        asAt: '2026-11-25',
        narrowedTo: '',
      });
      const said = ['section', 'title', 'statistic', 'unit', 'ruleId', 'source'].map((name) => row[name]);
      expect(said, JSON.stringify(row)).not.toContain('');
      for (const column of NUMBERS) numberIn(row, column);
    }
  });

  it('has every figure of the JSON, number by number, with rule and source', () => {
    const figures = figuresIn(report);
    expect(figures.length).toBeGreaterThan(400);
    const sources = new Map(report.definitions.rules.map(({ ruleId, source }) => [ruleId, source.text]));
    const shares = rows.filter(
      ({ statistic, section }) => statistic === 'share' && section !== 'comparisons',
    );
    const byId = new Map(shares.map((row) => [row['figureId'] ?? '', row]));
    const ofEarlier = new Set(
      (report.comparisons ?? []).flatMap(({ shares: compared }) => compared.map(({ then }) => then)),
    );
    for (const figure of figures.filter((each) => !ofEarlier.has(each))) {
      const row = byId.get(figure.id);
      if (row === undefined) throw new Error(`The file has no ${figure.id}.`);
      expectSame(row, figure);
      expect([figure.id, row['source']]).toEqual([figure.id, sources.get(figure.ruleId)]);
    }
    expect(shares.filter(({ figureId }) => !figures.some(({ id }) => id === figureId))).toEqual([]);
  });

  it('has the figures of earlier periods, with period and cut', () => {
    for (const { period, asAt, shares } of report.comparisons ?? []) {
      const group = `${period.label}, data cut ${asAt}`;
      for (const { figureId, then, difference } of shares) {
        const own = rows.filter((row) => row['group'] === group && row['figureId'] === figureId);
        const [share] = own.filter(({ statistic }) => statistic === 'share');
        if (share === undefined) throw new Error(`No ${figureId} of ${group}.`);
        expectSame(share, then);
        const [row] = own.filter(({ unit }) => unit === 'percentage points');
        if (row === undefined) throw new Error(`No difference of ${figureId} to ${group}.`);
        expect(['value', 'low', 'high'].map((column) => numberIn(row, column))).toEqual([
          difference?.points ?? null,
          difference?.interval.low ?? null,
          difference?.interval.high ?? null,
        ]);
      }
    }
  });

  it('has the numbers that are no shares beside what they count, with rule and unit', () => {
    const ofFigure = (figureId: string, value: number, unit: string): readonly (string | undefined)[] =>
      rows
        .filter((row) => row['figureId'] === figureId && row['unit'] === unit)
        .filter((row) => numberIn(row, 'value') === value)
        .map((row) => row['ruleId']);
    for (const { lost } of report.dataQuality.pairsLost) {
      for (const { figureId, referrals } of lost) {
        expect(ofFigure(figureId, referrals, 'referrals'), figureId).toContain('pair-lost@2');
      }
    }
    for (const { measureId, unit, likeForLike, pairsAtCeiling } of report.outcomes) {
      expect(ofFigure(`pairs-at-ceiling.${measureId}`, pairsAtCeiling, 'pairs')).toEqual([
        'pairs-at-ceiling@1',
      ]);
      const { mean } = likeForLike.change;
      if (mean === null) continue;
      expect(ofFigure(`like-for-like-pairs.${measureId}`, mean, unit)).toContain('like-for-like-pairs@1');
    }
    const { longest, waiting } = report.waiting.now;
    expect(longest.length).toBeGreaterThan(0);
    const days = rows.filter(({ title }) => title === 'The longest waits now');
    expect(days.map((row) => numberIn(row, 'value'))).toEqual(longest.map((each) => each.days));
    expect(days.map((row) => [numberIn(row, 'n'), row['unit'], row['ruleId']])).toEqual(
      days.map(() => [waiting.numerator, 'days', 'waiting-now@1']),
    );
    const inError = rows.filter(({ ruleId }) => ruleId === 'entries-in-error@1');
    const { referrals, offers, sessions, assessments } = report.dataQuality.entriesInError;
    expect(inError.map((row) => [row['unit'], numberIn(row, 'value')])).toEqual([
      ['referrals', referrals],
      ['offers', offers],
      ['sessions', sessions],
      ['assessments', assessments],
    ]);
  });

  it('keeps negative changes numbers', () => {
    const negative = rows.filter((row) => (numberIn(row, 'value') ?? 0) < 0);
    expect(negative.length).toBeGreaterThan(5);
    for (const row of negative) expect(row['value']).toMatch(/^-\d/);
  });

  it('holds targets beside their figures', () => {
    const withTarget = rows.filter((row) => row['target'] !== '');
    const expected = report.indicators.flatMap(({ figure, target }) =>
      target === null ? [] : [[figure.id, target.percent]],
    );
    expect(expected.length).toBeGreaterThan(1);
    expect(withTarget.map((row) => [row['figureId'], numberIn(row, 'target')])).toEqual(expected);
  });

  it('is told to the trail', async () => {
    const events = itemsOf(await lead.get('/api/v1/audit-events?limit=5'));
    expect(events).toContainEqual(
      expect.objectContaining({
        action: 'report-exported',
        details: expect.objectContaining({ form: 'csv', period: '2025-26-Q4' }) as unknown,
      }),
    );
  });
});

describe('names that look like formulas', () => {
  it('are shown and not carried out', () => {
    const sites = [
      { id: 'site-1', name: '=1+1' },
      { id: 'site-2', name: '-hall' },
    ];
    const facts = WORKED_INPUT.facts.map((each, index) => ({
      ...each,
      siteId: index % 2 === 0 ? 'site-1' : 'site-2',
    }));
    const report = buildQuarterlyReport({ ...WORKED_INPUT, facts, sites, teamName: '@team' });
    const rows = readCsv(writeCsv(csvTable(report)));
    const ofSites = rows.filter(({ section }) => section === 'sites');
    expect(new Set(ofSites.map(({ group }) => group))).toEqual(new Set(["'=1+1", "'-hall"]));
    expect(new Set(rows.map(({ team }) => team))).toEqual(new Set(["'@team"]));
    for (const row of rows) {
      for (const [column, cell] of Object.entries(row)) {
        if (!NUMBERS.includes(column)) expect(cell).not.toMatch(/^[=+\-@\t\r]/);
      }
    }
  });
});

function expectSame(row: Row, figure: Figure): void {
  const { id, numerator, denominator, open, excluded, percentage, interval, bounds } = figure;
  expect(
    [id, ...NUMBERS.slice(0, 10).map((column) => numberIn(row, column))],
    `${id} in ${String(row['section'])}`,
  ).toEqual([
    id,
    denominator,
    numerator,
    denominator,
    open,
    excluded.reduce((sum, { count }) => sum + count, 0),
    percentage,
    interval?.low ?? null,
    interval?.high ?? null,
    bounds?.worst ?? null,
    bounds?.best ?? null,
  ]);
  expect(row['ruleId']).toBe(figure.ruleId);
}
