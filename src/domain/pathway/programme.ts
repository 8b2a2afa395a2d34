import type { PlainDate } from '../calendar/plain-date.js';
import type { ReferralFacts } from '../cohort/referral-facts.js';
import type { Fraction } from '../exact/fraction.js';
import { fraction } from '../exact/fraction.js';

/** Supervised sessions of one person, as numbers. */
export interface Attendance {
  readonly planned: number;
  readonly cancelledByService: number;
  /** Planned less cancelled by the service: what attendance is measured against. */
  readonly expected: number;
  readonly attended: number;
  readonly didNotAttend: number;
  readonly cancelledByPatient: number;
}

/**
 * The day on which a person started: the first supervised session attended.
 *
 * @returns null for a person who has not started; an assessment or an unsupervised session is no start
 * @example startOf(attended nothing but an unsupervised session) -> null
 */
export function startOf(facts: Pick<ReferralFacts, 'contacts' | 'counted'>): PlainDate | null {
  let start: PlainDate | null = facts.counted?.startedOn ?? null;
  for (const contact of facts.contacts) {
    if (!contact.isSupervised || contact.outcome !== 'attended') continue;
    if (start === null || contact.heldOn < start) start = contact.heldOn;
  }
  return start;
}

/**
 * Counts the supervised sessions of a person by what became of them, those known by their counts included; unsupervised
 * ones are not counted.
 *
 * @example attendanceOf(12 planned, 1 cancelled by the service, 9 attended) -> expected 11, attended 9
 */
export function attendanceOf(
  facts: Pick<ReferralFacts, 'contacts' | 'counted' | 'plannedSessions'>,
): Attendance {
  const { counted } = facts;
  const counts = {
    attended: counted?.attended ?? 0,
    'did-not-attend': counted?.didNotAttend ?? 0,
    'cancelled-by-patient': counted?.cancelledByPatient ?? 0,
    'cancelled-by-service': counted?.cancelledByService ?? 0,
  };
  for (const contact of facts.contacts) {
    if (contact.isSupervised) counts[contact.outcome] += 1;
  }
  return {
    planned: facts.plannedSessions,
    cancelledByService: counts['cancelled-by-service'],
    expected: facts.plannedSessions - counts['cancelled-by-service'],
    attended: counts.attended,
    didNotAttend: counts['did-not-attend'],
    cancelledByPatient: counts['cancelled-by-patient'],
  };
}

/**
 * Share of the expected supervised sessions that a person attended, exact; above 1 where sessions were added.
 *
 * @returns null where no session was left to attend, because the service cancelled as many as were planned
 * @example attendedShare(9 of 12) -> 3/4
 */
export function attendedShare(attendance: Attendance): Fraction | null {
  return attendance.expected > 0 ? fraction(attendance.attended, attendance.expected) : null;
}
