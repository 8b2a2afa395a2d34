import { SAFETY_CHECKLIST } from './registered.js';
import type { SafetyItem, SafetyList } from './safety-list.js';

const STAGES: readonly SafetyList['stage'][] = [
  'before-a-test',
  'during-a-test',
  'conduct-of-tests',
  'exercise-at-home',
];

/** The lists in the order in which they are looked at; a standard before what one programme adds to it. */
export const CHECKLIST_IN_ORDER: readonly SafetyList[] = [...SAFETY_CHECKLIST].sort(
  (a, b) => STAGES.indexOf(a.stage) - STAGES.indexOf(b.stage) || Number(isLocal(a)) - Number(isLocal(b)),
);

/** Every item of the checklist: before a test, during it, how it is done, and what holds at home. */
export const SAFETY_ITEMS: readonly SafetyItem[] = CHECKLIST_IN_ORDER.flatMap((list) => list.items);

const items = new Map(SAFETY_ITEMS.map((item) => [item.id, item]));

/** What stands beside the checklist wherever it is shown. */
export const SAFETY_NOTICE =
  'This is a list to remember by. It prescribes nothing: decisions belong to registered clinicians under local policy.';

/** The item with this id; undefined where there is none. @example findSafetyItem('unstable-angina')?.strength -> 'absolute' */
export function findSafetyItem(id: string): SafetyItem | undefined {
  return items.get(id);
}

function isLocal(list: SafetyList): boolean {
  return list.items.every((item) => item.strength === 'local');
}
