import type { Patient } from '../../domain/patient/patient.js';
import { checkOffer } from '../../domain/referral/check-offer.js';
import { checkEvent, checkReferral } from '../../domain/referral/referral.js';
import type { Closure, Offer, Referral, ReferralDetails, Triage } from '../../domain/referral/referral.js';
import { TRIAGE_STEP } from '../../domain/referral/words.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Fault, Outcome, Refusal } from '../../domain/refusal/refusal.js';
import type { Executor } from '../../storage/connection.js';
import { findPatient } from '../../storage/patients/patients.js';
import {
  addOffer,
  correctReferralRow,
  findReferral,
  setClosure,
  setTriage,
} from '../../storage/referrals/referrals.js';
import type { ReferralChange } from '../../storage/referrals/referrals.js';
import { assessmentsOfReferral } from '../../storage/assessments/assessments.js';
import { firstSessionOn, lastContactOn } from '../../storage/sessions/sessions.js';
import type { AuditAction } from '../../domain/audit/audit-event.js';
import { changedValues } from '../../domain/audit/changed-values.js';
import { recordEvent } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { staleBase } from '../history/based-on.js';
import type { BasedOn } from '../history/based-on.js';
import { checkPlaces } from './check-places.js';

/** Corrects the details of a referral; the former state stays readable. */
export async function correctReferral(
  context: Context,
  actor: TeamMember,
  id: string,
  correction: {
    readonly changes: Partial<ReferralDetails>;
    readonly reason: string;
    readonly basedOn: BasedOn;
  },
): Promise<Outcome<Referral>> {
  const { reason, basedOn } = correction;
  const told = { action: 'referral-corrected', reason, basedOn } as const;
  return change(context, actor, id, told, async (trx, former, patient) => {
    const details: ReferralDetails = { ...former, ...correction.changes };
    const faults = [
      ...checkReferral(details, { today: context.clock.today(), bornOn: patient.bornOn }),
      ...(await checkPlaces(trx, actor.teamId, details)),
      ...(await checkFirstEvent(trx, former, details)),
    ];
    if (faults.length > 0) return { code: 'rules-broken', faults };
    await correctReferralRow(trx, { ...changeOf(context, actor, former, reason), details });
    return null;
  });
}

/** Records whether a referral is accepted, by whom it was decided is in the history. A decision is made once. */
export async function triageReferral(
  context: Context,
  actor: TeamMember,
  id: string,
  triage: Triage & { readonly mrcGrade: number | null },
): Promise<Outcome<Referral>> {
  return change(context, actor, id, { action: 'referral-triaged' }, async (trx, former) => {
    if (former.closure !== null) return { code: 'already-closed' };
    if (former.triage !== null) return { code: 'already-triaged' };
    const faults = [...checkEvent('/decidedOn', 'The decision', triage.decidedOn, former, dates(context))];
    if (triage.decision !== 'accepted' && triage.reason === null) {
      const message = 'Say why the referral is not accepted.';
      faults.push({ pointer: '/reason', code: 'reason-missing', message });
    }
    if (faults.length > 0) return { code: 'rules-broken', faults };
    await setTriage(trx, {
      ...changeOf(context, actor, former, TRIAGE_STEP),
      triage,
      mrcGrade: triage.mrcGrade ?? former.mrcGrade,
    });
    return null;
  });
}

/** Records an offer of an assessment or of a place, with what became of it. */
export async function recordOffer(
  context: Context,
  actor: TeamMember,
  id: string,
  offer: Omit<Offer, 'id'>,
): Promise<Outcome<Referral>> {
  return change(context, actor, id, { action: 'offer-recorded' }, async (trx, former) => {
    if (former.closure !== null) return { code: 'already-closed' };
    const faults = checkOffer(offer, former, dates(context));
    if (faults.length > 0) return { code: 'rules-broken', faults };
    await addOffer(trx, {
      ...changeOf(context, actor, former, 'Offer'),
      offer: { ...offer, id: context.newId() },
    });
    return null;
  });
}

