import type { PatientMerge } from '../../domain/patient/merge.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { accountNames } from '../../storage/accounts/account-names.js';
import { mergesOfPatient } from '../../storage/patients/merges.js';
import { findPatient } from '../../storage/patients/patients.js';
import { recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';

/** A merge as people read it: by name. */
export interface NamedMerge extends PatientMerge {
  readonly mergedByName: string;
  /** Null while it stands. */
  readonly undoneByName: string | null;
}

/** The merges in which a record of the member's team took part, earliest first. */
export async function listMerges(
  context: Context,
  actor: TeamMember,
  patientId: string,
): Promise<Outcome<readonly NamedMerge[]>> {
  const patient = await findPatient(context.db, actor.teamId, patientId);
  if (patient === null) return refused({ code: 'not-found', what: 'patient' });
  await recordRead(context, actor, { action: 'merges-read', patientId });
  const merges = await mergesOfPatient(context.db, actor.teamId, patientId);
  const by = merges.flatMap(({ mergedBy, undone }) => (undone === null ? [mergedBy] : [mergedBy, undone.by]));
  const names = await accountNames(context.db, by);
  const nameOf = (id: string): string => names.get(id) ?? 'somebody of the team';
  return done(
    merges.map((merge) => ({
      ...merge,
      mergedByName: nameOf(merge.mergedBy),
      undoneByName: merge.undone === null ? null : nameOf(merge.undone.by),
    })),
  );
}
