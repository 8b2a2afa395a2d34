import { describe, expect, it } from 'vitest';
import { boundsOf } from '../../../src/domain/attack/bounds.js';
import { sumOf } from '../../../src/domain/attack/system.js';
import type { Known } from '../../../src/domain/attack/system.js';
import { countOf } from '../../../src/domain/release/issued.js';
import type { IssuedRelease } from '../../../src/domain/release/issued.js';
import type { ReleaseMode } from '../../../src/domain/release/policy.js';
import { behind, knownFrom, systemFrom, yearIsSum } from '../../support/attacker.js';
import type { Reading } from '../../support/attacker.js';
import { randomFrom, randomQuarter } from '../../support/random-service.js';
import type { Quarter } from '../../support/random-service.js';
import { READ_FORMS, readingFrom } from '../../support/released-forms.js';
import type { ReadForm } from '../../support/released-forms.js';
import { releaseOf } from '../../support/rendered-release.js';

const SERVICES = 200;
const QUARTER = { label: '2026-27-Q1', kind: 'quarter' } as const;
const WIDTH = 5;

/** The narrowest that a reader of the files comes to of any hidden small count, and how many there were. */
function attackFiles(
  readings: readonly { readonly reading: Reading; readonly issued: IssuedRelease }[],
  links: readonly Known[],
): { readonly narrowest: number; readonly hidden: number } {
  const system = systemFrom([...readings.flatMap(({ reading }) => knownFrom(reading)), ...links]);
  let [narrowest, hidden] = [Infinity, 0];
  for (const { reading, issued } of readings) {
    const below = reading.mode === 'rounded' ? 8 : 5;
    for (const { table, id, value } of reading.printed) {
      const counted = issued.tables.find(({ tableId }) => tableId === table);
      const cell = counted?.cells.find((each) => each.id === id);
      if (value !== null || counted === undefined || cell === undefined) continue;
      const truth = countOf(counted, cell);
      if (truth >= below) continue;
      const { low, high } = boundsOf(system, sumOf(behind(reading, table, id)));
      expect(truth).toBeGreaterThanOrEqual(low);
      expect(truth).toBeLessThanOrEqual(high ?? Infinity);
      narrowest = Math.min(narrowest, (high ?? Infinity) - low);
      hidden += 1;
    }
  }
  return { narrowest, hidden };
}

/** Releases a year quarter by quarter, then as a whole, reads all files back, and attacks them together. */
async function attackYear(
  mode: ReleaseMode,
  seed: number,
  forms: readonly ReadForm[],
): Promise<ReturnType<typeof attackFiles> & { readonly refused: number }> {
  const random = randomFrom(seed);
  const quarters = [1, 2, 3, 4].map(() => randomQuarter(random, 30 + Math.floor(random() * 121)));
  const released: ReturnType<typeof releaseOf>[] = [];
  const release = (of: readonly Quarter[], period: IssuedRelease['period']): void => {
    const earlier = released.map(({ issued }) => issued);
    const made = releaseOf(of, { number: released.length + 1, mode, period }, earlier);
    if (made.isPassed) released.push(made);
  };
  quarters.forEach((quarter, index) => {
    release([quarter], { label: `2026-27-Q${index + 1}`, kind: 'quarter' });
  });
  release(quarters, { label: '2026-27', kind: 'year' });
  const readings: Parameters<typeof attackFiles>[0][number][] = [];
  for (const { issued, release: each } of released) {
    readings.push({ issued, reading: await readingFrom(forms, `r${each.number}`, mode, each) });
  }
  const year = readings.find(({ issued }) => issued.period.kind === 'year');
  const parts = readings.filter((each) => each !== year).map(({ reading }) => reading);
  const links = year === undefined || parts.length < 4 ? [] : yearIsSum(year.reading, parts);
  return { ...attackFiles(readings, links), refused: 5 - readings.length };
}

/** How many services are read for a whole year from every form; takes some seconds for each. None unless it is asked for. */
const YEARS = Number(process.env['TIDEMARK_ATTACKED_YEARS'] ?? 0);

/** Forms that are dearer to write and to read are read of fewer services. */
const EVERY: Readonly<Record<ReadForm, number>> = { csv: 1, page: 1, xlsx: 10, pdf: 50 };

