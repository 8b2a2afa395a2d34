import { placesFor } from '../../../src/domain/measures/shown-value.js';
import { describe, expect, it } from 'vitest';
import { row, wrap } from '../../../src/reports/quarterly/text-layout.js';
import {
  counted,
  openCases,
  percentOf,
  range,
  rounded,
} from '../../../src/reports/quarterly/text-numbers.js';
import { percentagesOf } from '../../../src/domain/indicators/tally.js';

describe('numbers in text', () => {
  it.each([
    [1, 16, '6.3 %'],
    [1, 3, '33.3 %'],
    [2, 3, '66.7 %'],
    [449, 787, '57.1 %'],
    // 12.35 % exactly: a tie, which floating point would round down.
    [247, 2000, '12.4 %'],
    [0, 5, '0.0 %'],
    [5, 5, '100.0 %'],
    [0, 0, 'none'],
  ])('%s of %s is %s', (numerator, denominator, expected) => {
    expect(percentOf(numerator, denominator)).toBe(expected);
  });

  it('have no minus before nothing, and say whether there is nobody to count or nothing to say', () => {
    expect([rounded(-0.04, 1), rounded(-0.06, 1), rounded(null, 1)]).toEqual(['0.0', '-0.1', 'n/a']);
    expect([rounded(null, 1, 0), rounded(null, 1, 1)]).toEqual(['none', 'n/a']);
    expect(range({ low: -8.531, high: 118.531 }, 1)).toBe('-8.5 to 118.5');
    expect([range(null, 1), range(null, 1, 0)]).toEqual(['n/a', 'none']);
  });

  it('are finer for finer units', () => {
    expect(['m', 'mean item score', 'utility'].map(placesFor)).toEqual([1, 2, 3]);
  });

  it('bound a share by its open cases', () => {
    const figure = {
      id: 'x',
      ruleId: 'x@1',
      title: 'x',
      cohort: 'start',
      numerator: 4,
      denominator: 8,
      excluded: [],
      open: 1,
      people: { numerator: 4, denominator: 8 },
      ...percentagesOf(4, 8, 1),
    } as const;
    expect(openCases(figure)).toBe('1 open, 44.4 to 55.6');
    expect(openCases({ ...figure, open: 0 })).toBe('');
  });
});

describe('lines of text', () => {
  it('break between words at 100 columns and stand further in from the second on', () => {
    const lines = wrap(Array<string>(30).fill('word').join(' '), 4);
    expect(lines.map((line) => line.search(/\S/))).toEqual([4, 6]);
    expect(
      lines
        .join(' ')
        .split(/ +/)
        .filter((word) => word === 'word'),
    ).toHaveLength(30);
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(100);
  });

  it('do not break a word', () => {
    expect(wrap('a'.repeat(120))).toEqual(['a'.repeat(120)]);
  });

  it('set cells to the left and to the right, and break the first', () => {
    const columns = [
      { width: 10, align: 'left' },
      { width: 6, align: 'right' },
    ] as const;
    expect(row(columns, ['short', '1'])).toEqual(['short           1']);
    expect(row(columns, ['a long first cell', '1'])).toEqual(['a long          1', '  first', '  cell']);
  });

  it('take room from the gaps where a cell is wider than its column, so that no line is too long', () => {
    const columns = [
      { width: 39, align: 'left' },
      { width: 14, align: 'right' },
      { width: 7, align: 'right' },
      { width: 14, align: 'right' },
      { width: 22, align: 'right' },
    ] as const;
    const cells = [
      'Discharge assessment done',
      '1400 of 2800',
      '50.0 %',
      '48.1 to 51.9',
      '1200 open, 35.0 to 65.0',
    ];
    const lines = row(columns, cells);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toHaveLength(100);
    expect(lines[0]?.replace(/ +/g, ' ')).toBe(cells.join(' '));
  });

  it('say one referral and several referrals', () => {
    expect([0, 1, 2].map((count) => counted(count, 'referral'))).toEqual([
      '0 referrals',
      '1 referral',
      '2 referrals',
    ]);
  });
});
