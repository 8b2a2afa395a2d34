import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Closure, Offer, Referral, ReferralDetails, Triage } from '../../domain/referral/referral.js';
import type { Executor } from '../connection.js';
import type { Position } from '../page.js';
import { offerColumns, referralColumns, referralFromRow } from './row-mapper.js';

/** The team's referral by id with its offers; null when absent or of another team. */
export async function findReferral(db: Executor, teamId: string, id: string): Promise<Referral | null> {
  const row = await db
    .selectFrom('referral')
    .selectAll()
    .where('team_id', '=', teamId)
    .where('id', '=', id)
    .executeTakeFirst();
  if (row === undefined) return null;
  const offers = await db
    .selectFrom('offer')
    .selectAll()
    .where('referral_id', '=', id)
    .orderBy('id')
    .execute();
  return referralFromRow(row, offers);
}

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

/** Id of a patient's open referral; null when there is none. */
export async function findOpenReferralId(db: Executor, patientId: string): Promise<string | null> {
  const row = await db
    .selectFrom('referral')
    .select('id')
    .where('patient_id', '=', patientId)
    .where('closed_on', 'is', null)
    .executeTakeFirst();
  return row?.id ?? null;
}

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
  await db
    .insertInto('referral')
    .values({
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
    })
    .execute();
}

/** What changed in a referral, by whom and why. */
export interface ReferralChange {
  readonly former: Referral;
  readonly reason: string;
  readonly now: string;
  readonly accountId: string;
}

/** Corrects the details of a referral; the former state is kept whole, with the reason. */
export async function correctReferralRow(
  db: Executor,
  change: ReferralChange & { readonly details: ReferralDetails },
): Promise<void> {
  await keepFormerReferral(db, change);
  await db
    .updateTable('referral')
    .set({ version: change.former.version + 1, ...referralColumns(change.details) })
    .where('id', '=', change.former.id)
    .execute();
}

/** Sets the triage decision; null takes it back. */
export async function setTriage(
  db: Executor,
  change: ReferralChange & { readonly triage: Triage | null; readonly mrcGrade: number | null },
): Promise<void> {
  await keepFormerReferral(db, change);
  await db
    .updateTable('referral')
    .set({
      version: change.former.version + 1,
      triage_decision: change.triage?.decision ?? null,
      triaged_on: change.triage?.decidedOn ?? null,
      triage_reason: change.triage?.reason ?? null,
      mrc_grade: change.mrcGrade,
    })
    .where('id', '=', change.former.id)
    .execute();
}

/** Closes a referral; null opens it again. */
export async function setClosure(
  db: Executor,
  change: ReferralChange & {
    readonly closure: Closure | null;
    readonly exercisePlanGivenOn: PlainDate | null;
  },
): Promise<void> {
  await keepFormerReferral(db, change);
  await db
    .updateTable('referral')
    .set({
      version: change.former.version + 1,
      closed_on: change.closure?.closedOn ?? null,
      closure_reason: change.closure?.reason ?? null,
      closure_note: change.closure?.note ?? null,
      exercise_plan_given_on: change.exercisePlanGivenOn,
    })
    .where('id', '=', change.former.id)
    .execute();
}

/** Adds an offer of an appointment or a place. */
export async function addOffer(
  db: Executor,
  change: ReferralChange & { readonly offer: Offer },
): Promise<void> {
  const { former, offer } = change;
  await nextReferralVersion(db, change);
  await db
    .insertInto('offer')
    .values({ id: offer.id, referral_id: former.id, created_at: change.now, ...offerColumns(offer) })
    .execute();
}

/** Corrects an offer; the former one is kept in the former state of its referral. */
export async function correctOfferRow(
  db: Executor,
  change: ReferralChange & { readonly offer: Offer },
): Promise<void> {
  const { former, offer } = change;
  await nextReferralVersion(db, change);
  await db
    .updateTable('offer')
    .set(offerColumns(offer))
    .where('referral_id', '=', former.id)
    .where('id', '=', offer.id)
    .execute();
}

/** Keeps the former state of a referral and gives it the next version, where what changes is in another table. */
async function nextReferralVersion(db: Executor, change: ReferralChange): Promise<void> {
  await keepFormerReferral(db, change);
  const { id, version } = change.former;
  await db
    .updateTable('referral')
    .set({ version: version + 1 })
    .where('id', '=', id)
    .execute();
}

/** Which referrals a list is to show. */
export interface ReferralFilter {
  readonly siteId: string | null;
  readonly patientId: string | null;
  /** Open referrals, closed ones, or (null) both. */
  readonly isClosed: boolean | null;
}

/** Ids of the team's referrals, latest receipt first. */
export async function listReferralPositions(
  db: Executor,
  teamId: string,
  filter: ReferralFilter,
  page: { readonly after: Position | null; readonly count: number },
): Promise<readonly Position[]> {
  let query = db.selectFrom('referral').select(['id', 'received_on as key']).where('team_id', '=', teamId);
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
  return query.orderBy('received_on', 'desc').orderBy('id', 'desc').limit(page.count).execute();
}

async function keepFormerReferral(db: Executor, change: ReferralChange): Promise<void> {
  await db
    .insertInto('referral_version')
    .values({
      referral_id: change.former.id,
      version: change.former.version,
      document: JSON.stringify(change.former),
      superseded_at: change.now,
      superseded_by: change.accountId,
      reason: change.reason,
    })
    .execute();
}
