import type { Acknowledgement } from '../../domain/safety/standing-cautions.js';
import type { Executor } from '../connection.js';

/** Who acknowledged which caution of an assessment, earliest first. */
export async function acknowledgementsOf(
  db: Executor,
  assessmentId: string,
): Promise<readonly Acknowledgement[]> {
  const rows = await db
    .selectFrom('acknowledgement')
    .innerJoin('account', 'account.id', 'acknowledgement.acknowledged_by')
    .select([
      'acknowledgement.caution_id',
      'acknowledgement.measure_id',
      'acknowledgement.action_taken',
      'acknowledgement.acknowledged_at',
      'account.display_name',
    ])
    .where('acknowledgement.assessment_id', '=', assessmentId)
    .orderBy('acknowledgement.id')
    .execute();
  return rows.map((row) => ({
    cautionId: row.caution_id,
    measureId: row.measure_id,
    actionTaken: row.action_taken,
    acknowledgedAt: row.acknowledged_at,
    acknowledgedBy: row.display_name,
  }));
}

/** Keeps an acknowledgement; it is never changed. */
export async function insertAcknowledgement(
  db: Executor,
  acknowledgement: {
    readonly id: string;
    readonly assessmentId: string;
    readonly cautionId: string;
    readonly measureId: string | null;
    readonly actionTaken: string;
    readonly now: string;
    readonly accountId: string;
  },
): Promise<void> {
  await db
    .insertInto('acknowledgement')
    .values({
      id: acknowledgement.id,
      assessment_id: acknowledgement.assessmentId,
      caution_id: acknowledgement.cautionId,
      measure_id: acknowledgement.measureId,
      action_taken: acknowledgement.actionTaken,
      acknowledged_at: acknowledgement.now,
      acknowledged_by: acknowledgement.accountId,
    })
    .execute();
}
