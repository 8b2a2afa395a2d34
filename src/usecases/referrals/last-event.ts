import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Executor } from '../../storage/connection.js';
import { assessmentsOfReferral } from '../../storage/assessments/assessments.js';
import { lastContactOn } from '../../storage/sessions/sessions.js';

/** The day of the last session attended or of the last assessment, follow-ups left aside; null where there is none. */
export async function lastEventOn(trx: Executor, referralId: string): Promise<PlainDate | null> {
  const assessments = await assessmentsOfReferral(trx, referralId);
  const assessedOn = assessments
    .filter((assessment) => assessment.entry.timepoint !== 'follow-up')
    .map((assessment) => assessment.entry.assessedOn);
  const contact = await lastContactOn(trx, referralId);
  const events = contact === null ? assessedOn : [...assessedOn, contact];
  return events.reduce<PlainDate | null>((last, day) => (last === null || day > last ? day : last), null);
}
