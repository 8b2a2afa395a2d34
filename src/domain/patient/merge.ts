import type { Patient, NhsNumberMissingReason, PatientDetails } from './patient.js';

/** Two records of one person, made one: what was moved, and whether it was given back. */
export interface PatientMerge {
  readonly id: string;
  /** The record in which the person is kept. */
  readonly survivorId: string;
  readonly duplicateId: string;
  /** The survivor had no NHS number and took that of the duplicate. */
  readonly isNhsNumberMoved: boolean;
  /** Why the survivor had none before. */
  readonly survivorMissingReason: NhsNumberMissingReason | null;
  /** Referrals that were the duplicate's. */
  readonly referralIds: readonly string[];
  readonly reason: string;
  /** UTC. */
  readonly mergedAt: string;
  /** Id of the account. */
  readonly mergedBy: string;
  /** Null while it stands. */
  readonly undone: { readonly at: string; readonly by: string; readonly reason: string } | null;
}

/** Both records of a person as they are to stand. */
export interface TwoRecords {
  readonly survivor: PatientDetails;
  readonly duplicate: PatientDetails;
}

/**
 * Both records after a merge: a survivor without an NHS number takes that of the duplicate. Where both have one each keeps
 * its own, so that the person is found by either.
 */
export function merged(survivor: Patient, duplicate: Patient): TwoRecords {
  const { nhsNumber } = duplicate;
  if (survivor.nhsNumber !== null || nhsNumber === null) return { survivor, duplicate };
  return {
    survivor: { ...survivor, nhsNumber, nhsNumberMissingReason: null },
    duplicate: { ...duplicate, nhsNumber: null, nhsNumberMissingReason: 'not-yet-traced' },
  };
}

/**
 * Both records after a merge was undone: the duplicate as it was before, and the survivor without the number that it took,
 * unless somebody has given it another one since.
 *
 * @param before the duplicate as it was before the merge
 */
export function parted(
  merge: Pick<PatientMerge, 'isNhsNumberMoved' | 'survivorMissingReason'>,
  survivor: Patient,
  before: Patient,
): TwoRecords {
  const hasTakenNumber = merge.isNhsNumberMoved && survivor.nhsNumber === before.nhsNumber;
  const given = { nhsNumber: null, nhsNumberMissingReason: merge.survivorMissingReason };
  return { survivor: hasTakenNumber ? { ...survivor, ...given } : survivor, duplicate: before };
}
