import type { Period } from '../../domain/calendar/period.js';
import type { EntryInError } from '../../domain/history/entered-in-error.js';
import type { Executor } from '../connection.js';
import { storedDate } from '../row-mapping.js';

interface Row {
  readonly id: string;
  readonly dated_on: string;
  readonly marked_at: string | null;
  readonly reason: string | null;
  readonly referral_id: string | null;
  readonly patient_id: string | null;
}

/** The entries of a team, dated in a period, that are marked as entered in error: by what they are, then by day. */
export async function listEntriesInError(
  db: Executor,
  teamId: string,
  period: Period,
): Promise<readonly EntryInError[]> {
  return [
    ...(await referralsInError(db, teamId, period)).map((row) => entry('referrals', row)),
    ...(await offersInError(db, teamId, period)).map((row) => entry('offers', row)),
    ...(await sessionsInError(db, teamId, period)).map((row) => entry('sessions', row)),
    ...(await assessmentsInError(db, teamId, period)).map((row) => entry('assessments', row)),
  ];
}

function entry(kind: EntryInError['kind'], row: Row): EntryInError {
  return {
    kind,
    id: row.id,
    datedOn: storedDate(row.dated_on),
    markedAt: row.marked_at ?? '',
    reason: row.reason ?? '',
    referralId: row.referral_id,
    patientId: row.patient_id,
  };
}

async function referralsInError(db: Executor, teamId: string, of: Period): Promise<readonly Row[]> {
  return db
    .selectFrom('referral')
    .select([
      'id',
      'received_on as dated_on',
      'entered_in_error_at as marked_at',
      'entered_in_error_reason as reason',
      'id as referral_id',
      'patient_id',
    ])
    .where('team_id', '=', teamId)
    .where('received_on', '>=', of.firstDay)
    .where('received_on', '<=', of.lastDay)
    .where('entered_in_error_at', 'is not', null)
    .orderBy('received_on')
    .orderBy('id')
    .execute();
}

async function offersInError(db: Executor, teamId: string, of: Period): Promise<readonly Row[]> {
  return db
    .selectFrom('offer')
    .innerJoin('referral', 'referral.id', 'offer.referral_id')
    .select([
      'offer.id',
      'offer.offered_on as dated_on',
      'offer.entered_in_error_at as marked_at',
      'offer.entered_in_error_reason as reason',
      'offer.referral_id',
      'referral.patient_id',
    ])
    .where('referral.team_id', '=', teamId)
    .where('offer.offered_on', '>=', of.firstDay)
    .where('offer.offered_on', '<=', of.lastDay)
    .where('offer.entered_in_error_at', 'is not', null)
    .orderBy('offer.offered_on')
    .orderBy('offer.id')
    .execute();
}

async function sessionsInError(db: Executor, teamId: string, of: Period): Promise<readonly Row[]> {
  const rows = await db
    .selectFrom('session')
    .select([
      'id',
      'held_on as dated_on',
      'entered_in_error_at as marked_at',
      'entered_in_error_reason as reason',
    ])
    .where('team_id', '=', teamId)
    .where('held_on', '>=', of.firstDay)
    .where('held_on', '<=', of.lastDay)
    .where('entered_in_error_at', 'is not', null)
    .orderBy('held_on')
    .orderBy('id')
    .execute();
  return rows.map((row) => ({ ...row, referral_id: null, patient_id: null }));
}

async function assessmentsInError(db: Executor, teamId: string, of: Period): Promise<readonly Row[]> {
  return db
    .selectFrom('assessment')
    .innerJoin('referral', 'referral.id', 'assessment.referral_id')
    .select([
      'assessment.id',
      'assessment.assessed_on as dated_on',
      'assessment.entered_in_error_at as marked_at',
      'assessment.entered_in_error_reason as reason',
      'assessment.referral_id',
      'referral.patient_id',
    ])
    .where('assessment.team_id', '=', teamId)
    .where('assessment.assessed_on', '>=', of.firstDay)
    .where('assessment.assessed_on', '<=', of.lastDay)
    .where('assessment.entered_in_error_at', 'is not', null)
    .where('assessment.superseded_at', 'is', null)
    .orderBy('assessment.assessed_on')
    .orderBy('assessment.id')
    .execute();
}
