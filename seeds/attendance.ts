import type { AttendanceOutcome } from '../src/domain/referral/closed-sets.js';
import type { PlannedContact, PlannedSession } from './plan.js';
import { chance, wholeBetween } from './random.js';
import type { Random } from './random.js';

/** A session that a person is expected at. */
export interface ExpectedSession {
  readonly session: PlannedSession;
  readonly isCancelled: boolean;
}

const FINISHER_ATTENDS = 0.88;
const STOPPER_ATTENDS = 0.8;
const SPORADIC_ATTENDS = 0.55;
const SPORADIC_SHARE = 0.22;
const FIRST_MISSED_SHARE = 0.06;
const CANCELS_SHARE = 0.55;

/**
 * What becomes of each session of somebody who finishes: at least three quarters of those held are attended.
 *
 * @param expected the sessions of the programme in order of date; unsupervised ones do not count towards the share
 */
export function planFinisher(
  random: Random,
  expected: readonly ExpectedSession[],
): readonly PlannedContact[] {
  const contacts = attend(random, expected, FINISHER_ATTENDS);
  const enough = (): boolean => 4 * countOf(contacts, 'attended') >= 3 * countHeld(contacts);
  for (let index = 0; index < contacts.length && !enough(); index += 1) {
    const contact = contacts[index];
    if (contact !== undefined && isMissed(contact)) contacts[index] = { ...contact, outcome: 'attended' };
  }
  return contacts;
}

/** What becomes of the sessions of somebody who starts and stops, or comes now and then to less than three quarters. */
export function planStopper(
  random: Random,
  expected: readonly ExpectedSession[],
): { readonly contacts: readonly PlannedContact[]; readonly isSporadic: boolean } {
  const isSporadic = chance(random, SPORADIC_SHARE);
  const all = attend(random, expected, isSporadic ? SPORADIC_ATTENDS : STOPPER_ATTENDS);
  const contacts = isSporadic ? all : leaveEarly(random, all);
  const planned = expected.filter(({ session }) => session.isSupervised).length;
  const isTooMuch = (): boolean =>
    4 * countOf(contacts, 'attended') >= 3 * (planned - countOf(contacts, 'cancelled-by-service'));
  for (let index = contacts.length - 1; index > 0 && isTooMuch(); index -= 1) {
    const contact = contacts[index];
    if (contact?.outcome === 'attended') contacts[index] = { ...contact, outcome: missedAs(random) };
  }
  return { contacts, isSporadic };
}

/** Some sessions after the start, then up to three missed ones, until the person is taken off the register. */
function leaveEarly(random: Random, all: readonly PlannedContact[]): PlannedContact[] {
  const started = all.findIndex((contact) => contact.outcome === 'attended');
  const last = Math.max(started + 1, wholeBetween(random, 2, Math.floor(all.length * 0.6)));
  const missed = all
    .slice(last, last + wholeBetween(random, 0, 3))
    .map((contact) => (contact.outcome === 'attended' ? { ...contact, outcome: missedAs(random) } : contact));
  return [...all.slice(0, last), ...missed];
}

/** Attendance at random, but for the first session: everybody here starts, a few after missing the first date. */
function attend(random: Random, expected: readonly ExpectedSession[], share: number): PlannedContact[] {
  let hasStarted = false;
  let mayMiss = chance(random, FIRST_MISSED_SHARE);
  return expected.map(({ session, isCancelled }): PlannedContact => {
    if (isCancelled) return { session, outcome: 'cancelled-by-service' };
    if (!hasStarted && session.isSupervised) {
      if (!mayMiss) hasStarted = true;
      mayMiss = false;
      return { session, outcome: hasStarted ? 'attended' : missedAs(random) };
    }
    return { session, outcome: chance(random, share) ? 'attended' : missedAs(random) };
  });
}

function missedAs(random: Random): AttendanceOutcome {
  return chance(random, CANCELS_SHARE) ? 'cancelled-by-patient' : 'did-not-attend';
}

function isMissed({ outcome }: PlannedContact): boolean {
  return outcome === 'did-not-attend' || outcome === 'cancelled-by-patient';
}

function countOf(contacts: readonly PlannedContact[], outcome: AttendanceOutcome): number {
  return contacts.filter((contact) => contact.session.isSupervised && contact.outcome === outcome).length;
}

function countHeld(contacts: readonly PlannedContact[]): number {
  return (
    contacts.filter((contact) => contact.session.isSupervised).length -
    countOf(contacts, 'cancelled-by-service')
  );
}
