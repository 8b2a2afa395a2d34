import type { Role } from '../account/role.js';
import { IDENTIFYING_FIELDS } from '../patient/patient.js';
import type { FieldChange } from './field-change.js';

/** Scores that a history names to nobody who may not see them. */
const SCORES = ['mrcGrade'];

/** Texts that people wrote freely: they can say who somebody is. */
const FREE_TEXTS = ['otherConditions', 'triage.reason', 'closure.note', 'notes', 'safetyNote'];

/** A change as it is told where nobody may be recognised: its values are left out where they could say who it is. */
export type GuardedChange = FieldChange | { readonly field: string };

/** The changes that a role may see: no score reaches an administrator, not even by its name. */
export function changesFor(role: Role, changes: readonly FieldChange[]): readonly FieldChange[] {
  if (role !== 'admin') return changes;
  return changes.filter(({ field }) => !SCORES.includes(field));
}

/**
 * Changes for a problem document: what identifies a person is named as changed and not shown.
 *
 * @example guarded([{ field: 'familyName', former: ..., present: ... }]) -> [{ field: 'familyName' }]
 */
export function guarded(changes: readonly FieldChange[]): readonly GuardedChange[] {
  return changes.map((change) => (isRevealing(change.field) ? { field: change.field } : change));
}

function isRevealing(field: string): boolean {
  return [...IDENTIFYING_FIELDS, ...FREE_TEXTS].some((name) => name === field);
}
