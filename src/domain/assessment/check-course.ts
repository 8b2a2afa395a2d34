import { ageInYears } from '../calendar/plain-date.js';
import type { PlainDate } from '../calendar/plain-date.js';
import { notInFuture } from '../referral/referral.js';
import type { Timepoint } from '../referral/closed-sets.js';
import type { Fault } from '../refusal/refusal.js';
import { checkField, FIELD_LIMITS, gather } from './field-limits.js';
import type { Findings } from './field-limits.js';

/** What is known of a referral when an assessment is recorded. */
export interface CourseContext {
  readonly today: PlainDate;
  readonly bornOn: PlainDate;
  readonly receivedOn: PlainDate;
  readonly closedOn: PlainDate | null;
  /** The other current assessments of the referral. */
  readonly others: readonly { readonly timepoint: Timepoint; readonly assessedOn: PlainDate }[];
}

/**
 * Checks where an assessment stands in the course of a referral.
 *
 * A discharge assessment may stand alone, since a baseline can have been missed; it may not come before one.
 */
export function checkCourse(
  entry: { readonly timepoint: Timepoint; readonly assessedOn: PlainDate },
  course: CourseContext,
): Findings {
  const faults: Fault[] = [...notInFuture('/assessedOn', entry.assessedOn, course.today)];
  if (entry.assessedOn < course.receivedOn) {
    faults.push(fault('before-receipt', 'The assessment cannot be before the referral was received.'));
  }
  if (course.closedOn !== null && entry.timepoint !== 'follow-up' && entry.assessedOn > course.closedOn) {
    faults.push(fault('after-closure', 'Only a follow-up assessment can be after the referral was closed.'));
  }
  const isOutOfOrder = course.others.some((other) => {
    const difference = ORDER[entry.timepoint] - ORDER[other.timepoint];
    return difference > 0
      ? entry.assessedOn < other.assessedOn
      : difference < 0 && entry.assessedOn > other.assessedOn;
  });
  if (isOutOfOrder) {
    faults.push(
      fault(
        'out-of-order',
        'Assessments follow in the order baseline, discharge, follow-up. Check the date and the timepoint.',
      ),
    );
  }
  const age = checkField({
    pointer: '/assessedOn',
    limits: FIELD_LIMITS.ageYears,
    value: ageInYears(course.bornOn, entry.assessedOn),
  });
  return gather([{ faults, queries: [] }, age]);
}

const ORDER: Readonly<Record<Timepoint, number>> = { baseline: 0, discharge: 1, 'follow-up': 2 };

function fault(code: string, message: string): Fault {
  return { pointer: '/assessedOn', code, message };
}