describe('a reader of the files, who knows the rules and the lists of groups', () => {
  it('comes no nearer than the least width to any small count of 200 small services', async () => {
    let hidden = 0;
    const read = { csv: 0, page: 0, xlsx: 0, pdf: 0 };
    for (let seed = 1; seed <= SERVICES; seed += 1) {
      const random = randomFrom(1000 + seed);
      const mode = seed % 2 === 0 ? 'rounded' : 'exact';
      const quarter = randomQuarter(random, 30 + Math.floor(random() * 121));
      const { issued, release, isPassed } = releaseOf([quarter], { number: 1, mode, period: QUARTER }, []);
      expect(isPassed).toBe(true);
      const forms = READ_FORMS.filter((form) => seed % EVERY[form] === 0);
      for (const form of forms) read[form] += 1;
      const reading = await readingFrom(forms, 'first', mode, release);
      const found = attackFiles([{ reading, issued }], []);
      expect(found.narrowest, `service ${seed}`).toBeGreaterThanOrEqual(WIDTH);
      hidden += found.hidden;
    }
    expect(hidden).toBeGreaterThan(500);
    expect(read).toEqual({ csv: 200, page: 200, xlsx: 20, pdf: 4 });
  }, 120_000);

  it.each([
    { mode: 'rounded', seed: 1, forms: READ_FORMS },
    { mode: 'rounded', seed: 2, forms: ['csv', 'page'] },
    { mode: 'rounded', seed: 3, forms: ['csv', 'page'] },
    { mode: 'exact', seed: 1, forms: ['csv', 'page', 'xlsx'] },
    { mode: 'exact', seed: 2, forms: ['csv', 'page'] },
    { mode: 'exact', seed: 3, forms: ['csv', 'page'] },
  ] as const)(
    'comes no nearer with all files of a year, $mode, service $seed, from $forms',
    async ({ mode, seed, forms }) => {
      const found = await attackYear(mode, seed, forms);
      expect(found.refused).toBe(0);
      expect(found.hidden).toBeGreaterThan(0);
      expect(found.narrowest).toBeGreaterThanOrEqual(WIDTH);
    },
    120_000,
  );

  it.skipIf(YEARS === 0)(
    `comes no nearer with all files of a year, each of ${YEARS} services, from every form`,
    async () => {
      let [hidden, refused] = [0, 0];
      for (let seed = 1; seed <= YEARS; seed += 1) {
        const mode = seed % 2 === 0 ? 'rounded' : 'exact';
        const found = await attackYear(mode, 2000 + seed, READ_FORMS);
        expect(found.narrowest, `service ${2000 + seed}`).toBeGreaterThanOrEqual(WIDTH);
        hidden += found.hidden;
        refused += found.refused;
      }
      process.stdout.write(`${YEARS} years: ${hidden} small counts hidden, ${refused} releases refused.\n`);
      expect(hidden).toBeGreaterThan(YEARS);
      expect(refused).toBeLessThan(YEARS / 10);
    },
    3_600_000,
  );

  it('sees one cell too many and has the count', async () => {
    let given = 0;
    for (let seed = 1; seed <= 10; seed += 1) {
      const released = releaseOf(
        [randomQuarter(randomFrom(seed), 60)],
        { number: 1, mode: 'exact', period: QUARTER },
        [],
      );
      const reading = await readingFrom([], 'first', 'exact', released.release);
      const whole = { issued: released.issued, reading };
      for (const table of released.issued.tables) {
        const other = Object.entries(table.hidden).find(([, because]) => because === 'protects-others')?.[0];
        const cell = table.cells.find(({ id }) => id === other);
        if (cell === undefined) continue;
        const printed = reading.printed.map((each) =>
          each.table === table.tableId && each.id === cell.id
            ? { ...each, value: countOf(table, cell) }
            : each,
        );
        const found = attackFiles([{ ...whole, reading: { ...reading, printed } }], []);
        expect(found.narrowest).toBeLessThan(WIDTH);
        given += 1;
      }
    }
    expect(given).toBeGreaterThan(5);
  });
});
