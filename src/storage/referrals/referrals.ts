import type { Referral, ReferralDetails } from '../../domain/referral/referral.js';
import type { EntryFilter } from '../../domain/history/entered-in-error.js';
import { composedOnce } from '../composed-once.js';
import type { ValueOf } from '../composed-once.js';
import type { Executor } from '../connection.js';
import type { Position } from '../page.js';
import { rowsInto } from '../rows-into.js';
import { referralColumns, referralFromRow } from './row-mapper.js';

/** The team's referral by id with its offers; null when absent or of another team. */
export async function findReferral(db: Executor, teamId: string, id: string): Promise<Referral | null> {
  const [row] = await referralById(db, { teamId, id });
  return row === undefined ? null : referralFromRow(row, await offersOf(db, { id }));
}

const referralById = composedOnce((db, value: ValueOf<{ teamId: string; id: string }>) =>
  db.selectFrom('referral').selectAll().where('team_id', '=', value('teamId')).where('id', '=', value('id')),
);

const offersOf = composedOnce((db, value: ValueOf<{ id: string }>) =>
  db.selectFrom('offer').selectAll().where('referral_id', '=', value('id')).orderBy('id'),
);

/** Those of some referrals that the team has, with their offers, by id. */
export async function findReferrals(
  db: Executor,
  teamId: string,
  ids: readonly string[],
): Promise<ReadonlyMap<string, Referral>> {
  if (ids.length === 0) return new Map();
  const rows = await db
    .selectFrom('referral')
    .selectAll()
    .where('team_id', '=', teamId)
    .where('id', 'in', ids)
    .execute();
  const offers = await db
    .selectFrom('offer')
    .selectAll()
    .where('referral_id', 'in', ids)
    .orderBy('id')
    .execute();
  return new Map(
    rows.map((row) => [
      row.id,
      referralFromRow(
        row,
        offers.filter((offer) => offer.referral_id === row.id),
      ),
    ]),
  );
}

/** Ids of a patient's referrals, those in error too, earliest made first. */
export async function referralIdsOfPatient(db: Executor, patientId: string): Promise<readonly string[]> {
  const rows = await db
    .selectFrom('referral')
    .select('id')
    .where('patient_id', '=', patientId)
    .orderBy('id')
    .execute();
  return rows.map((row) => row.id);
}

/** Id of a patient's open referral; null when there is none. */
export async function findOpenReferralId(db: Executor, patientId: string): Promise<string | null> {
  const [row] = await openReferralIds(db, { patientId });
  return row?.id ?? null;
}

const openReferralIds = composedOnce((db, value: ValueOf<{ patientId: string }>) =>
  db
    .selectFrom('referral')
    .select('id')
    .where('patient_id', '=', value('patientId'))
    .where('closed_on', 'is', null)
    .where('entered_in_error_at', 'is', null),
);

/** Stores a new referral. */
export async function insertReferral(
  db: Executor,
  referral: {
    readonly id: string;
    readonly teamId: string;
    readonly patientId: string;
    readonly details: ReferralDetails;
    readonly now: string;
    readonly accountId: string;
  },
): Promise<void> {
  await intoReferral(db, [
    {
      id: referral.id,
      team_id: referral.teamId,
      patient_id: referral.patientId,
      version: 1,
      triage_decision: null,
      triaged_on: null,
      triage_reason: null,
      closed_on: null,
      closure_reason: null,
      closure_note: null,
      created_at: referral.now,
      created_by: referral.accountId,
      ...referralColumns(referral.details),
    },
  ]);
}

const intoReferral = rowsInto('referral');

/** Which referrals a list is to show. */
export interface ReferralFilter {
  readonly siteId: string | null;
  readonly patientId: string | null;
  /** Open referrals, closed ones, or (null) both. */
  readonly isClosed: boolean | null;
  readonly entries: EntryFilter;
}

/** Ids of the team's referrals, latest receipt first, each with whether it was entered in error. */
export async function listReferralPositions(
  db: Executor,
  teamId: string,
  filter: ReferralFilter,
  page: { readonly after: Position | null; readonly count: number },
): Promise<readonly (Position & { readonly isInError: boolean })[]> {
  let query = db
    .selectFrom('referral')
    .select(['id', 'received_on as key', 'entered_in_error_at'])
    .where('team_id', '=', teamId);
  if (filter.entries !== 'all') {
    query = query.where('entered_in_error_at', filter.entries === 'standing' ? 'is' : 'is not', null);
  }
  if (filter.siteId !== null) query = query.where('site_id', '=', filter.siteId);
  if (filter.patientId !== null) query = query.where('patient_id', '=', filter.patientId);
  if (filter.isClosed !== null) query = query.where('closed_on', filter.isClosed ? 'is not' : 'is', null);
  const { after } = page;
  if (after !== null) {
    query = query.where((eb) =>
      eb.or([
        eb('received_on', '<', after.key),
        eb.and([eb('received_on', '=', after.key), eb('id', '<', after.id)]),
      ]),
    );
  }
  const rows = await query.orderBy('received_on', 'desc').orderBy('id', 'desc').limit(page.count).execute();
  return rows.map(({ id, key, entered_in_error_at: markedAt }) => ({
    id,
    key,
    isInError: markedAt !== null,
  }));
}
