import { describe, expect, it } from 'vitest';
import { boundsOf } from '../../../src/domain/attack/bounds.js';
import type { IssuedRelease } from '../../../src/domain/release/issued.js';
import { attackLedger, ledgerOf } from '../../../src/domain/release/ledger/ledger.js';
import type { ReleaseMode } from '../../../src/domain/release/policy.js';
import { protectRelease } from '../../../src/domain/release/protect-release.js';
import type { CountedRelease, ProtectedDraft } from '../../../src/domain/release/protect-release.js';
import { settleRelease } from '../../../src/domain/release/settle.js';
import { countedRelease, randomFrom, randomQuarter } from '../../support/random-service.js';
import type { Quarter } from '../../support/random-service.js';

const quarterly = (number: number): CountedRelease['period'] => ({
  label: `2026-27-Q${number}`,
  kind: 'quarter',
});
const YEAR: CountedRelease['period'] = { label: '2026-27', kind: 'year' };

/** One table alone, with these counts by category. */
function only(
  tableId: string,
  counts: Readonly<Record<string, number>>,
  about: Parameters<typeof countedRelease>[1],
  lists: Parameters<typeof countedRelease>[2] = {},
): CountedRelease {
  const people = Object.entries(counts).flatMap(([category, count]) =>
    Array.from({ length: count }, () => ({ [tableId]: category })),
  );
  const quarter: Quarter = { received: people, assessed: [], started: [], discharged: [] };
  const all = countedRelease([quarter], about, lists);
  return {
    ...all,
    totals: all.totals.filter(({ universe }) => universe === 'received'),
    tables: all.tables.filter((table) => table.tableId === tableId),
  };
}

function released(counted: CountedRelease, earlier: readonly IssuedRelease[] = []): IssuedRelease {
  const { release, attack } = protectRelease(counted, earlier);
  expect(attack).toMatchObject({ isPassed: true });
  return release;
}

