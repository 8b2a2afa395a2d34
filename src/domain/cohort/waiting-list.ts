import type { PlainDate } from '../calendar/plain-date.js';
import type { Stage } from '../pathway/stage.js';
import type { Narrowable } from './narrowing.js';

/** A referral that waits for a start on the day of the cut, whenever it was received. */
export interface WaitingReferral extends Narrowable {
  readonly referralId: string;
  readonly receivedOn: PlainDate;
  readonly stage: Extract<Stage, 'awaiting-triage' | 'awaiting-assessment' | 'awaiting-start'>;
}
