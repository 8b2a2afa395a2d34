import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Figure } from '../../../src/domain/indicators/figure.js';
import { givenDemo, reportOf, reportTextOf } from '../../support/report.js';
import { figuresIn } from '../../support/reported.js';
import { asRecord, asRecords } from '../../support/response.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp, TestClient } from '../../support/start-app.js';

const PERIODS = ['2026-27-Q2', '2026-27-Q3', '2025-26', '2023-11-25..2026-11-25'];

describe('the report for the terminal', () => {
  let service: TestApp;
  let leads: readonly TestClient[];
  beforeAll(async () => {
    service = await startApp();
    leads = await givenDemo(service);
  });
  afterAll(() => service.close());

  const lead = (): TestClient => leads[0] ?? service.as(null);

  it.each(PERIODS)('has the numbers of the JSON: %s', async (period) => {
    const report = await reportOf(lead(), `period=${period}`);
    const text = flat(await reportTextOf(lead(), `period=${period}`));
    const uptake = figuresIn(report['uptake']);
    const indicators = asRecords(report['indicators']).flatMap((row) => figuresIn(row['figure']));
    const shown = [...uptake, ...indicators].filter(({ title }) => title.length <= 39);
    expect(shown.length).toBeGreaterThan(8);
    for (const figure of shown) expect(text).toContain(`\n${lineOf(figure)}\n`);
    const walked = asRecords(report['outcomes']).filter(({ unit }) => unit === 'm');
    expect(walked.length).toBeGreaterThan(0);
    for (const outcome of walked) expect(text).toMatch(headlineOf(asRecord(outcome['likeForLike'])));
  });

  it.each(PERIODS)('has no line of more than 100 characters, for either team: %s', async (period) => {
    for (const client of leads) {
      const lines = (await reportTextOf(client, `period=${period}`)).split('\n');
      expect(lines.length).toBeGreaterThan(100);
      expect(lines.filter((line) => line.length > 100)).toEqual([]);
      expect(lines.filter((line) => line !== line.trimEnd())).toEqual([]);
    }
  });

  it('never prints what a machine would say of nothing', async () => {
    for (const client of [...leads, service.as('lead')]) {
      const text = await reportTextOf(client, 'period=2026-27-Q2');
      expect(text).not.toMatch(/NaN|Infinity|undefined|null|\[object/);
    }
  });

  it('is plain text, and is refused as the JSON is', async () => {
    const given = await lead().get('/api/v1/reports/quarterly.txt?period=2026-27-Q2');
    expect(given.headers['content-type']).toBe('text/plain; charset=utf-8');
    const refused = await lead().get('/api/v1/reports/quarterly.txt?period=2026-27-Q5');
    expect(refused.status).toBe(422);
    expect(refused.headers['content-type']).toBe('application/problem+json');
  });
});

/** One space between words, so that columns need not be counted. */
function flat(text: string): string {
  return text.replace(/ +/g, ' ').replace(/ *\n */g, '\n');
}

/** The headline of a measure in metres: pairs, both ends, and the mean change with its interval, which takes two pairs. */
function headlineOf({ pairs, change }: Readonly<Record<string, unknown>>): RegExp {
  const { mean, interval } = asRecord(change);
  const limits =
    interval === null
      ? ''
      : ` \\(${shown(asRecord(interval)['low'])} to ${shown(asRecord(interval)['high'])}\\)`;
  return new RegExp(`\\nLike for like \\(headline\\) ${String(pairs)} .*${shown(mean)}${limits}\\n`);
}

function shown(value: unknown): string {
  return value === null ? 'none' : Number(value).toFixed(1);
}

/** The line of a figure, rounded here a second time from the numbers of the JSON. */
function lineOf({ title, numerator, denominator, interval, open }: Figure): string {
  const counts = `${title} ${numerator} of ${denominator}`;
  if (denominator === 0 || interval === null)
    return withOpen(`${counts} none none`, numerator, denominator, open);
  const limits = `${interval.low.toFixed(1)} to ${interval.high.toFixed(1)}`;
  const line = `${counts} ${percent(numerator, denominator)} % ${limits}`;
  return withOpen(line, numerator, denominator, open);
}

function withOpen(line: string, numerator: number, denominator: number, open: number): string {
  if (open === 0) return line;
  const all = denominator + open;
  return `${line} ${open} open, ${percent(numerator, all)} to ${percent(numerator + open, all)}`;
}

/** To one decimal, a tie upwards, in whole numbers throughout. */
function percent(numerator: number, denominator: number): string {
  const tenths = Number((2000n * BigInt(numerator) + BigInt(denominator)) / (2n * BigInt(denominator)));
  return (tenths / 10).toFixed(1);
}
