import { checkClosure } from '../../domain/referral/check-closure.js';
import { checkOffer } from '../../domain/referral/check-offer.js';
import { checkTriage } from '../../domain/referral/check-triage.js';
import { checkEvent, checkReferral } from '../../domain/referral/referral.js';
import type {
  Closure,
  OfferDetails,
  Referral,
  ReferralDetails,
  Triage,
} from '../../domain/referral/referral.js';
import { TRIAGE_STEP } from '../../domain/referral/words.js';
import type { Fault, Outcome } from '../../domain/refusal/refusal.js';
import type { Executor } from '../../storage/connection.js';
import {
  addOffer,
  correctReferralRow,
  setClosure,
  setTriage,
} from '../../storage/referrals/referral-changes.js';
import { assessmentsOfReferral } from '../../storage/assessments/assessments.js';
import { firstSessionOn } from '../../storage/sessions/sessions.js';
import type { Context, TeamMember } from '../context.js';
import type { BasedOn } from '../history/based-on.js';
import { checkPlaces } from './check-places.js';
import { lastEventOn } from './last-event.js';
import { changeOf, changeReferral, dates } from './referral-change.js';

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
  return changeReferral(context, actor, id, told, async (trx, former, patient) => {
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
  decision: Triage & { readonly mrcGrade: number | null; readonly basedOn: BasedOn },
): Promise<Outcome<Referral>> {
  const { basedOn, mrcGrade, ...triage } = decision;
  return changeReferral(context, actor, id, { action: 'referral-triaged', basedOn }, async (trx, former) => {
    if (former.closure !== null) return { code: 'already-closed' };
    if (former.triage !== null) return { code: 'already-triaged' };
    const faults = checkTriage(triage, former, dates(context));
    if (faults.length > 0) return { code: 'rules-broken', faults };
    const change = changeOf(context, actor, former, TRIAGE_STEP);
    await setTriage(trx, { ...change, triage, mrcGrade: mrcGrade ?? former.mrcGrade });
    return null;
  });
}

/** Records an offer of an assessment or of a place, with what became of it. */
export async function recordOffer(
  context: Context,
  actor: TeamMember,
  id: string,
  made: OfferDetails & { readonly basedOn: BasedOn },
): Promise<Outcome<Referral>> {
  const { basedOn, ...offer } = made;
  return changeReferral(context, actor, id, { action: 'offer-recorded', basedOn }, async (trx, former) => {
    if (former.closure !== null) return { code: 'already-closed' };
    const faults = checkOffer(offer, former, dates(context));
    if (faults.length > 0) return { code: 'rules-broken', faults };
    const change = changeOf(context, actor, former, 'Offer');
    await addOffer(trx, { ...change, offer: { ...offer, id: context.newId() } });
    return null;
  });
}

/** Closes a referral with its reason; it is closed once. */
export async function closeReferral(
  context: Context,
  actor: TeamMember,
  id: string,
  ending: Closure & {
    readonly exercisePlanGivenOn: ReferralDetails['exercisePlanGivenOn'];
    readonly basedOn: BasedOn;
  },
): Promise<Outcome<Referral>> {
  const { basedOn, exercisePlanGivenOn, ...closure } = ending;
  return changeReferral(context, actor, id, { action: 'referral-closed', basedOn }, async (trx, former) => {
    if (former.closure !== null) return { code: 'already-closed' };
    const course = { receivedOn: former.receivedOn, lastEventOn: await lastEventOn(trx, id) };
    const faults = [...checkClosure(closure, course, dates(context))];
    if (exercisePlanGivenOn !== null) {
      const pointer = '/exercisePlanGivenOn';
      faults.push(...checkEvent(pointer, 'The plan', exercisePlanGivenOn, former, dates(context)));
    }
    if (faults.length > 0) return { code: 'rules-broken', faults };
    await setClosure(trx, {
      ...changeOf(context, actor, former, 'Closure'),
      closure,
      exercisePlanGivenOn: exercisePlanGivenOn ?? former.exercisePlanGivenOn,
    });
    return null;
  });
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
    ...former.offers.flatMap((offer) => (offer.enteredInError === null ? [offer.offeredOn] : [])),
    ...(former.triage === null ? [] : [former.triage.decidedOn]),
    ...(former.closure === null ? [] : [former.closure.closedOn]),
  ];
  if (events.every((event) => event >= details.receivedOn)) return [];
  const message = 'The receipt cannot be moved behind an event of the referral.';
  return [{ pointer: '/receivedOn', code: 'out-of-order', message }];
}
