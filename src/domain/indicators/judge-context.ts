import type { Period } from '../calendar/period.js';
import type { PlainDate } from '../calendar/plain-date.js';
import type { CourseChange } from '../change/course-changes.js';
import { changesOf, rememberThresholds } from '../change/course-changes.js';
import type { Course } from '../pathway/course.js';
import type { TeamSettings } from '../settings/team-settings.js';
import type { JudgeContext } from './indicator.js';

/**
 * What rules look at beside the referral. The changes of a person are worked out when first asked for and kept for as
 * long as the context, because every outcome figure asks for them.
 */
export function judgeContext(input: {
  readonly period: Period;
  readonly asAt: PlainDate;
  readonly settings: TeamSettings;
}): JudgeContext {
  const thresholdsFor = rememberThresholds(input.settings);
  const known = new WeakMap<Course, ReadonlyMap<string, CourseChange>>();
  return {
    period: input.period,
    asAt: input.asAt,
    settings: input.settings,
    changesOf: (course) => {
      const remembered = known.get(course);
      if (remembered !== undefined) return remembered;
      const changes = changesOf(course, thresholdsFor);
      known.set(course, changes);
      return changes;
    },
  };
}