describe('the releases of a year, attacked together', () => {
  // Handbook on Statistical Disclosure Control, online 2nd edition, chapter 5, differencing: groups that grow by 2 and by 1.
  it('refuse a correction whose total tells that three people came late, two in one group and one in another', () => {
    const first = { 'under-50': 50, '60-69': 54, '70-79': 128, '80-and-over': 140 };
    const second = { 'under-50': 52, '60-69': 55, '70-79': 128, '80-and-over': 140 };
    const one = released(only('age', first, { ref: '1', mode: 'exact', period: quarterly(1) }));
    const two = only('age', second, { ref: '2', mode: 'exact', period: quarterly(1), corrects: '1' });
    const { release, attack } = protectRelease(two, [one]);
    expect(attack.isPassed).toBe(false);
    expect(attack.exposures).toContainEqual(
      expect.objectContaining({ kind: 'difference', tableId: null, low: 3, high: 3 }),
    );
    expect(attack.exposures[0]?.remedy.kind).toBe('round-or-wait');
    // The two groups that moved are no longer shown, though neither is small.
    expect(Object.keys(release.tables[0]?.hidden ?? {})).toEqual(
      expect.arrayContaining(['under-60', '60-69']),
    );
  });

  it('refuse the same of a period that is released anew after its first release was withdrawn', () => {
    const first = { 'under-50': 50, '60-69': 54, '70-79': 128, '80-and-over': 140 };
    const second = { ...first, 'under-50': 52, '60-69': 55 };
    const one = released(only('age', first, { ref: '1', mode: 'exact', period: quarterly(1) }));
    const anew = only('age', second, { ref: '2', mode: 'exact', period: quarterly(1) });
    expect(protectRelease(anew, [one]).attack.exposures).toContainEqual(
      expect.objectContaining({ kind: 'difference', tableId: null, low: 3, high: 3 }),
    );
  });

  it('hold a release against every earlier one of its period, not only against the last', () => {
    const counts = (young: number) => ({ 'under-50': young, '60-69': 60, '70-79': 60 });
    const about = { mode: 'exact', period: quarterly(1) } as const;
    const one = released(only('age', counts(20), { ...about, ref: '1' }));
    const two = released(only('age', counts(40), { ...about, ref: '2', corrects: '1' }), [one]);
    const three = only('age', counts(21), { ...about, ref: '3', corrects: '2' });
    expect(protectRelease(three, [one, two]).attack.exposures).toContainEqual(
      expect.objectContaining({ kind: 'difference', tableId: null, low: 1, high: 1 }),
    );
  });

  it('hold a year against its quarters as they were first released, too', () => {
    const counts = (young: number) => ({ 'under-50': young, '60-69': 60, '70-79': 60 });
    const exact = (ref: string, quarter: number, young: number, corrects?: string) =>
      only('age', counts(young), {
        ref,
        mode: 'exact',
        period: quarterly(quarter),
        ...(corrects === undefined ? {} : { corrects }),
      });
    const earlier: IssuedRelease[] = [];
    for (const each of [
      exact('1', 1, 20),
      exact('2', 2, 20),
      exact('3', 3, 20),
      exact('4', 4, 20),
      exact('5', 1, 40, '1'),
    ]) {
      earlier.push(released(each, earlier));
    }
    // A year of 82 is 18 less than 40 + 20 + 20 + 20, and 2 more than 20 + 20 + 20 + 20.
    const year = only(
      'age',
      { 'under-50': 82, '60-69': 240, '70-79': 240 },
      { ref: '6', mode: 'exact', period: YEAR },
    );
    expect(protectRelease(year, earlier).attack.exposures).toContainEqual(
      expect.objectContaining({ kind: 'difference', tableId: null, low: 2, high: 2 }),
    );
  });

  it('hide the change by one late person when both are rounded', () => {
    const one = released(
      only('age', { 'under-50': 12, '60-69': 40 }, { ref: '1', mode: 'rounded', period: quarterly(1) }),
    );
    const two = only(
      'age',
      { 'under-50': 13, '60-69': 40 },
      { ref: '2', mode: 'rounded', period: quarterly(1), corrects: '1' },
    );
    expect(protectRelease(two, [one]).attack).toMatchObject({ isPassed: true });
  });

  // The fourth quarter is 44 - 12 - 15 - 14 = 3 however it is hidden in its own release.
  it('hide in the year what would give a hidden count of a quarter back', () => {
    const rest = { '60-69': 30, '70-79': 30 };
    const quarters = [12, 15, 14, 3].map((small, index) =>
      only(
        'age',
        { 'under-50': small, ...rest },
        { ref: `${index + 1}`, mode: 'exact', period: quarterly(index + 1) },
      ),
    );
    const earlier: IssuedRelease[] = [];
    for (const quarter of quarters) earlier.push(released(quarter, earlier));
    const year = only(
      'age',
      { 'under-50': 44, '60-69': 120, '70-79': 120 },
      { ref: '5', mode: 'exact', period: YEAR },
    );
    const shown: IssuedRelease = { ...year, tables: year.tables.map((table) => ({ ...table, hidden: {} })) };
    const result = attackLedger(ledgerOf([...earlier, shown]));
    expect(result.kind === 'attacked' && result.found.filter(({ isSafe }) => !isSafe)).toMatchObject([
      { low: 3, high: 3, subject: { kind: 'hidden-count', ref: '4', cellId: 'under-60' } },
    ]);
    const protectedYear = released(year, earlier);
    expect(Object.keys(protectedYear.tables[0]?.hidden ?? {})).toContain('under-60');
  });

  it('refuse to leave a quarter as what remains of a year', () => {
    const quarters = [1, 2, 3].map((number) =>
      released(
        only(
          'age',
          { '60-69': 20, '70-79': 20 },
          { ref: `${number}`, mode: 'exact', period: quarterly(number) },
        ),
      ),
    );
    const year = only('age', { '60-69': 62, '70-79': 90 }, { ref: '4', mode: 'exact', period: YEAR });
    const { release } = protectRelease(year, quarters);
    expect(Object.keys(release.tables[0]?.hidden ?? {})).toContain('60-69');
  });

  it('say which categories to merge where a rounded total gives a count away', () => {
    // 22 is shown as 20 and means at most 22; 8 and 13 are shown as 10 and 15 and mean at least 8 and 13: 1 is left.
    const { attack } = protectRelease(
      only(
        'age',
        { 'under-50': 1, '60-69': 8, '70-79': 13 },
        { ref: '1', mode: 'rounded', period: quarterly(1) },
      ),
      [],
    );
    expect(attack).toMatchObject({
      isPassed: false,
      exposures: [
        {
          tableId: 'age',
          tableTitle: 'Age',
          figures: 'under 60, hidden in this release',
          low: 1,
          high: 1,
          remedy: { kind: 'merge', codeListId: 'coarse' },
        },
      ],
    });
  });

  // 'all other diagnoses' is at most 7 and holds three groups that would have had a mark each: none can be more than 5.
  it('know that groups were merged which would have been hidden, and refuse where that tells too much of them', () => {
    const counts = { copd: 92, asthma: 1, 'idiopathic-pulmonary-fibrosis': 1, 'lung-cancer': 1 };
    const about = { ref: '1', mode: 'rounded', period: quarterly(1) } as const;
    const { attack } = protectRelease(only('diagnosis', counts, about, { diagnosis: 'coarse' }), []);
    const merged = attack.exposures.filter(({ figures }) => figures.includes('(merged with others)'));
    expect(merged).not.toEqual([]);
    for (const each of merged) expect(each).toMatchObject({ low: 1, high: 5, remedy: { kind: 'leave-out' } });
    const two = only('diagnosis', { copd: 92, asthma: 1 }, about, { diagnosis: 'coarse' });
    expect(protectRelease(two, []).attack).toMatchObject({ isPassed: true });
  });

  // Quarters of 33, 8, 13 and 13 are printed as 35, 10, 15 and 15, which are at least 33, 8, 13 and 13, and together 67 at
  // least; a year of 67 is printed as 65, which is at most 67: each quarter is its least, and the small group 13 less 8 to 12.
  it('propose to wait, and no table, where the totals of a year give away what a quarter hides', () => {
    const of = (number: number, rest: number, small: number) =>
      released(
        only(
          'age',
          { 'under-50': small, '60-69': rest },
          { ref: `${number}`, mode: 'rounded', period: quarterly(number) },
        ),
      );
    const quarters = [of(1, 33, 0), of(2, 8, 0), of(3, 13, 0), of(4, 8, 5)];
    const year = only('age', { 'under-50': 5, '60-69': 62 }, { ref: '5', mode: 'rounded', period: YEAR });
    const { attack } = protectRelease({ ...year, tables: [] }, quarters);
    expect(attack.isPassed).toBe(false);
    expect(attack.exposures).toMatchObject([
      {
        figures: 'under 60, hidden in release 4',
        low: 1,
        high: 5,
        remedy: {
          kind: 'round-or-wait',
          words: expect.stringContaining(
            'wait until more has changed, or leave this period unreleased',
          ) as string,
        },
      },
    ]);
  });

  it('know nothing by the list that few people have by default', () => {
    const counts = { 'within-90': 30, later: 1, left: 1, 'not-by-90': 1 };
    const about = { ref: '1', mode: 'rounded', period: quarterly(1) } as const;
    const { attack } = protectRelease(only('start', counts, about, { start: 'medium' }), []);
    expect(attack).toMatchObject({ isPassed: true, targets: 1 });
  });

  it('know the same of one commissioner whatever the other was told', () => {
    const mine = released(
      only(
        'age',
        { 'under-50': 3, '60-69': 20, '70-79': 20 },
        { ref: '1', mode: 'exact', period: quarterly(1) },
      ),
    );
    const other = only(
      'age',
      { 'under-50': 9, '60-69': 20, '70-79': 20 },
      { ref: '2', mode: 'exact', period: quarterly(1), commissionerId: 'commissioner-2' },
    );
    const { release, attack } = protectRelease(other, [mine]);
    expect(attack).toMatchObject({ isPassed: true, releases: ['1', '2'] });
    expect(release.tables[0]?.hidden).toEqual({});
  });

  it('conclude nothing where the kept counts do not fit what was printed', () => {
    const one = released(
      only(
        'age',
        { 'under-50': 3, '60-69': 20, '70-79': 20 },
        { ref: '1', mode: 'exact', period: quarterly(1) },
      ),
    );
    const bent = { ...one, totals: one.totals.map((total) => ({ ...total, count: total.count + 1 })) };
    expect(attackLedger(ledgerOf([bent])).kind).toBe('truth-outside');
  });
});

