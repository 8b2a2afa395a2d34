import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { changeImport, findImport, importedParts } from '../../storage/imports/imports.js';
import { takeOut } from '../../storage/imports/undo.js';
import { recordEvent } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import type { BasedOn } from '../history/based-on.js';
import { canBeTakenOut, importedIds } from './imported-ids.js';
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
    if (!(await canBeTakenOut(trx, parts))) return refused({ code: 'import-built-on' });
    const ids = importedIds(parts);
    await takeOut(trx, ids);
    await changeImport(trx, former, { state: 'undone', undoneAt: context.clock.now(), dropsFile: true });
    const counts = {
      patients: ids.patients.length,
      referrals: ids.referrals.length,
      assessments: ids.assessments.length,
      counted: ids.counted.length,
    };
    await recordEvent(context, trx, actor, {
      action: 'import-undone',
      subjectId: id,
      details: { ...counts, reason },
    });
    return done(null);
  });
}
