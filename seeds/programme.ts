import { addDays } from '../src/domain/calendar/plain-date.js';
import type { PlainDate } from '../src/domain/calendar/plain-date.js';
import type { ExpectedSession } from './attendance.js';
import { classesFrom, isShut, VIDEO_SERIES, weekdayOf, workingDay } from './calendar-of-classes.js';
import type { ClassCalendar, PlannedClass } from './calendar-of-classes.js';
import type { ArrivedReferral } from './referral.js';
import type { TeamScenario } from './scenario.js';

/**
 * The sessions a person is expected at, from the first that is held on the wanted day or after it.
 *
 * @returns as many supervised sessions as are planned, those cancelled by the service among them: they are not made up
 */
export function sessionsOf(
  course: { readonly key: string; readonly team: TeamScenario; readonly classes: ClassCalendar },
  referral: ArrivedReferral,
  wantedOn: PlainDate,
): readonly ExpectedSession[] {
  const { team, classes } = course;
  const { site, details } = referral;
  if (details.deliveryMode === 'home') return homeVisits(course.key, site.name, wantedOn);
  const atSite = classesFrom(classes, site.name, wantedOn);
  const byVideo = classesFrom(classes, VIDEO_SERIES, wantedOn);
  switch (details.deliveryMode) {
    case 'remote':
      return firstOf(byVideo, team.plannedSessions);
    case 'hybrid': {
      const video = team.videoClassDays?.[1];
      const mixed = [
        ...atSite.filter((held) => weekdayOf(held.heldOn) === site.classDays[0]),
        ...byVideo.filter((held) => weekdayOf(held.heldOn) === video),
      ];
      return firstOf(
        mixed.sort((one, other) => (one.heldOn < other.heldOn ? -1 : 1)),
        team.plannedSessions,
      );
    }
    case 'centre':
    case null:
      return firstOf(atSite, team.plannedSessions);
  }
}

function firstOf(classes: readonly PlannedClass[], count: number): readonly ExpectedSession[] {
  const first = classes.findIndex((held) => !held.isCancelled);
  const chosen = first === -1 ? [] : classes.slice(first, first + count);
  if (chosen.length < count) throw new RangeError('The calendar of classes ends too early.');
  return chosen.map(({ isCancelled, ...session }) => ({ session, isCancelled }));
}

/** Six weekly visits, with a call in between that nobody supervises. */
function homeVisits(courseKey: string, siteName: string, wantedOn: PlainDate): readonly ExpectedSession[] {
  let first = workingDay(wantedOn);
  while (isShut(first)) first = workingDay(addDays(first, 1));
  const contact = (dayOffset: number, isSupervised: boolean): ExpectedSession => {
    const heldOn = workingDay(addDays(first, dayOffset));
    const key = `${courseKey}/${isSupervised ? 'visit' : 'call'}/${heldOn}`;
    return {
      session: { key, siteName, heldOn, mode: isSupervised ? 'home' : 'remote', isSupervised },
      isCancelled: isSupervised && isShut(heldOn),
    };
  };
  return [0, 1, 2, 3, 4, 5].flatMap((week) =>
    week % 2 === 0 ? [contact(7 * week, true), contact(7 * week + 3, false)] : [contact(7 * week, true)],
  );
}