describe('a year of an invented service', () => {
  const SERVICES = 6;

  it.each(['rounded', 'exact'] as const)(
    'is released quarter by quarter and then as a whole, %s, and the exact bounds of every hidden count are wide',
    (mode) => {
      let hidden = 0;
      for (let seed = 1; seed <= SERVICES; seed += 1) {
        const releases = yearOf(seed, mode);
        const { system, targets } = ledgerOf(releases);
        for (const { subject, sum } of targets) {
          if (subject.kind !== 'hidden-count') continue;
          const { low, high } = boundsOf(system, sum);
          expect((high ?? Infinity) - low).toBeGreaterThanOrEqual(5);
          hidden += 1;
        }
      }
      expect(hidden).toBeGreaterThan(20);
    },
  );

  it('cannot have one cell shown that is hidden for the sake of others', () => {
    const services = [1, 2, 3].map((seed) =>
      settled([randomQuarter(randomFrom(seed), 60)], 'exact', quarterly(1), '1', []),
    );
    let shown = 0;
    for (const [release, table] of services.flatMap((service) =>
      service.release.tables.map((each) => [service.release, each] as const),
    )) {
      for (const [id, because] of Object.entries(table.hidden)) {
        if (because === 'small') continue;
        const hidden = Object.fromEntries(Object.entries(table.hidden).filter(([each]) => each !== id));
        const tables = release.tables.map((each) => (each === table ? { ...table, hidden } : each));
        const result = attackLedger(ledgerOf([{ ...release, tables }]));
        expect(result.kind === 'attacked' && result.found.some(({ isSafe }) => !isSafe)).toBe(true);
        shown += 1;
      }
    }
    expect(shown).toBeGreaterThan(3);
  });
});

