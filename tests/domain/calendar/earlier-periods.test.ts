import { describe, expect, it } from 'vitest';
import {
  aYearEarlier,
  formerPeriod,
  quartersUpTo,
  sameAgeCut,
} from '../../../src/domain/calendar/earlier-periods.js';
import { parsePeriod } from '../../../src/domain/calendar/period.js';
import type { Period } from '../../../src/domain/calendar/period.js';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';

function period(label: string): Period {
  const found = parsePeriod(label);
  if (found === null) throw new Error(`${label} is no period.`);
  return found;
}

describe('the period before', () => {
  it.each([
    ['2026-27-Q2', '2026-27-Q1'],
    ['2026-27-Q1', '2025-26-Q4'],
    ['2000-01-Q1', '1999-00-Q4'],
    ['2026-27', '2025-26'],
    // 30 days of April, before them 30 days up to 31 March.
    ['2026-04-01..2026-04-30', '2026-03-02..2026-03-31'],
    ['2026-04-01..2026-04-01', '2026-03-31..2026-03-31'],
    // 31 days of March of a leap year, before them 31 days up to 29 February.
    ['2028-03-01..2028-03-31', '2028-01-30..2028-02-29'],
  ])('%s is %s', (label, former) => {
    expect(formerPeriod(period(label))).toEqual(period(former));
  });
});

describe('the same period a year earlier', () => {
  it.each([
    ['2026-27-Q2', '2025-26-Q2'],
    ['2026-27-Q4', '2025-26-Q4'],
    ['2026-04-10..2026-05-31', '2025-04-10..2025-05-31'],
    ['2028-02-29..2028-03-31', '2027-02-28..2027-03-31'],
  ])('%s is %s', (label, earlier) => {
    expect(aYearEarlier(period(label))).toEqual(period(earlier));
  });

  it('of a year is none: that is its former period', () => {
    expect(aYearEarlier(period('2026-27'))).toBeNull();
  });
});

it('lists quarters in a row up to the one of a date', () => {
  const labels = quartersUpTo(plainDate('2026-06-30'), 6).map(({ label }) => label);
  expect(labels).toEqual([
    '2024-25-Q4',
    '2025-26-Q1',
    '2025-26-Q2',
    '2025-26-Q3',
    '2025-26-Q4',
    '2026-27-Q1',
  ]);
});

describe('the cut of an earlier period', () => {
  it.each([
    // 20 September is 82 days after 30 June; 82 days after 31 March is 21 June.
    ['2025-26-Q4', '2026-27-Q1', '2026-09-20', '2026-06-21'],
    ['2025-26-Q1', '2026-27-Q1', '2026-09-20', '2025-09-20'],
    // 41 days before the end of June: 41 days before the end of March.
    ['2025-26-Q4', '2026-27-Q1', '2026-05-20', '2026-02-18'],
    ['2026-27-Q1', '2026-27-Q1', '2026-06-30', '2026-06-30'],
    // The first day of a quarter of 92 days lies 91 days before its end; one of 90 days had not begun then.
    ['2025-26-Q4', '2026-27-Q2', '2026-07-01', '2026-01-01'],
  ])('of %s for %s as at %s is %s', (earlier, later, asAt, cut) => {
    expect(sameAgeCut(period(earlier), period(later), plainDate(asAt))).toBe(cut);
  });
});
