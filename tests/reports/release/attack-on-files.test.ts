import { describe, expect, it } from 'vitest';
import { boundsOf } from '../../../src/domain/attack/bounds.js';
import { sumOf } from '../../../src/domain/attack/system.js';
import type { Known } from '../../../src/domain/attack/system.js';
import { countOf } from '../../../src/domain/release/issued.js';
import type { IssuedRelease } from '../../../src/domain/release/issued.js';
import type { ReleaseMode } from '../../../src/domain/release/policy.js';
import { releaseRows } from '../../../src/reports/release/release-rows.js';
import { writeCsv } from '../../../src/sheets/write-csv.js';
import { behind, knownFrom, printedIn, systemFrom, yearIsSum } from '../../support/attacker.js';
import type { Reading } from '../../support/attacker.js';
import { randomFrom, randomQuarter } from '../../support/random-service.js';
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

const read = (name: string, mode: ReleaseMode, released: ReturnType<typeof releaseOf>) => ({
  issued: released.issued,
  reading: { name, mode, printed: printedIn(writeCsv(releaseRows(released.release))) },
});

describe('a reader of the files, who knows the rules and the lists of groups', () => {
  it('comes no nearer than the least width to any small count of 200 small services', () => {
    let hidden = 0;
    for (let seed = 1; seed <= SERVICES; seed += 1) {
      const random = randomFrom(1000 + seed);
      const mode = seed % 2 === 0 ? 'rounded' : 'exact';
      const quarter = randomQuarter(random, 30 + Math.floor(random() * 121));
      const released = releaseOf([quarter], { number: 1, mode, period: QUARTER }, []);
      expect(released.isPassed).toBe(true);
      const found = attackFiles([read('first', mode, released)], []);
      expect(found.narrowest, `service ${seed}`).toBeGreaterThanOrEqual(WIDTH);
      hidden += found.hidden;
    }
    expect(hidden).toBeGreaterThan(500);
  }, 120_000);

  it.each(['rounded', 'exact'] as const)(
    'comes no nearer with all files of a year, %s',
    (mode) => {
      for (let seed = 1; seed <= 3; seed += 1) {
        const random = randomFrom(seed);
        const quarters = [1, 2, 3, 4].map(() => randomQuarter(random, 40 + Math.floor(random() * 100)));
        const released: ReturnType<typeof releaseOf>[] = [];
        quarters.forEach((quarter, index) => {
          const period = { label: `2026-27-Q${index + 1}`, kind: 'quarter' } as const;
          const earlier = released.map(({ issued }) => issued);
          released.push(releaseOf([quarter], { number: index + 1, mode, period }, earlier));
        });
        const year = { number: 5, mode, period: { label: '2026-27', kind: 'year' } } as const;
        released.push(
          releaseOf(
            quarters,
            year,
            released.map(({ issued }) => issued),
          ),
        );
        const readings = released.map((each, index) => read(`r${index + 1}`, mode, each));
        const [whole, ...parts] = [...readings].reverse().map(({ reading }) => reading);
        if (whole === undefined) throw new Error('There is no year.');
        const found = attackFiles(readings, yearIsSum(whole, parts));
        expect(found.narrowest).toBeGreaterThanOrEqual(WIDTH);
      }
    },
    120_000,
  );

  it('sees one cell too many and has the count', () => {
    let given = 0;
    for (let seed = 1; seed <= 10; seed += 1) {
      const released = releaseOf(
        [randomQuarter(randomFrom(seed), 60)],
        { number: 1, mode: 'exact', period: QUARTER },
        [],
      );
      const whole = read('first', 'exact', released);
      for (const table of released.issued.tables) {
        const other = Object.entries(table.hidden).find(([, because]) => because === 'protects-others')?.[0];
        const cell = table.cells.find(({ id }) => id === other);
        if (cell === undefined) continue;
        const printed = whole.reading.printed.map((each) =>
          each.table === table.tableId && each.id === cell.id
            ? { ...each, value: countOf(table, cell) }
            : each,
        );
        const found = attackFiles([{ ...whole, reading: { ...whole.reading, printed } }], []);
        expect(found.narrowest).toBeLessThan(WIDTH);
        given += 1;
      }
    }
    expect(given).toBeGreaterThan(5);
  });
});
