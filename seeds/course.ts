import { addDays } from '../src/domain/calendar/plain-date.js';
import type { PlainDate } from '../src/domain/calendar/plain-date.js';
import type { Triage } from '../src/domain/referral/referral.js';
import { workingDay } from './calendar-of-classes.js';
import type { ClassCalendar } from './calendar-of-classes.js';
import { planEarlyReason, planFate } from './fate.js';
import { planFollowUp } from './follow-up.js';
import { planFurtherAbilities } from './further-tests.js';
import { planClosure, planOfferBeforeLeaving } from './leaving.js';
import { planAbilities } from './measurements.js';
import { planAcceptedOffers, planDeclinedFirst, planStart } from './offers.js';
import type { PlannedCourse, PlannedPerson } from './plan.js';
import { sessionsOf } from './programme.js';
import { chance, wholeBetween } from './random.js';
import type { Random } from './random.js';
import { planReferral } from './referral.js';
import type { TeamScenario } from './scenario.js';
import { planBaseline, planStarted } from './started-course.js';
import type { VisitBasis } from './started-course.js';

/** A referral that arrives on a day. */
export interface Arrival {
  readonly key: string;
  readonly team: TeamScenario;
  readonly classes: ClassCalendar;
  readonly person: PlannedPerson;
  readonly isReferredAgain: boolean;
  readonly receivedOn: PlainDate;
  /** Numbers for what was added to the scenario later, so that the rest of it stays as it was. */
  readonly further: Random;
  /** First day of the scenario. */
  readonly firstDay: PlainDate;
}

/** Part of those who start without a baseline assessment. */
const NO_BASELINE_SHARE = 0.015;

/** The whole course of one referral, as it would go on if there were no today. */
export function planCourse(random: Random, arrival: Arrival): PlannedCourse {
  const { receivedOn, person } = arrival;
  const referral = planReferral(random, arrival);
  const fate = planFate(random, person, referral);
  const isUrgent = referral.details.pathway === 'after-exacerbation';
  const triagedOn = workingDay(addDays(receivedOn, wholeBetween(random, 0, isUrgent ? 3 : 9)));
  const accepted: Triage = { decision: 'accepted', decidedOn: triagedOn, reason: null };
  const waitDays = Math.round(referral.waitDays);
  const share = wholeBetween(random, 45, 80) / 100;
  const assessedOn = later(triagedOn, workingDay(addDays(receivedOn, Math.floor(waitDays * share))));
  const wantedOn = later(addDays(assessedOn, 1), addDays(receivedOn, waitDays));
  const abilities = planAbilities(random, person.body.severity);
  const { baseline: walkedM, discharge: walksM } = abilities.shuttleWalkM;
  const further = planFurtherAbilities(arrival.further, {
    isMale: person.details.sexAtBirth === 'male',
    severity: person.body.severity,
    walkGainM: walksM - walkedM,
  });
  const basis: VisitBasis = {
    receivedOn,
    site: referral.site,
    person,
    abilities,
    further: { ...further, random: arrival.further },
    deliveryMode: referral.details.deliveryMode,
  };
  const course = {
    key: arrival.key,
    person,
    isReferredAgain: arrival.isReferredAgain,
    fate,
    siteName: referral.site.name,
    commissionerKey: referral.commissionerKey,
    details: referral.details,
  };
  const assessmentOffers = { from: triagedOn, appointmentOn: assessedOn };
  switch (fate) {
    case 'registered-in-error': {
      const closedOn = addDays(receivedOn, wholeBetween(random, 1, 9));
      return { ...course, ...NOTHING, closure: planClosure(random, 'registered-in-error', closedOn) };
    }
    case 'not-accepted': {
      const triage = planRefusal(random, triagedOn);
      const closedOn = addDays(triagedOn, wholeBetween(random, 0, 14));
      const reason = triage.decision === 'redirected' ? 'transferred' : 'not-suitable';
      return { ...course, ...NOTHING, triage, closure: planClosure(random, reason, closedOn) };
    }
    case 'left-before-assessment': {
      const reason = planEarlyReason(random, fate);
      const leftOn = workingDay(addDays(triagedOn, wholeBetween(random, reason === 'no-reply' ? 28 : 6, 75)));
      const offers = planOfferBeforeLeaving(random, 'assessment', reason, { from: triagedOn, leftOn });
      const closure = planClosure(random, reason, leftOn);
      return { ...course, ...NOTHING, triage: accepted, offers, closure };
    }
    case 'left-before-start': {
      const reason = planEarlyReason(random, fate);
      const leftOn = workingDay(addDays(assessedOn, wholeBetween(random, 4, 60)));
      return {
        ...course,
        ...NOTHING,
        triage: accepted,
        offers: [
          ...planAcceptedOffers(random, 'assessment', assessmentOffers),
          ...planOfferBeforeLeaving(random, 'programme', reason, { from: assessedOn, leftOn }),
        ],
        baseline: planBaseline(random, basis, assessedOn),
        closure: planClosure(random, reason, leftOn),
      };
    }
    case 'stopped':
    case 'finished': {
      const expected = sessionsOf(arrival, referral, wantedOn);
      const startOn = expected[0]?.session.heldOn ?? wantedOn;
      const hasBaseline = !chance(random, NO_BASELINE_SHARE);
      const baseline = hasBaseline ? planBaseline(random, basis, assessedOn) : null;
      const assessments = hasBaseline ? planAcceptedOffers(random, 'assessment', assessmentOffers) : [];
      const programme = { from: assessedOn, appointmentOn: startOn };
      const places = planAcceptedOffers(random, 'programme', programme);
      const offers = [...assessments, ...planDeclinedFirst(arrival.further, places, assessedOn)];
      const started = planStarted(random, basis, { baseline, expected, fate });
      return {
        ...course,
        triage: accepted,
        offers,
        baseline,
        ...started,
        followUp: planFollowUp(basis, { baseline, ...started }),
        plannedStart: planStart(arrival.further, offers),
      };
    }
  }
}

const NOTHING = {
  ...{ triage: null, offers: [], baseline: null, contacts: [], discharge: null },
  ...{ followUp: null, plannedStart: null },
};

function planRefusal(random: Random, decidedOn: PlainDate): Triage {
  return chance(random, 0.7)
    ? { decision: 'not-suitable', decidedOn, reason: 'Exercise is not safe at present: back to the referrer' }
    : { decision: 'redirected', decidedOn, reason: 'Lives in the area of another service' };
}

function later(one: PlainDate, other: PlainDate): PlainDate {
  return one > other ? one : other;
}
