import { describe, expect, it } from 'vitest';
import { britishDate } from '../../../src/domain/calendar/british-date.js';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';

describe('a date as it is written in Britain', () => {
  it.each([
    ['2026-05-14', '14 May 2026'],
    ['2026-01-01', '1 January 2026'],
    ['2024-02-29', '29 February 2024'],
    ['2025-12-31', '31 December 2025'],
  ])('%s is %s', (date, expected) => {
    expect(britishDate(plainDate(date))).toBe(expected);
  });
});
