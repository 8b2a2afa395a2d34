import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { keptUntil, lastContactsBefore } from '../../domain/retention/retention.js';
import { removeDetailsOf } from '../../storage/audit/removed-details.js';
import { deletePerson, idsOfPerson } from '../../storage/retention/delete-person.js';
import { lastContactOf } from '../../storage/retention/last-contacts.js';
import { currentSettings } from '../../storage/settings/settings.js';
import { recordEvent } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { staleBase } from '../history/based-on.js';
import type { BasedOn } from '../history/based-on.js';

/** What was deleted. */
export interface DeletedRecord {
  readonly patientId: string;
  readonly referrals: number;
  readonly assessments: number;
  /** Entries of the audit trail of which the details were removed. */
  readonly emptiedEntries: number;
}

/**
 * Deletes the record of a person who is past the retention date, for good: everything that is held under it, former
 * versions included, and what the audit trail repeats of it. That it was deleted, by whom and why, stays in the trail.
 *
 * @param change the reason, which must not say who the person was, and the version of the record that was looked at
 * @returns refused while the record must be kept, or a referral is open
 */
export async function deleteRecord(
  context: Context,
  actor: TeamMember,
  patientId: string,
  change: { readonly reason: string; readonly basedOn: BasedOn },
): Promise<Outcome<DeletedRecord>> {
  return context.db.transaction().execute(async (trx) => {
    const found = await lastContactOf(trx, actor.teamId, patientId);
    if (found === null) return refused({ code: 'not-found', what: 'patient' });
    const { version, lastContactOn } = found;
    const stale = await staleBase(trx, actor, { kind: 'patient', id: patientId, version }, change.basedOn);
    if (stale !== null) return refused(stale);
    if (found.openReferrals > 0) return refused({ code: 'still-kept', keptUntil: null });
    const { retentionYears } = (await currentSettings(trx, actor.teamId)).settings;
    if (lastContactOn >= lastContactsBefore(context.clock.today(), retentionYears)) {
      return refused({ code: 'still-kept', keptUntil: keptUntil(lastContactOn, retentionYears) });
    }
    const ids = await idsOfPerson(trx, patientId);
    const removedEntries = await removeDetailsOf(trx, ids);
    const counts = await deletePerson(trx, ids);
    await recordEvent(context, trx, actor, {
      action: 'record-deleted',
      patientId,
      details: { reason: change.reason, lastContactOn, retentionYears, ...counts, removedEntries },
    });
    return done({ patientId, ...counts, emptiedEntries: removedEntries.sequences.length });
  });
}
