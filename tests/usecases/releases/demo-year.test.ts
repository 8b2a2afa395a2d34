import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { boundsOf } from '../../../src/domain/attack/bounds.js';
import { sumOf } from '../../../src/domain/attack/system.js';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import type { ReleaseEntry } from '../../../src/domain/release/kept-release.js';
import type { Exposure } from '../../../src/domain/release/exposure.js';
import type { AttackReport } from '../../../src/domain/release/protect-release.js';
import { releaseDocument } from '../../../src/reports/release/release-document.js';
import { makeRelease } from '../../../src/usecases/releases/make-release.js';
import { readRelease, readReleaseFile, readReleases } from '../../../src/usecases/releases/read-releases.js';
import { verifyReleases } from '../../../src/usecases/releases/verify-releases.js';
import { DocumentView } from '../../../src/web/report/document-view.js';
import { behind, knownFrom, printedIn, systemFrom, yearIsSum } from '../../support/attacker.js';
import type { Printed, Reading } from '../../support/attacker.js';
import { demoRecord } from '../../support/demo-record.js';
import type { DemoRecord } from '../../support/demo-record.js';
import { printedInTables } from '../../support/printed-in-tables.js';
import { tablesInPdf } from '../../support/read-pdf-tables.js';
import { tablesInPage, tablesInSheets } from '../../support/read-tables.js';
import { inOrder } from '../../support/released-forms.js';
import { need } from '../../../seeds/perform.js';
import { releaseSummaries } from '../../../seeds/release-summaries.js';

/** Each quarter is released some six weeks after its end, the year with a cut of its own: much is entered in between. */
const PERIODS = [
  { period: '2025-26-Q1', asAt: '2025-08-15' },
  { period: '2025-26-Q2', asAt: '2025-11-15' },
  { period: '2025-26-Q3', asAt: '2026-02-15' },
  { period: '2025-26-Q4', asAt: '2026-05-15' },
  { period: '2025-26', asAt: '2026-08-15' },
] as const;
const YEAR = '2025-26';
const WIDTH = 5;
/** Entered late, at most, as a reader may guess. */
const LATE = 7;

interface Tried {
  readonly period: string;
  readonly attack: AttackReport;
}

let demo: DemoRecord;
const made: ReleaseEntry[] = [];
const refusedFirst: Tried[] = [];

beforeAll(async () => {
  demo = await demoRecord('2026-11-25', 7, 0.25);
  const { context } = demo.record;
  for (const { period, asAt } of PERIODS) {
    for (const { commissionerId } of demo.demo.commissioners) {
      const request = { commissionerId, period, asAt: plainDate(asAt), mode: 'rounded', tables: {} } as const;
      const first = await makeRelease(context, demo.lead, { ...request, mergeAsProposed: false });
      if (first.kind === 'done') {
        made.push(first.value);
        continue;
      }
      if (first.refusal.code !== 'release-refused') throw new Error(first.refusal.code);
      refusedFirst.push({ period, attack: first.refusal.attack });
      made.push(
        need('release', await makeRelease(context, demo.lead, { ...request, mergeAsProposed: true })),
      );
    }
  }
}, 120_000);
afterAll(() => demo.close());

