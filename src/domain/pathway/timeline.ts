import type { PlainDate } from '../calendar/plain-date.js';
import type { AssessmentFacts, ReferralFacts } from '../cohort/referral-facts.js';
import { CLOSURE_WORDS } from '../referral/words.js';
import { OFFER_WORDS, RESPONSE_WORDS, TRIAGE_WORDS } from '../referral/step-words.js';
import type { Course } from './course.js';

/** Something that happened to a person, or is planned, on a day. No score is in it. */
export interface TimelineEvent {
  readonly on: PlainDate;
  readonly words: string;
  readonly isPlanned: boolean;
}

/**
 * The course of a person as dated events, earliest first; of one day in the order of the pathway.
 *
 * @param course as at its data cut: nothing later is in it, but for what is planned
 * @example received 2 April and triaged 3 April -> Referral received, Triage: accepted
 */
export function timelineOf(course: Course): readonly TimelineEvent[] {
  const { facts, startedOn } = course;
  const { hospitalDischargedOn, receivedOn, triage, exercisePlanGivenOn, closure } = facts;
  const events = [
    ...happened(hospitalDischargedOn, 'Left hospital'),
    ...happened(receivedOn, 'Referral received'),
    ...(triage === null ? [] : happened(triage.decidedOn, `Triage: ${TRIAGE_WORDS[triage.decision]}`)),
    ...facts.offers.flatMap(offerEvents),
    ...facts.assessments.flatMap((assessment) =>
      happened(assessment.assessedOn, assessmentWords(assessment)),
    ),
    ...happened(startedOn, 'Programme started'),
    ...plannedStart(course),
    ...latestSession(course),
    ...happened(exercisePlanGivenOn, 'Exercise plan given'),
    ...(closure === null ? [] : happened(closure.closedOn, `Closed: ${CLOSURE_WORDS[closure.reason]}`)),
  ];
  return events
    .map((event, index) => ({ event, index }))
    .sort((a, b) => (a.event.on === b.event.on ? a.index - b.index : a.event.on < b.event.on ? -1 : 1))
    .map(({ event }) => event);
}

function happened(on: PlainDate | null, words: string): readonly TimelineEvent[] {
  return on === null ? [] : [{ on, words, isPlanned: false }];
}

function offerEvents(offer: ReferralFacts['offers'][number]): readonly TimelineEvent[] {
  const what = OFFER_WORDS[offer.kind];
  return happened(offer.offeredOn, `Offered: ${what}, ${RESPONSE_WORDS[offer.response]}`);
}

function assessmentWords({ timepoint, results }: AssessmentFacts): string {
  const name = {
    baseline: 'Baseline assessment',
    discharge: 'Discharge assessment',
    'follow-up': 'Follow-up',
  }[timepoint];
  return results.length === 0 ? `${name}: nothing could be measured` : name;
}

function plannedStart({ facts, startedOn }: Course): readonly TimelineEvent[] {
  if (startedOn !== null || facts.plannedStartOn === null || facts.closure !== null) return [];
  return [{ on: facts.plannedStartOn, words: 'Start planned', isPlanned: true }];
}

/** The last class attended, where it is not the first. */
function latestSession({ facts, startedOn }: Course): readonly TimelineEvent[] {
  const attended = facts.contacts.filter(
    ({ isSupervised, outcome }) => isSupervised && outcome === 'attended',
  );
  const last = attended.at(-1)?.heldOn ?? null;
  return last === null || last === startedOn ? [] : happened(last, 'Latest class attended');
}
