import { TRIAGE_STEP } from '../../domain/referral/words.js';
import type { Executor } from '../connection.js';

/** A person of the team. */
export interface NamedAccount {
  readonly id: string;
  readonly name: string;
}

/**
 * Who last worked with each of some people: who recorded the latest assessment, else who triaged the referral.
 *
 * @returns by referral; one that nobody has seen yet is left out
 */
export async function lastClinicians(
  db: Executor,
  referralIds: readonly string[],
): Promise<ReadonlyMap<string, NamedAccount>> {
  if (referralIds.length === 0) return new Map();
  const triages = await db
    .selectFrom('referral_version')
    .innerJoin('account', 'account.id', 'referral_version.superseded_by')
    .select(['referral_version.referral_id', 'account.id', 'account.display_name'])
    .where('referral_version.referral_id', 'in', referralIds)
    .where('referral_version.reason', '=', TRIAGE_STEP)
    .orderBy('referral_version.version')
    .execute();
  const assessments = await db
    .selectFrom('assessment')
    .innerJoin('account', 'account.id', 'assessment.recorded_by')
    .select(['assessment.referral_id', 'account.id', 'account.display_name'])
    .where('assessment.referral_id', 'in', referralIds)
    .where('assessment.superseded_at', 'is', null)
    .where('assessment.entered_in_error_at', 'is', null)
    .orderBy('assessment.assessed_on')
    .orderBy('assessment.recorded_at')
    .execute();
  // Later rows replace earlier ones.
  return new Map(
    [...triages, ...assessments].map((row) => [row.referral_id, { id: row.id, name: row.display_name }]),
  );
}