/** Closes a referral with its reason; it is closed once. */
export async function closeReferral(
  context: Context,
  actor: TeamMember,
  id: string,
  closure: Closure & { readonly exercisePlanGivenOn: ReferralDetails['exercisePlanGivenOn'] },
): Promise<Outcome<Referral>> {
  return change(context, actor, id, { action: 'referral-closed' }, async (trx, former) => {
    if (former.closure !== null) return { code: 'already-closed' };
    const faults = [...checkEvent('/closedOn', 'The closure', closure.closedOn, former, dates(context))];
    const lastEventOn = await lastEventDate(trx, former);
    if (lastEventOn !== null && closure.closedOn < lastEventOn) {
      const message = 'The closure cannot be before the last session attended or the last assessment.';
      faults.push({ pointer: '/closedOn', code: 'out-of-order', message });
    }
    if (closure.exercisePlanGivenOn !== null) {
      faults.push(
        ...checkEvent(
          '/exercisePlanGivenOn',
          'The plan',
          closure.exercisePlanGivenOn,
          former,
          dates(context),
        ),
      );
    }
    if (faults.length > 0) return { code: 'rules-broken', faults };
    await setClosure(trx, {
      ...changeOf(context, actor, former, 'Closure'),
      closure,
      exercisePlanGivenOn: closure.exercisePlanGivenOn ?? former.exercisePlanGivenOn,
    });
    return null;
  });
}

/** Free text of a referral: it stands in the record and is not told twice. */
const FREE_TEXT = ['otherConditions', 'triage', 'closure'];

/** Loads, lets the step decide and write, tells the trail, and reads the referral again, all in one transaction. */
async function change(
  context: Context,
  actor: TeamMember,
  id: string,
  told: { readonly action: AuditAction; readonly reason?: string; readonly basedOn?: BasedOn },
  step: (trx: Executor, former: Referral, patient: Patient) => Promise<Refusal | null>,
): Promise<Outcome<Referral>> {
  return context.db.transaction().execute(async (trx) => {
    const former = await findReferral(trx, actor.teamId, id);
    const patient = former === null ? null : await findPatient(trx, actor.teamId, former.patientId);
    if (former === null || patient === null) return refused({ code: 'not-found', what: 'referral' });
    const stale =
      told.basedOn === undefined
        ? null
        : await staleBase(trx, actor, { kind: 'referral', id, version: former.version }, told.basedOn);
    if (stale !== null) return refused(stale);
    const refusal = await step(trx, former, patient);
    if (refusal !== null) return refused(refusal);
    const changed = await findReferral(trx, actor.teamId, id);
    if (changed === null) return refused({ code: 'not-found', what: 'referral' });
    const reason = told.reason === undefined ? {} : { reason: told.reason };
    await recordEvent(context, trx, actor, {
      action: told.action,
      patientId: changed.patientId,
      referralId: id,
      details: { changes: changedValues(toldOf(former), toldOf(changed), FREE_TEXT), ...reason },
    });
    return done(changed);
  });
}

/** A referral as the trail tells it: decisions and dates apart from the texts that go with them. */
function toldOf(referral: Referral): object {
  const { triage, closure } = referral;
  return {
    ...referral,
    triageDecision: triage?.decision,
    triagedOn: triage?.decidedOn,
    closedOn: closure?.closedOn,
    closureReason: closure?.reason,
  };
}

function changeOf(context: Context, actor: TeamMember, former: Referral, reason: string): ReferralChange {
  return { former, reason, now: context.clock.now(), accountId: actor.accountId };
}

function dates(context: Context): { readonly today: ReturnType<Context['clock']['today']> } {
  return { today: context.clock.today() };
}

/** A receipt may not be moved behind what has happened since. */
async function checkFirstEvent(
  trx: Executor,
  former: Referral,
  details: ReferralDetails,
): Promise<readonly Fault[]> {
  if (details.receivedOn <= former.receivedOn) return [];
  const assessments = await assessmentsOfReferral(trx, former.id);
  const session = await firstSessionOn(trx, former.id);
  const events = [
    ...(session === null ? [] : [session]),
    ...assessments.map((assessment) => assessment.entry.assessedOn),
    ...former.offers.map((offer) => offer.offeredOn),
    ...(former.triage === null ? [] : [former.triage.decidedOn]),
    ...(former.closure === null ? [] : [former.closure.closedOn]),
  ];
  if (events.every((event) => event >= details.receivedOn)) return [];
  const message = 'The receipt cannot be moved behind an event of the referral.';
  return [{ pointer: '/receivedOn', code: 'out-of-order', message }];
}

async function lastEventDate(trx: Executor, referral: Referral): Promise<string | null> {
  const assessments = await assessmentsOfReferral(trx, referral.id);
  const dated = assessments
    .filter((assessment) => assessment.entry.timepoint !== 'follow-up')
    .map((assessment) => assessment.entry.assessedOn);
  const contact = await lastContactOn(trx, referral.id);
  const events = contact === null ? dated : [...dated, contact];
  return events.reduce<string | null>((last, event) => (last === null || event > last ? event : last), null);
}