describe('a year of the demo, released to both commissioners quarter by quarter and then as a whole', () => {
  it('is either released or refused with the table, the cells and the categories to merge', () => {
    expect(made).toHaveLength(10);
    expect(refusedFirst.length).toBeGreaterThan(3);
    for (const { attack } of refusedFirst) {
      expect(attack.exposures.length).toBeGreaterThan(0);
      for (const { tableTitle, figures, remedy } of attack.exposures) {
        expect([tableTitle, figures].every((words) => words !== '')).toBe(true);
        expect(remedy.words).toMatch(
          /^(?:Merge categories of “.+” into “.+”|Leave out the table “.+”|Mend whatever else is named)/,
        );
      }
      expect(attack.exposures.some(({ remedy }) => remedy.kind !== 'round-or-wait')).toBe(true);
    }
  });

  it('is refused as a whole where it would betray what a quarter hid', () => {
    const ofYear = refusedFirst.filter(({ period }) => period === YEAR);
    const ofQuarters: readonly Exposure[] = ofYear
      .flatMap(({ attack }) => attack.exposures)
      .filter(({ figures }) => /hidden in release \d+/.test(figures));
    expect(ofQuarters.filter(({ remedy }) => remedy.kind === 'merge').length).toBeGreaterThan(0);
    for (const { high, low } of ofQuarters) expect((high ?? Infinity) - low).toBeLessThan(WIDTH);
  });

  it('holds: digests, counts, and the attack on each with all before it', async () => {
    const verified = await verifyReleases(demo.record.context);
    expect(verified).toHaveLength(10);
    expect(verified.flatMap(({ faults }) => faults)).toEqual([]);
  });

  it('gives nobody a small count who has all that both commissioners were sent, in any form', async () => {
    const readings = await Promise.all(
      made.map(async (entry) => ({ entry, reading: await readingOf(entry) })),
    );
    const links = readings.flatMap(({ entry, reading }) => {
      if (entry.period !== YEAR) return [];
      const quarters = readings.filter(
        (other) => other.entry.commissionerId === entry.commissionerId && other.entry.period !== YEAR,
      );
      return yearIsSum(
        reading,
        quarters.map((other) => other.reading),
        LATE,
      );
    });
    const system = systemFrom([...readings.flatMap(({ reading }) => knownFrom(reading)), ...links]);
    let hidden = 0;
    for (const { reading } of readings) {
      for (const { table, id, kind, value } of reading.printed) {
        if (value !== null) continue;
        const names = kind === 'total' ? [`${reading.name} total ${id}`] : behind(reading, table, id);
        const { low, high } = boundsOf(system, sumOf(names));
        expect((high ?? Infinity) - low, `${reading.name}, ${table} ${id}`).toBeGreaterThanOrEqual(WIDTH);
        hidden += 1;
      }
    }
    expect(hidden).toBeGreaterThan(20);
  });
});

it('lets each commissioner of the demo read its last two quarters', async () => {
  const { context } = demo.record;
  const released = await releaseSummaries(context, demo.demo);
  expect(released.map(({ period }) => period)).toEqual([
    '2026-27-Q1',
    '2026-27-Q1',
    '2026-27-Q2',
    '2026-27-Q2',
  ]);
  for (const { role, accountId, commissionerId } of demo.demo.accounts) {
    if (role !== 'commissioner' || commissionerId === null) continue;
    const reads = await readReleases(context, { role, accountId, commissionerId });
    expect(reads.slice(0, 2).map(({ period }) => period)).toEqual(['2026-27-Q2', '2026-27-Q1']);
  }
  expect((await verifyReleases(context)).flatMap(({ faults }) => faults)).toEqual([]);
});

/** What a reader of the kept rows knows; a reader of the page and the spreadsheet, and of a year's PDF, knows the same. */
async function readingOf({ number, period }: ReleaseEntry): Promise<Reading> {
  const { context } = demo.record;
  const file = async (form: 'csv' | 'xlsx' | 'pdf'): Promise<Buffer> =>
    need('read', await readReleaseFile(context, demo.lead, number, form)).content;
  const { release } = need('read', await readRelease(context, demo.lead, number));
  const document = releaseDocument(release);
  const reading = (printed: readonly Printed[]): Reading => ({
    name: `r${number}`,
    mode: 'rounded',
    printed,
  });
  const rows = reading(printedIn((await file('csv')).toString()));
  const others = [
    printedInTables(tablesInPage(await DocumentView({ document, addressOf: () => '#in-short' }))),
    printedInTables(await tablesInSheets(await file('xlsx'))),
    ...(period === YEAR ? [printedInTables(await tablesInPdf(await file('pdf')))] : []),
  ];
  for (const other of others) expect(inOrder(knownFrom(reading(other)))).toEqual(inOrder(knownFrom(rows)));
  return rows;
}
