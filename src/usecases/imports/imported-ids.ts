import type { ImportedKind, ImportedPart } from '../../domain/imports/import-record.js';
import type { Executor } from '../../storage/connection.js';
import { isBuiltOn } from '../../storage/imports/undo.js';
import type { ImportedIds } from '../../storage/imports/undo.js';

/** Ids of what was brought in, by kind. */
export function importedIds(parts: readonly ImportedPart[]): ImportedIds {
  return {
    patients: idsOf(parts, 'patient'),
    referrals: idsOf(parts, 'referral'),
    assessments: idsOf(parts, 'assessment'),
    counted: idsOf(parts, 'sessions'),
  };
}

/** Whether what was brought in can be taken out again: nothing was built on it, and it decided or closed nothing else. */
export async function canBeTakenOut(trx: Executor, parts: readonly ImportedPart[]): Promise<boolean> {
  const ids = importedIds(parts);
  const registered = new Set(ids.referrals);
  const others = [...idsOf(parts, 'triage'), ...idsOf(parts, 'closure')].some((id) => !registered.has(id));
  return !others && !(await isBuiltOn(trx, ids, versionsAfter(parts)));
}

function idsOf(parts: readonly ImportedPart[], kind: ImportedKind): readonly string[] {
  return parts.filter((part) => part.kind === kind).map(({ subjectId }) => subjectId);
}

/** A referral is registered at version 1; its triage and its closure each bring it to the next. */
function versionsAfter(parts: readonly ImportedPart[]): ReadonlyMap<string, number> {
  const versions = new Map<string, number>();
  for (const { kind, subjectId } of parts) {
    if (kind === 'referral' || kind === 'triage' || kind === 'closure')
      versions.set(subjectId, (versions.get(subjectId) ?? 0) + 1);
  }
  return versions;
}
