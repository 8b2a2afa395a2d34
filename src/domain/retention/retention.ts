import { addMonths } from '../calendar/plain-date.js';
import type { PlainDate } from '../calendar/plain-date.js';

const MONTHS_OF_YEAR = 12;

/** The day until which a record is kept. @example keptUntil(2018-03-05, 8) -> 2026-03-05 */
export function keptUntil(lastContactOn: PlainDate, retentionYears: number): PlainDate {
  return addMonths(lastContactOn, MONTHS_OF_YEAR * retentionYears);
}

/**
 * Records of which the last contact lies before this day are past their retention date.
 *
 * @param retentionYears whole years that the team keeps a record after its last contact
 * @example lastContactsBefore(2026-11-25, 8) -> 2018-11-25: a contact on that very day is kept one day more
 */
export function lastContactsBefore(today: PlainDate, retentionYears: number): PlainDate {
  return addMonths(today, -MONTHS_OF_YEAR * retentionYears);
}

/** A person whose record may be deleted. */
export interface RecordDue {
  readonly patientId: string;
  readonly version: number;
  readonly familyName: string;
  readonly givenName: string;
  readonly bornOn: PlainDate;
  readonly referrals: number;
  /** The latest day on which anything of the record took place. */
  readonly lastContactOn: PlainDate;
}
