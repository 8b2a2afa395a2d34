import { describe, expect, it } from 'vitest';
import { boundsOf } from '../../../src/domain/attack/bounds.js';
import { sumOf } from '../../../src/domain/attack/system.js';
import type { ReleaseMode } from '../../../src/domain/release/policy.js';
import { behind, knownFrom, movedByAtMost, movesBetween, systemFrom } from '../../support/attacker.js';
import type { Reading } from '../../support/attacker.js';
import { randomFrom, randomQuarter } from '../../support/random-service.js';
import type { Quarter } from '../../support/random-service.js';
import { READ_FORMS, readingFrom } from '../../support/released-forms.js';
import type { ReadForm } from '../../support/released-forms.js';
import { releaseOf } from '../../support/rendered-release.js';

const QUARTER = { label: '2026-27-Q1', kind: 'quarter' } as const;
const WIDTH = 5;
const SMALL = 8;
const SERVICES = 8;

/** A quarter, and the same with one more person, who was entered after the first release. */
function withOneLate(seed: number, received: number): readonly [Quarter, Quarter] {
  const quarter = randomQuarter(randomFrom(seed), received);
  const [late] = randomQuarter(randomFrom(seed + 500), 1).received;
  if (late === undefined) throw new Error('Nobody came late.');
  const person = { ...late, 'first-assessment': 'not-assessed', start: 'waiting', pathway: 'stable' };
  return [quarter, { ...quarter, received: [...quarter.received, person] }];
}

function issuesOf(seed: number, received: number, mode: ReleaseMode) {
  const [before, after] = withOneLate(seed, received);
  const first = releaseOf([before], { number: 1, mode, period: QUARTER }, []);
  const second = releaseOf([after], { number: 2, mode, period: QUARTER, corrects: '1' }, [first.issued]);
  return { first, second };
}

function read(
  of: ReturnType<typeof releaseOf>,
  mode: ReleaseMode,
  forms: readonly ReadForm[],
): Promise<Reading> {
  return readingFrom(forms, `r${of.release.number}`, mode, of.release);
}

describe('two releases with one late person between them', () => {
  it('tell the readers of both, in any form, neither a small count nor where the late person is, rounded', async () => {
    let [hidden, moved] = [0, 0];
    for (let seed = 1; seed <= SERVICES; seed += 1) {
      const { first, second } = issuesOf(seed, 41 + 9 * seed, 'rounded');
      expect([first.isPassed, second.isPassed]).toEqual([true, true]);
      const forms = seed === 1 ? READ_FORMS : (['csv', 'page'] as const);
      const [older, newer] = [await read(first, 'rounded', forms), await read(second, 'rounded', forms)];
      const system = systemFrom([
        ...knownFrom(older),
        ...knownFrom(newer),
        ...movedByAtMost(newer, older, SMALL - 1),
      ]);
      for (const reading of [older, newer]) {
        for (const { table, id, value } of reading.printed) {
          if (value !== null || table === '') continue;
          const { low, high } = boundsOf(system, sumOf(behind(reading, table, id)));
          expect((high ?? Infinity) - low, `service ${seed}, ${table} ${id}`).toBeGreaterThanOrEqual(WIDTH);
          hidden += 1;
        }
      }
      for (const [name, sum] of movesBetween(newer, older)) {
        const { low, high } = boundsOf(system, sum);
        const isKnownSmall = low >= 1 && (high ?? Infinity) < SMALL;
        expect(isKnownSmall && (high ?? Infinity) - low < WIDTH, `service ${seed}, ${name}`).toBe(false);
        if (low >= 1) moved += 1;
      }
    }
    expect(hidden).toBeGreaterThan(20);
    expect(moved).toBeGreaterThan(0);
  }, 120_000);

  it('are refused in exact counts, where the totals tell that it was one', () => {
    for (let seed = 1; seed <= 5; seed += 1) {
      const { first, second } = issuesOf(seed, 60, 'exact');
      expect(first.isPassed).toBe(true);
      expect(second.isPassed).toBe(false);
      expect(second.exposures).toContainEqual(
        expect.objectContaining({ kind: 'difference', tableId: null, low: 1, high: 1 }),
      );
    }
  });

  it('would tell of the late person from the rows of exact counts, had they been released', async () => {
    const { first, second } = issuesOf(1, 60, 'exact');
    const [older, newer] = [await read(first, 'exact', []), await read(second, 'exact', [])];
    const system = systemFrom([...knownFrom(older), ...knownFrom(newer)]);
    const moves = movesBetween(newer, older);
    expect(boundsOf(system, moves.get('total received') ?? new Map())).toMatchObject({ low: 1, high: 1 });
  });
});
