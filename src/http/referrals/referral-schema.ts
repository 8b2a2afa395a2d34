import { z } from 'zod';
import type { Role } from '../../domain/account/role.js';
import { DELIVERY_MODES, DIAGNOSES, PATHWAYS, REFERRAL_SOURCES } from '../../domain/referral/closed-sets.js';
import type { Referral } from '../../domain/referral/referral.js';
import { dateField, dateShown, idField, orNull, reasonField, textField } from '../schema/fields.js';
import { hasSomeChange, NO_CHANGE } from '../schema/changes.js';
import { InErrorShown, presentInError } from '../schema/in-error.js';
import { pageSchema } from '../schema/paging.js';

export const mrcGrade = z.int().min(1).max(5).describe('MRC dyspnoea grade, 1 to 5 (not mMRC)');
const plannedSessions = z
  .int()
  .min(1)
  .max(60)
  .describe('Supervised sessions; null takes the setting of the team');
const plannedWeeks = z.int().min(1).max(52).describe('Null takes the setting of the team');
const otherConditions = textField(2000);

export const NewReferral = z
  .strictObject({
    patientId: idField,
    siteId: idField,
    commissionerId: orNull(idField),
    receivedOn: dateField.describe('Date on which the team received the referral: the start of the clock'),
    source: z.enum(REFERRAL_SOURCES),
    diagnosis: z.enum(DIAGNOSES),
    otherConditions: orNull(otherConditions),
    pathway: z.enum(PATHWAYS),
    hospitalDischargedOn: orNull(dateField).describe('For the pathway after-exacerbation only'),
    mrcGrade: orNull(mrcGrade),
    deliveryMode: orNull(z.enum(DELIVERY_MODES)),
    plannedStartOn: orNull(dateField),
    plannedSessions: orNull(plannedSessions),
    plannedWeeks: orNull(plannedWeeks),
    exercisePlanGivenOn: orNull(dateField),
  })
  .meta({ id: 'NewReferral' });

export const ReferralCorrection = z
  .strictObject({
    reason: reasonField,
    changes: z
      .strictObject({
        siteId: z.exactOptional(idField),
        commissionerId: z.exactOptional(idField.nullable()),
        receivedOn: z.exactOptional(dateField),
        source: z.exactOptional(z.enum(REFERRAL_SOURCES)),
        diagnosis: z.exactOptional(z.enum(DIAGNOSES)),
        otherConditions: z.exactOptional(otherConditions.nullable()),
        pathway: z.exactOptional(z.enum(PATHWAYS)),
        hospitalDischargedOn: z.exactOptional(dateField.nullable()),
        mrcGrade: z.exactOptional(mrcGrade.nullable()),
        deliveryMode: z.exactOptional(z.enum(DELIVERY_MODES).nullable()),
        plannedStartOn: z.exactOptional(dateField.nullable()),
        plannedSessions: z.exactOptional(plannedSessions.nullable()),
        plannedWeeks: z.exactOptional(plannedWeeks.nullable()),
        exercisePlanGivenOn: z.exactOptional(dateField.nullable()),
      })
      .refine(hasSomeChange, NO_CHANGE),
  })
  .meta({ id: 'ReferralCorrection' });

export const ReferralShown = z
  .strictObject({
    id: z.string(),
    patientId: z.string(),
    version: z.int(),
    siteId: z.string(),
    commissionerId: z.string().nullable(),
    receivedOn: dateShown,
    source: z.string(),
    diagnosis: z.string(),
    otherConditions: z.string().nullable(),
    pathway: z.string(),
    hospitalDischargedOn: dateShown.nullable(),
    mrcGrade: z.int().nullable().optional().describe('Not shown to administrators: it is a score'),
    deliveryMode: z.string().nullable(),
    plannedStartOn: dateShown.nullable(),
    plannedSessions: z.int().nullable(),
    plannedWeeks: z.int().nullable(),
    exercisePlanGivenOn: dateShown.nullable(),
    triage: z
      .strictObject({ decision: z.string(), decidedOn: dateShown, reason: z.string().nullable() })
      .nullable(),
    offers: z.array(
      z.strictObject({
        id: z.string(),
        kind: z.string(),
        offeredOn: dateShown,
        appointmentOn: dateShown.nullable(),
        response: z.string(),
        respondedOn: dateShown.nullable(),
        enteredInError: InErrorShown,
      }),
    ),
    closure: z
      .strictObject({ closedOn: dateShown, reason: z.string(), note: z.string().nullable() })
      .nullable(),
    enteredInError: InErrorShown,
    stage: z
      .string()
      .describe('Derived from what has happened, never typed; entered-in-error for one that does not stand'),
  })
  .meta({ id: 'Referral' });

export const ReferralPage = pageSchema(ReferralShown, 'ReferralPage');
export const ReferralParams = z.strictObject({ referralId: idField });

/** What a client is shown of a referral: each field by name, and no score to an administrator. */
export function presentReferral(
  referral: Referral,
  stage: string,
  role: Role,
): z.output<typeof ReferralShown> {
  return {
    id: referral.id,
    patientId: referral.patientId,
    version: referral.version,
    siteId: referral.siteId,
    commissionerId: referral.commissionerId,
    receivedOn: referral.receivedOn,
    source: referral.source,
    diagnosis: referral.diagnosis,
    otherConditions: referral.otherConditions,
    pathway: referral.pathway,
    hospitalDischargedOn: referral.hospitalDischargedOn,
    ...(role === 'admin' ? {} : { mrcGrade: referral.mrcGrade }),
    deliveryMode: referral.deliveryMode,
    plannedStartOn: referral.plannedStartOn,
    plannedSessions: referral.plannedSessions,
    plannedWeeks: referral.plannedWeeks,
    exercisePlanGivenOn: referral.exercisePlanGivenOn,
    triage:
      referral.triage === null
        ? null
        : {
            decision: referral.triage.decision,
            decidedOn: referral.triage.decidedOn,
            reason: referral.triage.reason,
          },
    offers: referral.offers.map((offer) => ({
      id: offer.id,
      kind: offer.kind,
      offeredOn: offer.offeredOn,
      appointmentOn: offer.appointmentOn,
      response: offer.response,
      respondedOn: offer.respondedOn,
      enteredInError: presentInError(offer.enteredInError),
    })),
    closure:
      referral.closure === null
        ? null
        : {
            closedOn: referral.closure.closedOn,
            reason: referral.closure.reason,
            note: referral.closure.note,
          },
    enteredInError: presentInError(referral.enteredInError),
    stage,
  };
}
