import { describe, expect, it } from 'vitest';
import {
  financialQuarter,
  financialYear,
  isWithin,
  latestClosedQuarter,
  parsePeriod,
  quarterOf,
} from '../../../src/domain/calendar/period.js';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';

describe('reading a period', () => {
  it.each([
    ['2026-27-Q1', 'quarter', '2026-04-01', '2026-06-30'],
    ['2026-27-Q2', 'quarter', '2026-07-01', '2026-09-30'],
    ['2026-27-Q3', 'quarter', '2026-10-01', '2026-12-31'],
    ['2025-26-Q4', 'quarter', '2026-01-01', '2026-03-31'],
    ['2026-27', 'year', '2026-04-01', '2027-03-31'],
    ['1999-00', 'year', '1999-04-01', '2000-03-31'],
    ['2026-04-01..2026-05-31', 'dates', '2026-04-01', '2026-05-31'],
    ['2026-04-01..2026-04-01', 'dates', '2026-04-01', '2026-04-01'],
  ])('%s', (text, kind, firstDay, lastDay) => {
    expect(parsePeriod(text)).toEqual({ kind, label: text, firstDay, lastDay });
  });

  it.each([
    ['years that do not follow each other', '2026-28'],
    ['the same year twice', '2026-26-Q1'],
    ['a fifth quarter', '2026-27-Q5'],
    ['quarter 0', '2026-27-Q0'],
    ['a calendar year', '2026'],
    ['a small letter', '2026-27-q1'],
    ['reversed dates', '2026-05-31..2026-04-01'],
    ['a date that does not exist', '2026-02-29..2026-03-31'],
    ['three dates', '2026-04-01..2026-05-01..2026-06-01'],
    ['one date', '2026-04-01'],
    ['an open end', '2026-04-01..'],
    ['a year before 1900', '1899-00'],
    ['a year after 2900', '2901-02'],
    ['nothing', ''],
  ])('declines %s', (_, text) => {
    expect(parsePeriod(text)).toBeNull();
  });
});

describe('financial quarters and years', () => {
  it.each([
    ['2026-03-31', '2025-26-Q4'],
    ['2026-04-01', '2026-27-Q1'],
    ['2026-06-30', '2026-27-Q1'],
    ['2026-07-01', '2026-27-Q2'],
    ['2026-09-30', '2026-27-Q2'],
    ['2026-10-01', '2026-27-Q3'],
    ['2026-12-31', '2026-27-Q3'],
    ['2027-01-01', '2026-27-Q4'],
    ['2024-02-29', '2023-24-Q4'],
  ])('%s falls in %s', (date, label) => {
    expect(quarterOf(plainDate(date)).label).toBe(label);
  });

  it('holds at both ends of the calendar', () => {
    expect(quarterOf(plainDate('1800-01-01'))).toMatchObject({
      firstDay: '1800-01-01',
      lastDay: '1800-03-31',
    });
    expect(quarterOf(plainDate('2999-12-31'))).toMatchObject({
      firstDay: '2999-10-01',
      lastDay: '2999-12-31',
    });
  });

  it('refuses a quarter that no year has', () => {
    expect(() => financialQuarter(2026, 5)).toThrow(RangeError);
    expect(() => financialQuarter(2026, 0)).toThrow(RangeError);
    expect(() => financialQuarter(2026, 1.5)).toThrow(RangeError);
  });

  it('starts a year on 1 April', () => {
    expect(financialYear(2026)).toEqual({
      kind: 'year',
      label: '2026-27',
      firstDay: '2026-04-01',
      lastDay: '2027-03-31',
    });
  });

  it.each([
    ['in the middle of a quarter', '2026-11-25', '2026-27-Q2'],
    ['on the first day of a quarter', '2026-10-01', '2026-27-Q2'],
    ['on the last day of a quarter, which is not closed yet', '2026-09-30', '2026-27-Q1'],
    ['over the financial year end', '2026-04-01', '2025-26-Q4'],
  ])('finds the latest closed quarter %s', (_, today, label) => {
    expect(latestClosedQuarter(plainDate(today)).label).toBe(label);
  });
});

describe('lying within a period', () => {
  const quarter = financialQuarter(2026, 1);

  it.each([
    ['the first day', '2026-04-01', true],
    ['the last day', '2026-06-30', true],
    ['the day before', '2026-03-31', false],
    ['the day after', '2026-07-01', false],
  ])('%s', (_, date, expected) => {
    expect(isWithin(quarter, plainDate(date))).toBe(expected);
  });
});
