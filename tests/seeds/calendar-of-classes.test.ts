import { describe, expect, it } from 'vitest';
import { plainDate } from '../../src/domain/calendar/plain-date.js';
import {
  classesFrom,
  classesOf,
  isShut,
  VIDEO_SERIES,
  weekdayOf,
  workingDay,
} from '../../seeds/calendar-of-classes.js';
import { TEAMS } from '../../seeds/scenario.js';

const YEAR = { from: plainDate('2025-04-01'), to: plainDate('2026-03-31') };

describe('the calendar of classes', () => {
  it('knows the days of the week', () => {
    // 25 November 2026 is a Wednesday, 31 December 2023 a Sunday.
    expect(weekdayOf(plainDate('2026-11-25'))).toBe(2);
    expect(weekdayOf(plainDate('2023-12-31'))).toBe(6);
    expect(workingDay(plainDate('2026-11-28'))).toBe('2026-11-30');
    expect(workingDay(plainDate('2026-11-29'))).toBe('2026-11-30');
    expect(workingDay(plainDate('2026-11-27'))).toBe('2026-11-27');
  });

  it.each([
    ['2025-12-25', true],
    ['2026-01-01', true],
    ['2026-01-02', false],
    ['2026-05-04', true],
    ['2026-05-11', false],
    ['2026-05-25', true],
    ['2026-08-31', true],
    ['2026-08-24', false],
    ['2026-08-30', false],
  ])('is shut on %s: %s', (date, expected) => {
    expect(isShut(plainDate(date))).toBe(expected);
  });

  it.each(TEAMS)('holds two classes a week at each site of $name, on the same two days', (team) => {
    const calendar = classesOf(team, YEAR, 1);
    for (const site of team.sites) {
      const classes = calendar.get(site.name) ?? [];
      // A year has 52 weeks and a day: 104 classes, or 105 when that day is a day of class.
      expect([104, 105]).toContain(classes.length);
      const days = new Set(classes.map((held) => weekdayOf(held.heldOn)));
      expect([...days].sort()).toEqual([...site.classDays].sort());
    }
    expect(calendar.has(VIDEO_SERIES)).toBe(team.videoClassDays !== null);
  });

  it('cancels every class of a day on which the service is shut, and few others', () => {
    const all = TEAMS.flatMap((team) => [...classesOf(team, YEAR, 1).values()].flat());
    expect(all.filter((held) => isShut(held.heldOn) && !held.isCancelled)).toEqual([]);
    const open = all.filter((held) => !isShut(held.heldOn));
    const cancelled = open.filter((held) => held.isCancelled).length / open.length;
    expect(cancelled).toBeGreaterThan(0);
    expect(cancelled).toBeLessThan(0.04);
  });

  it('finds the classes from a day on', () => {
    const [team] = TEAMS;
    if (team === undefined) throw new Error('There is a first team.');
    const calendar = classesOf(team, YEAR, 1);
    const classes = calendar.get('Dune Hall') ?? [];
    expect(classesFrom(calendar, 'Dune Hall', plainDate('2025-04-03'))[0]?.heldOn).toBe('2025-04-03');
    expect(classesFrom(calendar, 'Dune Hall', plainDate('2025-04-04'))[0]?.heldOn).toBe('2025-04-07');
    expect(classesFrom(calendar, 'Dune Hall', YEAR.from)).toEqual(classes);
    expect(classesFrom(calendar, 'Dune Hall', plainDate('2026-04-01'))).toEqual([]);
  });
});
