import type { ImportedKind, ImportedPart } from '../../domain/imports/import-record.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { changeImport, findImport, importedParts } from '../../storage/imports/imports.js';
import { isBuiltOn, takeOut } from '../../storage/imports/undo.js';
import { recordEvent } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import type { BasedOn } from '../history/based-on.js';
import { staleImport } from './keep-import.js';

/**
 * Takes out of the record again what an import brought in, as long as nothing was built on it.
 *
 * An import that decided or closed referrals which were in the record before cannot be undone as a whole: those decisions
 * are corrected one by one, with their reasons.
 */
export async function undoImport(
  context: Context,
  actor: TeamMember,
  id: string,
  { basedOn, reason }: { readonly basedOn: BasedOn; readonly reason: string },
): Promise<Outcome<null>> {
  return context.db.transaction().execute(async (trx): Promise<Outcome<null>> => {
    const former = await findImport(trx, actor.teamId, id);
    if (former === null) return refused({ code: 'not-found', what: 'import' });
    const stale = staleImport(former, basedOn);
    if (stale !== null) return stale;
    if (former.state !== 'done') return refused({ code: 'import-over' });
    const parts = await importedParts(trx, id);
    const of = (kind: ImportedKind): readonly string[] =>
      parts.filter((part) => part.kind === kind).map(({ subjectId }) => subjectId);
    const ids = {
      patients: of('patient'),
      referrals: of('referral'),
      assessments: of('assessment'),
      counted: of('sessions'),
    };
    const registered = new Set(ids.referrals);
    if (
      [...of('triage'), ...of('closure')].some((referralId) => !registered.has(referralId)) ||
      (await isBuiltOn(trx, ids, versionsAfter(parts)))
    ) {
      return refused({ code: 'import-built-on' });
    }
    await takeOut(trx, ids);
    await changeImport(trx, former, { state: 'undone', undoneAt: context.clock.now(), dropsFile: true });
    const counts = Object.fromEntries(Object.entries(ids).map(([kind, taken]) => [kind, taken.length]));
    await recordEvent(context, trx, actor, {
      action: 'import-undone',
      subjectId: id,
      details: { ...counts, reason },
    });
    return done(null);
  });
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
