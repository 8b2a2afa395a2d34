import type { PlainDate } from '../src/domain/calendar/plain-date.js';
import type { Attendance } from '../src/domain/session/session.js';
import { offerAsKnown } from './offers.js';
import type {
  PlannedAssessment,
  PlannedClosure,
  PlannedCourse,
  PlannedEntry,
  PlannedOffer,
  PlannedPerson,
  PlannedSession,
} from './plan.js';
import type { TeamPlan } from './team-plan.js';
import type { Triage } from '../src/domain/referral/referral.js';

/** A register by keys of the plan, since ids are only given when things are entered. */
export type PlannedRegister = readonly (Pick<Attendance, 'outcome'> & { readonly courseKey: string })[];

/** What is entered on a day. */
export type Deed =
  | { readonly kind: 'register'; readonly course: PlannedCourse }
  | { readonly kind: 'correct-person'; readonly person: PlannedPerson }
  | { readonly kind: 'triage'; readonly course: PlannedCourse; readonly triage: Triage }
  | { readonly kind: 'offer'; readonly course: PlannedCourse; readonly offer: PlannedOffer }
  | { readonly kind: 'plan-start'; readonly course: PlannedCourse; readonly startOn: PlainDate }
  | {
      readonly kind: 'assess';
      readonly course: PlannedCourse;
      readonly assessment: PlannedAssessment;
      readonly entry: PlannedEntry;
    }
  | {
      readonly kind: 'correct-assessment';
      readonly course: PlannedCourse;
      readonly assessment: PlannedAssessment;
      readonly reason: string;
    }
  | { readonly kind: 'hold-session'; readonly session: PlannedSession; readonly register: PlannedRegister }
  | { readonly kind: 'close'; readonly course: PlannedCourse; readonly closure: PlannedClosure };

export interface DemoEvent {
  /** The day on which it is entered. */
  readonly on: PlainDate;
  readonly deed: Deed;
}

/** Order of one day's work: what another entry builds on comes first. */
const ORDER: Readonly<Record<Deed['kind'], number>> = {
  register: 0,
  'correct-person': 1,
  triage: 2,
  offer: 3,
  'plan-start': 4,
  assess: 5,
  'correct-assessment': 6,
  'hold-session': 7,
  close: 8,
};

/** Everything a team enters up to the evening of the last day, in the order in which it is entered. */
export function eventsOf(plan: TeamPlan, lastDay: PlainDate): readonly DemoEvent[] {
  const events = [
    ...plan.courses.flatMap((course) => eventsOfCourse(course, lastDay)),
    ...eventsOfSessions(plan, lastDay),
  ];
  return events
    .filter((event) => event.on <= lastDay)
    .sort((one, other) =>
      one.on === other.on ? ORDER[one.deed.kind] - ORDER[other.deed.kind] : one.on < other.on ? -1 : 1,
    );
}

function eventsOfCourse(course: PlannedCourse, lastDay: PlainDate): readonly DemoEvent[] {
  const { closure, person, triage } = course;
  const events: DemoEvent[] = [{ on: course.details.receivedOn, deed: { kind: 'register', course } }];
  if (person.correction !== null && !course.isReferredAgain) {
    events.push({ on: person.correction.recordedOn, deed: { kind: 'correct-person', person } });
  }
  if (triage !== null) events.push({ on: triage.decidedOn, deed: { kind: 'triage', course, triage } });
  for (const planned of course.offers) {
    const offer = offerAsKnown(planned, lastDay);
    if (offer !== null) events.push({ on: offer.recordedOn, deed: { kind: 'offer', course, offer } });
  }
  if (course.plannedStart !== null) {
    const { startOn, recordedOn } = course.plannedStart;
    events.push({ on: recordedOn, deed: { kind: 'plan-start', course, startOn } });
  }
  for (const assessment of [course.baseline, course.discharge, course.followUp]) {
    if (assessment === null) continue;
    const { entry, slip } = assessment;
    events.push({
      on: entry.assessedOn,
      deed: { kind: 'assess', course, assessment, entry: slip?.entry ?? entry },
    });
    if (slip === null) continue;
    const deed: Deed = { kind: 'correct-assessment', course, assessment, reason: slip.reason };
    events.push({ on: slip.correctedOn, deed });
  }
  if (closure !== null) events.push({ on: closure.recordedOn, deed: { kind: 'close', course, closure } });
  return events;
}

/**
 * Every class and contact with its whole register, entered on the day it is held. A class at which nobody is expected is
 * not entered.
 */
function eventsOfSessions(plan: TeamPlan, lastDay: PlainDate): readonly DemoEvent[] {
  const held = new Map<string, { session: PlannedSession; register: PlannedRegister[number][] }>();
  for (const course of plan.courses) {
    for (const { session, outcome } of course.contacts) {
      if (session.heldOn > lastDay) break;
      const entry = held.get(session.key) ?? { session, register: [] };
      entry.register.push({ courseKey: course.key, outcome });
      held.set(session.key, entry);
    }
  }
  return [...held.values()].map(({ session, register }) => ({
    on: session.heldOn,
    deed: { kind: 'hold-session', session, register },
  }));
}
