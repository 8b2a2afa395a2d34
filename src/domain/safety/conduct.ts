import { SAFETY_CHECKLIST } from './registered.js';
import type { SafetyItem } from './safety-list.js';

/** Every item of the checklist: before a test, during it, how it is done, and what holds at home. */
export const SAFETY_ITEMS: readonly SafetyItem[] = SAFETY_CHECKLIST.flatMap((list) => list.items);

const items = new Map(SAFETY_ITEMS.map((item) => [item.id, item]));

/** What stands beside the checklist wherever it is shown. */
export const SAFETY_NOTICE =
  'This is a list to remember by. It prescribes nothing: decisions belong to registered clinicians under local policy.';

/** The item with this id; undefined where there is none. @example findSafetyItem('unstable-angina')?.strength -> 'absolute' */
export function findSafetyItem(id: string): SafetyItem | undefined {
  return items.get(id);
}
