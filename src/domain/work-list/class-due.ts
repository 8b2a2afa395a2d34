import { britishDate } from '../calendar/british-date.js';
import type { PlainDate } from '../calendar/plain-date.js';
import type { Due } from './work-list.js';

/**
 * What is due for a class or contact with nobody on its register.
 *
 * @param heldOn today or earlier; null is given for a later day
 */
export function classDue(heldOn: PlainDate, today: PlainDate): Due | null {
  if (heldOn > today) return null;
  const reason =
    heldOn === today ? 'Today, not registered yet' : `Of ${britishDate(heldOn)}, never registered`;
  return { dueOn: heldOn, reason };
}
