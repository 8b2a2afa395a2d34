import { describe, expect, it } from 'vitest';
import { londonMidnight, londonTime } from '../../../src/domain/calendar/london-time.js';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';

describe('the time in London', () => {
  // The clocks of 2026 go forward on 29 March and back on 25 October, at 01:00 UTC.
  it.each([
    ['2026-01-05T00:05:00.000Z', '5 January 2026, 00:05'],
    ['2026-03-29T00:59:59.999Z', '29 March 2026, 00:59'],
    ['2026-03-29T01:00:00.000Z', '29 March 2026, 02:00'],
    ['2026-06-30T23:30:00.000Z', '1 July 2026, 00:30'],
    ['2026-10-25T00:30:00.000Z', '25 October 2026, 01:30'],
    ['2026-10-25T01:30:00.000Z', '25 October 2026, 01:30'],
  ])('%s is %s', (instant, words) => {
    expect(londonTime(instant)).toBe(words);
  });

  it.each([
    ['2026-12-01', '2026-12-01T00:00:00.000Z'],
    ['2026-07-01', '2026-06-30T23:00:00.000Z'],
    ['2026-03-29', '2026-03-29T00:00:00.000Z'],
    ['2026-03-30', '2026-03-29T23:00:00.000Z'],
    ['2026-10-25', '2026-10-24T23:00:00.000Z'],
    ['2026-10-26', '2026-10-26T00:00:00.000Z'],
  ])('%s begins at %s', (date, instant) => {
    expect(londonMidnight(plainDate(date))).toBe(instant);
  });
});
