import { addDays, daysBetween, partsOf, plainDate } from '../src/domain/calendar/plain-date.js';
import type { PlainDate } from '../src/domain/calendar/plain-date.js';
import type { PlannedSession } from './plan.js';
import { chance, randomFor } from './random.js';
import type { TeamScenario, Weekday } from './scenario.js';

/** A class that is on the calendar, held or not. */
export interface PlannedClass extends PlannedSession {
  readonly isCancelled: boolean;
}

/** Every class of a team, by series: the site's name, or `video`; each in order of date. */
export type ClassCalendar = ReadonlyMap<string, readonly PlannedClass[]>;

export const VIDEO_SERIES = 'video';

const A_MONDAY = plainDate('2024-01-01');
/** Share of classes that fall through for other reasons than a holiday, such as illness of staff. */
const CANCELLED_SHARE = 0.015;

/** Monday is 0, Sunday is 6. */
export function weekdayOf(date: PlainDate): number {
  return ((daysBetween(A_MONDAY, date) % 7) + 7) % 7;
}

/** The date itself, or the Monday after a weekend. */
export function workingDay(date: PlainDate): PlainDate {
  const weekday = weekdayOf(date);
  return weekday >= 5 ? addDays(date, 7 - weekday) : date;
}

/**
 * Whether the service is shut as on a bank holiday: the days around New Year, the first and last Monday in May, and the
 * last Monday in August. Easter is left out.
 */
export function isShut(date: PlainDate): boolean {
  const { month, day } = partsOf(date);
  if ((month === 12 && day >= 25) || (month === 1 && day === 1)) return true;
  if (weekdayOf(date) !== 0) return false;
  return (month === 5 && (day <= 7 || day >= 25)) || (month === 8 && day >= 25);
}

/** All classes of a team from the first day to the last, twice a week at each site, and by video where it does so. */
export function classesOf(
  team: TeamScenario,
  days: { readonly from: PlainDate; readonly to: PlainDate },
  seed: number,
): ClassCalendar {
  const calendar = new Map<string, readonly PlannedClass[]>();
  for (const site of team.sites) {
    calendar.set(site.name, series(team, site.name, { ...days, on: site.classDays, seed }));
  }
  if (team.videoClassDays !== null) {
    calendar.set(VIDEO_SERIES, series(team, VIDEO_SERIES, { ...days, on: team.videoClassDays, seed }));
  }
  return calendar;
}

/** The classes of a series on a day or after it. */
export function classesFrom(
  calendar: ClassCalendar,
  seriesKey: string,
  from: PlainDate,
): readonly PlannedClass[] {
  const all = calendar.get(seriesKey) ?? [];
  const first = all.findIndex((held) => held.heldOn >= from);
  return first === -1 ? [] : all.slice(first);
}

function series(
  team: TeamScenario,
  key: string,
  plan: {
    readonly from: PlainDate;
    readonly to: PlainDate;
    readonly on: readonly Weekday[];
    readonly seed: number;
  },
): readonly PlannedClass[] {
  const random = randomFor(plan.seed, `${team.key}/classes/${key}`);
  const isVideo = key === VIDEO_SERIES;
  const classes: PlannedClass[] = [];
  for (let date = plan.from; date <= plan.to; date = addDays(date, 1)) {
    if (!plan.on.some((day) => day === weekdayOf(date))) continue;
    classes.push({
      key: `${team.key}/${key}/${date}`,
      siteName: isVideo ? team.sites[0].name : key,
      heldOn: date,
      mode: isVideo ? 'remote' : 'centre',
      isSupervised: true,
      isCancelled: chance(random, CANCELLED_SHARE) || isShut(date),
    });
  }
  return classes;
}
