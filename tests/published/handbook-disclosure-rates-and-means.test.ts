// Source: Handbook on Statistical Disclosure Control, online 2nd edition: chapter 4, section 4.2 (the (1,85) rule, contributions
// 300, 20 and 10); chapter 5, publication of mean values (perturbed counts 9, 14 and 19 with true means give 8, 12 and 20 back).
// The further traps are worked by hand, as said beside each.
import { describe, expect, it } from 'vitest';
import { hideIn, issuedTotal } from '../../src/domain/release/hiding/hide.js';
import type { CountedTable, IssuedRelease } from '../../src/domain/release/issued.js';
import { DEFAULT_DISCLOSURE, policyOf } from '../../src/domain/release/policy.js';
import { presentRelease } from '../../src/domain/release/present-release.js';
import { clearedSummary, isDominated } from '../../src/domain/release/summaries.js';
import { wilsonInterval } from '../../src/domain/statistics/proportion.js';

const EXACT = policyOf(DEFAULT_DISCLOSURE, 'exact');

/** A release with the completion of so many starters. */
function completion(yes: number, no: number, ref = '1', period = '2026-27-Q1'): IssuedRelease {
  const table: CountedTable = {
    tableId: 'completion',
    universe: 'started',
    codeListId: 'fine',
    counts: { yes, no, open: 0, 'left-out': 0 },
    cells: [
      { id: 'completed', words: '', of: ['yes'], within: null, role: 'cell', row: null, column: null },
      { id: 'not-completed', words: '', of: ['no'], within: null, role: 'cell', row: null, column: null },
      {
        id: 'undecided',
        words: '',
        of: ['open', 'left-out'],
        within: null,
        role: 'cell',
        row: null,
        column: null,
      },
    ],
    columnsOf: null,
  };
  return {
    ref,
    commissionerId: 'commissioner-1',
    period: { label: period, kind: 'quarter' },
    policy: EXACT,
    corrects: null,
    totals: [issuedTotal('started', yes + no, EXACT)],
    tables: [hideIn(table, EXACT)],
    summaries: [],
  };
}

function shareOf(yes: number, no: number) {
  const head = {
    number: 1,
    teamName: '',
    commissionerId: '',
    commissionerName: '',
    period: { label: '2026-27-Q1', kind: 'quarter', firstDay: '2026-04-01', lastDay: '2026-06-30' },
    dataCut: '2026-08-01',
    releasedOn: '2026-08-01',
    settingsVersion: 0,
    agreement: null,
    correction: null,
  } as const;
  return presentRelease(completion(yes, no), head, [], {}).tables[0]?.shares[0];
}

describe('a percentage', () => {
  // 13.0 % of 23, 7 % of 45, 4 % of 99, 2 % of 150: only 3, 3, 4 and 3 round to them.
  it.each([
    [3, 23],
    [3, 45],
    [4, 99],
    [3, 150],
  ])('and its interval are not printed of %i in %i: they would give the hidden count back', (k, n) => {
    expect(shareOf(k, n - k)).toMatchObject({ percent: null, interval: null, whyNot: 'hidden' });
    // Those who did not are as telling.
    expect(shareOf(n - k, k)).toMatchObject({ percent: null, interval: null, whyNot: 'hidden' });
  });

  it('is printed of counts that are shown, whole, with an interval that says no more', () => {
    const { low, high } = wilsonInterval(23, 45) ?? { low: 0, high: 0 };
    expect(shareOf(23, 22)).toMatchObject({
      percent: 51,
      interval: { low: Math.round(100 * low), high: Math.round(100 * high) },
    });
  });

  it('is not printed of fewer than twenty', () => {
    expect(shareOf(10, 9)).toMatchObject({ percent: null, whyNot: 'too-few' });
    expect(shareOf(10, 10)).toMatchObject({ percent: 50 });
  });
});

describe('a mean', () => {
  const candidate = (values: readonly number[]) => ({
    id: 'mean-change.cat-total',
    title: '',
    unit: 'points',
    kind: 'mean-change' as const,
    values,
    tableId: 'completion',
    of: ['yes'],
  });
  const tens = (count: number): readonly number[] =>
    Array.from({ length: count }, (_, index) => 20 + (index % 9));

  // Ten people at 24.0 and then eleven at 26.0: the new one had 11 x 26 - 10 x 24 = 46.
  it('is not printed again of people of whom it was printed before', () => {
    const first = completion(10, 12);
    expect(clearedSummary(candidate(tens(10)), first, [])).not.toBeNull();
    const printed = { ...first, summaries: ['mean-change.cat-total'] };
    const correction = completion(11, 12, '2');
    expect(clearedSummary(candidate([...tens(10), 46]), correction, [printed])).toBeNull();
    const year: IssuedRelease = { ...completion(40, 12, '3'), period: { label: '2026-27', kind: 'year' } };
    expect(clearedSummary(candidate(tens(40)), year, [printed])).toBeNull();
    const another = completion(10, 12, '4', '2026-27-Q2');
    expect(clearedSummary(candidate(tens(10)), another, [printed])).not.toBeNull();
  });

  it('is not printed of fewer than ten, nor where the count is hidden', () => {
    expect(clearedSummary(candidate(tens(9)), completion(9, 12), [])).toBeNull();
    expect(clearedSummary(candidate(tens(12)), completion(12, 3), [])).toBeNull();
  });

  it('is not printed where one person makes up most of it', () => {
    expect(isDominated([300, 20, 10])).toBe(true);
    expect(isDominated([280, 40, 30])).toBe(false);
    expect(clearedSummary(candidate([300, 1, 1, 1, 1, 1, 1, 1, 1, 1]), completion(10, 12), [])).toBeNull();
  });

  // Why means of parts are never printed beside the mean of the whole: three perturbed counts are found by their means.
  it('of two parts and their whole would give perturbed counts back', () => {
    const means = [11.25, 7.9167, 9.25] as const;
    const near = (count: number): readonly number[] => [-2, -1, 0, 1, 2].map((by) => count + by);
    const found = near(9).flatMap((a) =>
      near(14).flatMap((b) => {
        const isWhole = [a * means[0], b * means[1]].every((sum) => Math.abs(sum - Math.round(sum)) < 0.01);
        const fits = Math.abs((a * means[0] + b * means[1]) / (a + b) - means[2]) < 0.001;
        return isWhole && fits ? [[a, b, a + b]] : [];
      }),
    );
    expect(found).toEqual([[8, 12, 20]]);
  });
});
