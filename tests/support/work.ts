import { plainDate } from '../../src/domain/calendar/plain-date.js';
import type { ReferralFacts } from '../../src/domain/cohort/referral-facts.js';
import { stageOfCourse } from '../../src/domain/pathway/stage.js';
import type { OfferKind, OfferResponse } from '../../src/domain/referral/closed-sets.js';
import { DEFAULT_TEAM_SETTINGS } from '../../src/domain/settings/team-settings.js';
import type { TeamSettings } from '../../src/domain/settings/team-settings.js';
import type { WorkInput } from '../../src/domain/work-list/work-list.js';
import { workOf } from '../../src/domain/work-list/work-of.js';
import type { ReferralDue } from '../../src/domain/work-list/work-of.js';
import { aCourse } from './facts.js';

/** What rules of the work list look at: a referral as at a day. */
export function workInput(
  facts: Partial<ReferralFacts>,
  asAt: string,
  settings: Partial<TeamSettings> = {},
): WorkInput {
  const course = aCourse(facts, asAt);
  return {
    course,
    stage: stageOfCourse(course),
    settings: { ...DEFAULT_TEAM_SETTINGS, ...settings },
    mayBeDuplicate: false,
  };
}

/** What is due for a referral as at a day, by group. */
export function duesBy(
  facts: Partial<ReferralFacts>,
  asAt: string,
  settings: Partial<TeamSettings> = {},
): Readonly<Record<string, Omit<ReferralDue, 'group'>>> {
  const work = workOf(workInput(facts, asAt, settings));
  if (work.kind === 'quiet') return {};
  return Object.fromEntries(work.dues.map(({ group, ...due }) => [group, due]));
}

/** Why nothing is due; null where something is. */
export function quietReason(facts: Partial<ReferralFacts>, asAt: string): string | null {
  const work = workOf(workInput(facts, asAt));
  return work.kind === 'quiet' ? work.reason : null;
}

/** Accepted at triage on a day. */
export function accepted(decidedOn: string): ReferralFacts['triage'] {
  return { decision: 'accepted', decidedOn: plainDate(decidedOn) };
}

/** One offer. */
export function anOffer(
  kind: OfferKind,
  offeredOn: string,
  response: OfferResponse,
  appointmentOn: string | null = null,
): ReferralFacts['offers'][number] {
  return {
    kind,
    offeredOn: plainDate(offeredOn),
    response,
    appointmentOn: appointmentOn === null ? null : plainDate(appointmentOn),
  };
}
