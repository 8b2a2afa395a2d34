import { bornBeforeReceipt } from '../../domain/patient/patient.js';
import type { Patient } from '../../domain/patient/patient.js';
import { merged, parted } from '../../domain/patient/merge.js';
import type { PatientMerge, TwoRecords } from '../../domain/patient/merge.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome, Refusal } from '../../domain/refusal/refusal.js';
import type { Executor } from '../../storage/connection.js';
import { formerPatient, insertMerge, mergesOfPatient, undoMergeRow } from '../../storage/patients/merges.js';
import { correctPatientRow, findPatient, findPatientIdByNhsNumber } from '../../storage/patients/patients.js';
import { moveReferralRow } from '../../storage/referrals/referral-changes.js';
import { firstReceiptOn } from '../../storage/referrals/referral-dates.js';
import {
  findOpenReferralId,
  findReferrals,
  referralIdsOfPatient,
} from '../../storage/referrals/referrals.js';
import { recordEvent } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { staleBase } from '../history/based-on.js';
import type { BasedOn } from '../history/based-on.js';

/** A merge, with the record in which the person is kept as it now stands. */
export interface MergedPatient {
  readonly merge: PatientMerge;
  readonly survivor: Patient;
}

/** Why two records are merged, and the versions of both that this is based on. */
export interface MergeRequest {
  readonly duplicateId: string;
  readonly reason: string;
  readonly basedOn: BasedOn;
  readonly duplicateBasedOn: BasedOn;
}

/**
 * Merges two records of one person: the referrals of the duplicate become those of the survivor, and the duplicate stays
 * readable and says where the person went.
 *
 * @returns refused where both have an open referral, or one of them was merged before
 */
export async function mergePatients(
  context: Context,
  actor: TeamMember,
  survivorId: string,
  request: MergeRequest,
): Promise<Outcome<MergedPatient>> {
  const { duplicateId, reason } = request;
  return context.db.transaction().execute(async (trx) => {
    const survivor = await findPatient(trx, actor.teamId, survivorId);
    if (survivor === null) return refused({ code: 'not-found', what: 'patient' });
    const duplicate = await findPatient(trx, actor.teamId, duplicateId);
    if (duplicate === null) return refused(atDuplicate('not-found', 'There is no such patient.'));
    const refusal = await mayMerge(trx, actor, { survivor, duplicate }, request);
    if (refusal !== null) return refused(refusal);
    const after = merged(survivor, duplicate);
    const merge: PatientMerge = {
      id: context.newId(),
      survivorId,
      duplicateId,
      isNhsNumberMoved: after.survivor.nhsNumber !== survivor.nhsNumber,
      survivorMissingReason: survivor.nhsNumberMissingReason,
      referralIds: await referralIdsOfPatient(trx, duplicateId),
      reason,
      mergedAt: context.clock.now(),
      mergedBy: actor.accountId,
      undone: null,
    };
    await writeBoth(context, actor, trx, { survivor, duplicate, after, mergedInto: survivorId, reason });
    await moveReferrals(context, actor, trx, { ids: merge.referralIds, patientId: survivorId, reason });
    await insertMerge(trx, { ...merge, teamId: actor.teamId });
    await tell(context, actor, trx, 'patients-merged', merge, reason);
    return shown(trx, actor, merge);
  });
}

/**
 * Undoes a merge: the referrals that were moved go back, and both records stand as before it. What was done with the
 * survivor since stays with it.
 */
export async function undoMerge(
  context: Context,
  actor: TeamMember,
  survivorId: string,
  request: Omit<MergeRequest, 'duplicateId'> & { readonly mergeId: string },
): Promise<Outcome<MergedPatient>> {
  const { mergeId, reason } = request;
  return context.db.transaction().execute(async (trx) => {
    const merges = await mergesOfPatient(trx, actor.teamId, survivorId);
    const merge = merges.find((each) => each.id === mergeId && each.survivorId === survivorId);
    const survivor = await findPatient(trx, actor.teamId, survivorId);
    if (merge === undefined || survivor === null) return refused({ code: 'not-found', what: 'merge' });
    const duplicate = await findPatient(trx, actor.teamId, merge.duplicateId);
    if (duplicate === null) return refused({ code: 'not-found', what: 'merge' });
    const stale = await staleBoth(trx, actor, { survivor, duplicate }, request);
    if (stale !== null) return refused(stale);
    if (merge.undone !== null) return refused({ code: 'merge-undone' });
    if (survivor.mergedInto !== null) {
      return refused({ code: 'patient-merged', existingId: survivor.mergedInto });
    }
    // Nothing changes a duplicate while it is merged: its version before is the one just before this.
    const before = await formerPatient(trx, duplicate.id, duplicate.version - 1);
    if (before === null) return refused({ code: 'not-found', what: 'merge' });
    const after = parted(merge, survivor, before);
    const taken = await numberTakenBy(trx, actor, { survivor, duplicate }, after);
    if (taken !== null) return refused({ code: 'patient-already-registered', existingId: taken });
    await writeBoth(context, actor, trx, { survivor, duplicate, after, mergedInto: null, reason });
    await moveReferrals(context, actor, trx, { ids: merge.referralIds, patientId: duplicate.id, reason });
    const undone = { at: context.clock.now(), by: actor.accountId, reason };
    await undoMergeRow(trx, mergeId, undone);
    await tell(context, actor, trx, 'merge-undone', merge, reason);
    return shown(trx, actor, { ...merge, undone });
  });
}

