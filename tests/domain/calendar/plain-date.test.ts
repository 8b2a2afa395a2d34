import { describe, expect, it } from 'vitest';
import {
  addDays,
  addMonths,
  ageInYears,
  daysBetween,
  daysInMonth,
  fromParts,
  londonDateAt,
  parsePlainDate,
  partsOf,
  plainDate,
} from '../../../src/domain/calendar/plain-date.js';

describe('reading a date', () => {
  it.each(['2024-02-29', '2000-02-29', '1800-01-01', '2999-12-31', '2026-04-30'])('accepts %s', (text) => {
    expect(parsePlainDate(text)).toBe(text);
  });

  it.each([
    ['29 February of a common year', '2025-02-29'],
    ['29 February of a century that is no leap year', '1900-02-29'],
    ['31 April', '2026-04-31'],
    ['day 0', '2026-04-00'],
    ['month 0', '2026-00-10'],
    ['month 13', '2026-13-01'],
    ['a year before 1800', '1799-12-31'],
    ['a year after 2999', '3000-01-01'],
    ['single digits', '2026-4-1'],
    ['an instant', '2026-04-01T00:00:00Z'],
    ['day before month', '01-04-2026'],
    ['a line end after the date', '2026-04-01\n'],
    ['spaces', ' 2026-04-01'],
    ['digits of another script', '२०२६-०४-०१'],
    ['nothing', ''],
  ])('declines %s', (_, text) => {
    expect(parsePlainDate(text)).toBeNull();
  });

  it('throws for a literal that is no date', () => {
    expect(() => plainDate('2025-02-29')).toThrow(RangeError);
    expect(() => fromParts(2025, 2, 29)).toThrow(RangeError);
  });

  it('comes apart and together again', () => {
    expect(partsOf(plainDate('2026-04-09'))).toEqual({ year: 2026, month: 4, day: 9 });
    expect(fromParts(2026, 4, 9)).toBe('2026-04-09');
  });

  it('sorts as text', () => {
    expect(['2026-10-01', '2026-09-30', '1999-12-31'].map(plainDate).sort()).toEqual([
      '1999-12-31',
      '2026-09-30',
      '2026-10-01',
    ]);
  });
});

describe('days', () => {
  it.each([
    ['over a leap day', '2024-02-28', 2, '2024-03-01'],
    ['over a missing leap day', '2025-02-28', 1, '2025-03-01'],
    ['over the year end', '2025-12-31', 1, '2026-01-01'],
    ['backwards', '2026-03-01', -1, '2026-02-28'],
    ['none', '2026-03-01', 0, '2026-03-01'],
    ['over the spring clock change', '2026-03-28', 2, '2026-03-30'],
    ['over the autumn clock change', '2026-10-24', 2, '2026-10-26'],
  ])('adds days %s', (_, from, days, expected) => {
    expect(addDays(plainDate(from), days)).toBe(expected);
  });

  it('day 90 after 1 April is 30 June', () => {
    expect(daysBetween(plainDate('2026-04-01'), plainDate('2026-06-30'))).toBe(90);
  });

  it('counts the same day as 0 and an earlier day as negative', () => {
    expect(daysBetween(plainDate('2026-04-01'), plainDate('2026-04-01'))).toBe(0);
    expect(daysBetween(plainDate('2026-04-01'), plainDate('2026-03-31'))).toBe(-1);
  });

  it('refuses part of a day, and days outside the calendar', () => {
    expect(() => addDays(plainDate('2026-04-01'), 0.5)).toThrow(RangeError);
    expect(() => addDays(plainDate('2026-04-01'), Number.NaN)).toThrow(RangeError);
    expect(() => addDays(plainDate('2999-12-31'), 1)).toThrow(RangeError);
    expect(() => addDays(plainDate('1800-01-01'), -1)).toThrow(RangeError);
  });

  it.each([
    [2024, 2, 29],
    [2025, 2, 28],
    [1900, 2, 28],
    [2000, 2, 29],
    [2026, 4, 30],
    [2026, 12, 31],
  ])('%d-%d has %d days', (year, month, days) => {
    expect(daysInMonth(year, month)).toBe(days);
  });
});

describe('months', () => {
  it.each([
    ['2025-01-31', 1, '2025-02-28'],
    ['2024-01-31', 1, '2024-02-29'],
    ['2025-11-30', 3, '2026-02-28'],
    ['2025-03-31', -1, '2025-02-28'],
    ['2025-01-15', -13, '2023-12-15'],
    ['2024-02-29', 12, '2025-02-28'],
    ['2025-06-10', 0, '2025-06-10'],
  ])('%s and %d months is %s', (from, months, expected) => {
    expect(addMonths(plainDate(from), months)).toBe(expected);
  });

  it('refuses part of a month', () => {
    expect(() => addMonths(plainDate('2025-01-31'), 1.5)).toThrow(RangeError);
  });
});

describe('age in completed years', () => {
  it.each([
    ['the day before the birthday', '1956-06-15', '2026-06-14', 69],
    ['the birthday itself', '1956-06-15', '2026-06-15', 70],
    ['an earlier month', '1956-06-15', '2026-01-31', 69],
    ['a later month, smaller day', '1956-06-15', '2026-07-01', 70],
    ['the day of birth', '2026-06-15', '2026-06-15', 0],
    ['born on a leap day, 28 February of a common year', '1956-02-29', '2026-02-28', 69],
    ['born on a leap day, 1 March of a common year', '1956-02-29', '2026-03-01', 70],
    ['born on a leap day, the leap day', '1956-02-29', '2024-02-29', 68],
  ])('%s', (_, bornOn, onDate, years) => {
    expect(ageInYears(plainDate(bornOn), plainDate(onDate))).toBe(years);
  });
});

describe('the date in London at an instant', () => {
  it.each([
    ['winter, before midnight', '2026-01-31T23:59:59.999Z', '2026-01-31'],
    ['summer time, after local midnight', '2026-06-30T23:30:00.000Z', '2026-07-01'],
    ['the evening before the clocks go forward', '2026-03-28T23:59:59Z', '2026-03-28'],
    ['the night after the clocks went forward', '2026-03-29T23:00:00Z', '2026-03-30'],
    ['the evening before the clocks go back', '2026-10-24T22:59:59Z', '2026-10-24'],
    ['the last night of summer time, after local midnight', '2026-10-24T23:00:00Z', '2026-10-25'],
    ['the night after the clocks went back', '2026-10-25T23:30:00Z', '2026-10-25'],
    ['the turn of the year', '2026-01-01T00:00Z', '2026-01-01'],
  ])('%s', (_, instant, expected) => {
    expect(londonDateAt(instant)).toBe(expected);
  });

  it.each([
    ['without a zone, which would be read in the zone of the server', '2026-06-30T23:30:00'],
    ['with an offset', '2026-06-30T23:30:00+01:00'],
    ['that does not exist', '2026-02-30T25:00:00Z'],
    ['that is only a date', '2026-06-30'],
  ])('refuses an instant %s', (_, instant) => {
    expect(() => londonDateAt(instant)).toThrow(RangeError);
  });
});
