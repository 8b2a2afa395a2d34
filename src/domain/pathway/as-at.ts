import type { PlainDate } from '../calendar/plain-date.js';
import type { ReferralFacts } from '../cohort/referral-facts.js';
import type { SessionCounts } from '../session/session-counts.js';

/**
 * The facts of a referral as they stood at the end of a day: the one place where later facts are left out of a count.
 *
 * A registration in error stays known whatever its date, because it says that there never was such a referral.
 *
 * @param asAt the data cut; facts of that day are seen
 * @returns the same facts without anything dated later, or null where the referral was received later
 * @example factsAsAt(received 2 July, '2026-06-30') -> null
 */
export function factsAsAt(facts: ReferralFacts, asAt: PlainDate): ReferralFacts | null {
  if (facts.receivedOn > asAt) return null;
  if (!hasLaterFacts(facts, asAt)) return facts;
  return {
    ...facts,
    hospitalDischargedOn: upTo(facts.hospitalDischargedOn, asAt),
    triage: facts.triage !== null && facts.triage.decidedOn <= asAt ? facts.triage : null,
    offers: facts.offers.filter((offer) => offer.offeredOn <= asAt),
    exercisePlanGivenOn: upTo(facts.exercisePlanGivenOn, asAt),
    closure: facts.closure !== null && isKnownClosure(facts.closure, asAt) ? facts.closure : null,
    contacts: facts.contacts.filter((contact) => contact.heldOn <= asAt),
    counted: facts.counted === null ? null : countsAsAt(facts.counted, asAt),
    assessments: facts.assessments.filter((assessment) => assessment.assessedOn <= asAt),
  };
}

function hasLaterFacts(facts: ReferralFacts, asAt: PlainDate): boolean {
  const {
    hospitalDischargedOn,
    triage,
    offers,
    exercisePlanGivenOn,
    closure,
    contacts,
    counted,
    assessments,
  } = facts;
  return (
    (hospitalDischargedOn !== null && hospitalDischargedOn > asAt) ||
    (triage !== null && triage.decidedOn > asAt) ||
    (exercisePlanGivenOn !== null && exercisePlanGivenOn > asAt) ||
    (closure !== null && !isKnownClosure(closure, asAt)) ||
    (counted !== null && counted.countedOn > asAt) ||
    offers.some((offer) => offer.offeredOn > asAt) ||
    contacts.some((contact) => contact.heldOn > asAt) ||
    assessments.some((assessment) => assessment.assessedOn > asAt)
  );
}

function isKnownClosure(closure: NonNullable<ReferralFacts['closure']>, asAt: PlainDate): boolean {
  return closure.closedOn <= asAt || closure.reason === 'registered-in-error';
}

/** Between the first and the last day of the sessions counted, the first is all that is known. */
function countsAsAt(counts: SessionCounts, asAt: PlainDate): SessionCounts | null {
  if (counts.countedOn <= asAt) return counts;
  if (counts.startedOn === null || counts.startedOn > asAt) return null;
  return {
    ...counts,
    countedOn: asAt,
    attended: 1,
    didNotAttend: 0,
    cancelledByPatient: 0,
    cancelledByService: 0,
  };
}

function upTo(date: PlainDate | null, asAt: PlainDate): PlainDate | null {
  return date !== null && date <= asAt ? date : null;
}
