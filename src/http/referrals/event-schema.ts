import { z } from 'zod';
import {
  CLOSURE_REASONS,
  OFFER_KINDS,
  OFFER_RESPONSES,
  TRIAGE_DECISIONS,
} from '../../domain/referral/closed-sets.js';
import { dateField, idField, lineField, orNull, reasonField, textField } from '../schema/fields.js';
import { mrcGrade } from './referral-schema.js';

const TRIAGE = {
  decision: z.enum(TRIAGE_DECISIONS),
  decidedOn: dateField,
  reason: orNull(lineField(500)),
} as const;

export const NewTriage = z.strictObject({ ...TRIAGE, mrcGrade: orNull(mrcGrade) }).meta({ id: 'NewTriage' });

export const TriageCorrection = z
  .strictObject({
    reason: reasonField,
    triage: z.strictObject(TRIAGE).nullable().describe('The whole decision; null takes it back'),
  })
  .meta({ id: 'TriageCorrection' });

export const NewOffer = z
  .strictObject({
    kind: z.enum(OFFER_KINDS),
    offeredOn: dateField,
    appointmentOn: orNull(dateField),
    response: z.enum(OFFER_RESPONSES),
    respondedOn: orNull(dateField),
  })
  .meta({ id: 'NewOffer' });

export const OfferCorrection = z
  .strictObject({ reason: reasonField, offer: NewOffer })
  .meta({ id: 'OfferCorrection' });

const CLOSURE = {
  closedOn: dateField,
  reason: z.enum(CLOSURE_REASONS),
  note: orNull(textField(2000)),
} as const;

export const NewClosure = z
  .strictObject({
    ...CLOSURE,
    exercisePlanGivenOn: orNull(dateField).describe('Date on which a written exercise plan was given'),
  })
  .meta({ id: 'NewClosure' });

export const ClosureCorrection = z
  .strictObject({
    reason: reasonField,
    closure: z.strictObject(CLOSURE).nullable().describe('The whole closure; null opens the referral again'),
  })
  .meta({ id: 'ClosureCorrection' });

export const OfferParams = z.strictObject({ referralId: idField, offerId: idField });