function settled(
  quarters: readonly Quarter[],
  mode: ReleaseMode,
  period: CountedRelease['period'],
  ref: string,
  earlier: readonly IssuedRelease[],
): ProtectedDraft {
  const { draft } = settleRelease(
    (lists) => countedRelease(quarters, { ref, mode, period }, lists),
    earlier,
    {},
  );
  expect(draft.attack).toMatchObject({ isPassed: true, trouble: null });
  return draft;
}

/** Four quarters, then the year, in which some people moved from one group to another late. */
function yearOf(seed: number, mode: ReleaseMode): readonly IssuedRelease[] {
  const random = randomFrom(seed);
  const quarters = [1, 2, 3, 4].map(() => randomQuarter(random, 30 + Math.floor(random() * 120)));
  const releases: IssuedRelease[] = [];
  quarters.forEach((quarter, index) => {
    releases.push(settled([quarter], mode, quarterly(index + 1), `${index + 1}`, releases).release);
  });
  const late = quarters.map((quarter) => ({
    ...quarter,
    discharged: quarter.discharged.map((person, index) =>
      index % 9 === 0 ? { ...person, 'exercise-plan': 'yes' } : person,
    ),
  }));
  releases.push(settled(late, mode, YEAR, '5', releases).release);
  return releases;
}
