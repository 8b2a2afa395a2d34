import type { Updateable } from 'kysely';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { EnteredInError } from '../../domain/history/entered-in-error.js';
import type {
  Closure,
  OfferDetails,
  Referral,
  ReferralDetails,
  Triage,
} from '../../domain/referral/referral.js';
import { composedOnce } from '../composed-once.js';
import type { ValueOf } from '../composed-once.js';
import type { Executor } from '../connection.js';
import { inErrorColumns } from '../in-error.js';
import type { ReferralTable } from '../record-tables.js';
import { rowsInto } from '../rows-into.js';
import { offerColumns, referralColumns } from './row-mapper.js';

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
  await setInNextVersion(db, change, referralColumns(change.details));
}

/** Sets the triage decision; null takes it back. */
export async function setTriage(
  db: Executor,
  change: ReferralChange & { readonly triage: Triage | null; readonly mrcGrade: number | null },
): Promise<void> {
  await setInNextVersion(db, change, {
    triage_decision: change.triage?.decision ?? null,
    triaged_on: change.triage?.decidedOn ?? null,
    triage_reason: change.triage?.reason ?? null,
    mrc_grade: change.mrcGrade,
  });
}

/** Closes a referral; null opens it again. */
export async function setClosure(
  db: Executor,
  change: ReferralChange & {
    readonly closure: Closure | null;
    readonly exercisePlanGivenOn: PlainDate | null;
  },
): Promise<void> {
  await setInNextVersion(db, change, {
    closed_on: change.closure?.closedOn ?? null,
    closure_reason: change.closure?.reason ?? null,
    closure_note: change.closure?.note ?? null,
    exercise_plan_given_on: change.exercisePlanGivenOn,
  });
}

/** Adds an offer of an appointment or a place. */
export async function addOffer(
  db: Executor,
  change: ReferralChange & { readonly offer: OfferDetails & { readonly id: string } },
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
  change: ReferralChange & { readonly offer: OfferDetails & { readonly id: string } },
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

/** Marks a referral as entered in error; null restores it. */
export async function markReferralRow(
  db: Executor,
  change: ReferralChange & { readonly mark: EnteredInError | null },
): Promise<void> {
  await setInNextVersion(db, change, inErrorColumns(change.mark));
}

/** Marks an offer as entered in error; null restores it. */
export async function markOfferRow(
  db: Executor,
  change: ReferralChange & { readonly offerId: string; readonly mark: EnteredInError | null },
): Promise<void> {
  await nextReferralVersion(db, change);
  await db
    .updateTable('offer')
    .set(inErrorColumns(change.mark))
    .where('referral_id', '=', change.former.id)
    .where('id', '=', change.offerId)
    .execute();
}

/** Keeps the former state of a referral and gives it the next version, where what changes is in another table. */
async function nextReferralVersion(db: Executor, change: ReferralChange): Promise<void> {
  await setInNextVersion(db, change, {});
}

/** Keeps the former state of a referral and gives it the next version, with what changes in it. */
async function setInNextVersion(
  db: Executor,
  change: ReferralChange,
  columns: Updateable<ReferralTable>,
): Promise<void> {
  const { id, version } = change.former;
  await keepFormerReferral(db, change);
  const changed = { version: version + 1, ...columns };
  await changingOf(Object.keys(changed))(db, { ...changed, id });
}

type Changed = Updateable<ReferralTable> & { readonly id: string };

const byColumns = new Map<string, ReturnType<typeof composedOnce<Changed, unknown>>>();

/** The statement that sets these columns of a referral, composed once: triage and closure set the same ones all day. */
function changingOf(columns: readonly string[]): ReturnType<typeof composedOnce<Changed, unknown>> {
  const key = columns.join();
  const known = byColumns.get(key);
  if (known !== undefined) return known;
  const composed = composedOnce((db, value: ValueOf<Changed>) =>
    db
      .updateTable('referral')
      .set(Object.fromEntries(columns.map((column) => [column, value(column as keyof Changed)])))
      .where('id', '=', value('id')),
  );
  byColumns.set(key, composed);
  return composed;
}

async function keepFormerReferral(db: Executor, change: ReferralChange): Promise<void> {
  await intoReferralVersion(db, [
    {
      referral_id: change.former.id,
      version: change.former.version,
      document: JSON.stringify(change.former),
      superseded_at: change.now,
      superseded_by: change.accountId,
      reason: change.reason,
    },
  ]);
}

const intoReferralVersion = rowsInto('referral_version');

/** Moves a referral to another record of the same person. */
export async function moveReferralRow(
  db: Executor,
  change: ReferralChange & { readonly patientId: string },
): Promise<void> {
  await setInNextVersion(db, change, { patient_id: change.patientId });
}
