import { expect, it } from 'vitest';
import { shortMonthName } from '../../../src/domain/calendar/british-date.js';
import { parsePeriod } from '../../../src/domain/calendar/period.js';
import { monthWords, periodWords } from '../../../src/domain/calendar/period-words.js';

it.each([
  ['2026-27-Q1', '2026-27-Q1 (April to June 2026)'],
  ['2025-26-Q4', '2025-26-Q4 (January to March 2026)'],
  ['2026-27', '2026-27 (April 2026 to March 2027)'],
  ['2026-04-01..2026-05-31', '1 April 2026 to 31 May 2026'],
])('says of %s which months it has', (text, words) => {
  const period = parsePeriod(text);
  if (period === null) throw new Error(`${text} is no period.`);
  expect(periodWords(period)).toBe(words);
});

it.each([
  ['2026-27-Q2', 'Jul to Sep 2026'],
  ['2026-27', 'Apr 2026 to Mar 2027'],
])('says of %s in short which months it has', (text, words) => {
  const period = parsePeriod(text);
  if (period === null) throw new Error(`${text} is no period.`);
  expect(monthWords(period, shortMonthName)).toBe(words);
});
