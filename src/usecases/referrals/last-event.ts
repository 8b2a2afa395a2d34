import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Executor } from '../../storage/connection.js';
import { lastAssessedOn } from '../../storage/assessments/assessments.js';
import { lastContactOn } from '../../storage/sessions/sessions.js';

/** The day of the last session attended or of the last assessment, follow-ups left aside; null where there is none. */
export async function lastEventOn(trx: Executor, referralId: string): Promise<PlainDate | null> {
  const assessed = await lastAssessedOn(trx, referralId);
  const contact = await lastContactOn(trx, referralId);
  if (assessed === null || contact === null) return assessed ?? contact;
  return assessed > contact ? assessed : contact;
}
