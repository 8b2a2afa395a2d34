import { addDays } from '../src/domain/calendar/plain-date.js';
import type { PlainDate } from '../src/domain/calendar/plain-date.js';
import type { ClosureReason, WalkingAid } from '../src/domain/referral/closed-sets.js';
import { planAssessment } from './assessments.js';
import type { Visit } from './assessments.js';
import { planFinisher, planStopper } from './attendance.js';
import type { ExpectedSession } from './attendance.js';
import { workingDay } from './calendar-of-classes.js';
import { planStoppingReason } from './fate.js';
import { planClosure } from './leaving.js';
import type { PlannedAssessment, PlannedContact, PlannedCourse } from './plan.js';
import { chance, pickWeighted, wholeBetween } from './random.js';
import type { Random } from './random.js';

/** A course from the first class on. */
export type StartedPart = Pick<PlannedCourse, 'contacts' | 'discharge' | 'closure'>;

/** What stays the same at both visits of a course. */
export type VisitBasis = Omit<
  Visit,
  'timepoint' | 'assessedOn' | 'walkingAid' | 'courseLengthM' | 'baseline'
>;

const AID_CHANGES_SHARE = 0.05;

/** @source 26 % left without a written plan (2016 national report, n = 7413) */
const PLAN_GIVEN_SHARE = 0.76;

/**
 * @source of 675 people who finished, 565 (84 %) were measured twice (Kon 2014, Lancet Respir Med 2:195). Here 8 % have no
 *   discharge assessment at all, and some of the others no walk.
 */
const DISCHARGE_ASSESSED_SHARE = { finished: 0.92, sporadic: 0.35, stopped: 0.03 };

/** The baseline assessment. */
export function planBaseline(random: Random, basis: VisitBasis, assessedOn: PlainDate): PlannedAssessment {
  return planAssessment(random, {
    ...basis,
    timepoint: 'baseline',
    assessedOn,
    walkingAid: basis.person.body.walkingAid,
    // A hall that is too short now and then: a course of 20 m is another test.
    courseLengthM: chance(random, 0.07) ? 20 : 30,
    baseline: null,
  });
}

/** Sessions, discharge assessment and closure of somebody who starts. */
export function planStarted(
  random: Random,
  basis: VisitBasis,
  course: {
    readonly baseline: PlannedAssessment | null;
    readonly expected: readonly ExpectedSession[];
    readonly fate: 'stopped' | 'finished';
  },
): StartedPart {
  const stopped = course.fate === 'stopped' ? planStopper(random, course.expected) : null;
  const contacts = stopped === null ? planFinisher(random, course.expected) : stopped.contacts;
  const lastOn = lastDayOf(contacts);
  const reason: ClosureReason = stopped === null ? 'completed' : planStoppingReason(random);
  const kind = stopped === null ? 'finished' : stopped.isSporadic ? 'sporadic' : 'stopped';
  const canReturn = !['died', 'moved-away', 'transferred', 'no-reply'].includes(reason);
  if (!canReturn || !chance(random, DISCHARGE_ASSESSED_SHARE[kind])) {
    const leftOn = addDays(
      lastOn,
      kind === 'finished' ? wholeBetween(random, 21, 70) : wholeBetween(random, 2, 32),
    );
    const hasPlan = kind === 'finished' && chance(random, 0.35);
    return {
      contacts,
      discharge: null,
      closure: planClosure(random, reason, leftOn, hasPlan ? lastOn : null),
    };
  }
  const assessedOn = workingDay(addDays(lastOn, wholeBetween(random, 2, 14)));
  const discharge = planDischarge(random, basis, course.baseline, assessedOn);
  const hasPlan = chance(random, kind === 'finished' ? PLAN_GIVEN_SHARE : 0.3);
  const closedOn = addDays(assessedOn, chance(random, 0.6) ? 0 : wholeBetween(random, 1, 18));
  const closure = planClosure(
    random,
    kind === 'stopped' ? reason : 'completed',
    closedOn,
    hasPlan ? assessedOn : null,
  );
  return { contacts, discharge, closure };
}

function planDischarge(
  random: Random,
  basis: VisitBasis,
  baseline: PlannedAssessment | null,
  assessedOn: PlainDate,
): PlannedAssessment {
  const { walkingAid } = basis.person.body;
  const before = baseline?.entry.walkTests[0]?.courseLengthM ?? 30;
  const isOtherHall = chance(random, 0.04);
  return planAssessment(random, {
    ...basis,
    timepoint: 'discharge',
    assessedOn,
    walkingAid: chance(random, AID_CHANGES_SHARE) ? otherAid(random, walkingAid) : walkingAid,
    courseLengthM: isOtherHall ? (before === 30 ? 20 : 30) : before,
    baseline,
  });
}

function otherAid(random: Random, aid: WalkingAid): WalkingAid {
  const others: readonly (readonly [WalkingAid, number])[] = [
    ['none', 35],
    ['stick', 30],
    ['rollator', 30],
    ['two-sticks', 5],
  ];
  return pickWeighted(
    random,
    others.filter(([other]) => other !== aid),
  );
}

function lastDayOf(contacts: readonly PlannedContact[]): PlainDate {
  const last = contacts.at(-1);
  if (last === undefined) throw new RangeError('Somebody who starts has sessions.');
  return last.session.heldOn;
}