interface Both {
  readonly survivor: Patient;
  readonly duplicate: Patient;
}

async function mayMerge(
  trx: Executor,
  actor: TeamMember,
  both: Both,
  request: MergeRequest,
): Promise<Refusal | null> {
  const { survivor, duplicate } = both;
  if (survivor.id === duplicate.id) {
    return atDuplicate('same-record', 'Name another record than the one that is kept.');
  }
  const stale = await staleBoth(trx, actor, both, request);
  if (stale !== null) return stale;
  for (const { mergedInto } of [survivor, duplicate]) {
    if (mergedInto !== null) return { code: 'patient-merged', existingId: mergedInto };
  }
  const existingId = await findOpenReferralId(trx, survivor.id);
  const otherId = await findOpenReferralId(trx, duplicate.id);
  if (existingId !== null && otherId !== null) return { code: 'both-referrals-open', existingId: otherId };
  const faults = bornBeforeReceipt(survivor.bornOn, await firstReceiptOn(trx, duplicate.id));
  if (faults.length === 0) return null;
  return atDuplicate('before-birth', 'It has a referral from before the person of the kept record was born.');
}

async function staleBoth(
  trx: Executor,
  actor: TeamMember,
  { survivor, duplicate }: Both,
  request: Pick<MergeRequest, 'basedOn' | 'duplicateBasedOn'>,
): Promise<Refusal | null> {
  const stale = await staleBase(trx, actor, { kind: 'patient', ...survivor }, request.basedOn);
  return stale ?? staleBase(trx, actor, { kind: 'patient', ...duplicate }, request.duplicateBasedOn);
}

/** The record that has meanwhile been given the number which the duplicate is to have again; null where none has. */
async function numberTakenBy(
  trx: Executor,
  actor: TeamMember,
  { survivor, duplicate }: Both,
  after: TwoRecords,
): Promise<string | null> {
  const { nhsNumber } = after.duplicate;
  if (nhsNumber === null || nhsNumber === duplicate.nhsNumber || nhsNumber === survivor.nhsNumber)
    return null;
  return findPatientIdByNhsNumber(trx, actor.teamId, nhsNumber);
}

/** Writes both records; whoever gives a number away is written first, since no two have the same. */
async function writeBoth(
  context: Context,
  actor: TeamMember,
  trx: Executor,
  change: Both & { readonly after: TwoRecords; readonly mergedInto: string | null; readonly reason: string },
): Promise<void> {
  const { survivor, duplicate, after, mergedInto, reason } = change;
  const by = { reason, now: context.clock.now(), accountId: actor.accountId };
  const survivorRow = { ...by, former: survivor, details: { ...after.survivor, mergedInto: null } };
  const duplicateRow = { ...by, former: duplicate, details: { ...after.duplicate, mergedInto } };
  const rows = mergedInto === null ? [survivorRow, duplicateRow] : [duplicateRow, survivorRow];
  for (const row of rows) await correctPatientRow(trx, row);
}

async function moveReferrals(
  context: Context,
  actor: TeamMember,
  trx: Executor,
  move: { readonly ids: readonly string[]; readonly patientId: string; readonly reason: string },
): Promise<void> {
  const referrals = await findReferrals(trx, actor.teamId, move.ids);
  const by = { reason: move.reason, now: context.clock.now(), accountId: actor.accountId };
  for (const former of referrals.values()) {
    await moveReferralRow(trx, { ...by, former, patientId: move.patientId });
  }
}

async function tell(
  context: Context,
  actor: TeamMember,
  trx: Executor,
  action: 'patients-merged' | 'merge-undone',
  { id, survivorId, duplicateId, referralIds, isNhsNumberMoved }: PatientMerge,
  reason: string,
): Promise<void> {
  const details = { mergeId: id, duplicateId, referralIds, isNhsNumberMoved, reason };
  await recordEvent(context, trx, actor, { action, patientId: survivorId, subjectId: id, details });
}

async function shown(trx: Executor, actor: TeamMember, merge: PatientMerge): Promise<Outcome<MergedPatient>> {
  const survivor = await findPatient(trx, actor.teamId, merge.survivorId);
  return survivor === null ? refused({ code: 'not-found', what: 'patient' }) : done({ merge, survivor });
}

function atDuplicate(code: string, message: string): Refusal {
  return { code: 'rules-broken', faults: [{ pointer: '/duplicateId', code, message }] };
}
