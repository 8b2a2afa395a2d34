import type { ShownStage } from '../pathway/stage.js';
import type { AttendanceOutcome, OfferKind, OfferResponse, TriageDecision } from './closed-sets.js';

/** The steps of a referral in words. */

export const STAGE_WORDS: Readonly<Record<ShownStage, string>> = {
  'awaiting-triage': 'awaiting triage',
  'awaiting-assessment': 'awaiting assessment',
  'awaiting-start': 'awaiting start',
  'in-programme': 'in the programme',
  'awaiting-discharge-assessment': 'awaiting discharge assessment',
  'awaiting-closure': 'awaiting closure',
  closed: 'closed',
  'entered-in-error': 'entered in error',
};

export const TRIAGE_WORDS: Readonly<Record<TriageDecision, string>> = {
  accepted: 'accepted',
  'not-suitable': 'not suitable',
  redirected: 'redirected to another service',
};

export const OFFER_WORDS: Readonly<Record<OfferKind, string>> = {
  assessment: 'assessment',
  programme: 'place in the programme',
};

export const RESPONSE_WORDS: Readonly<Record<OfferResponse, string>> = {
  accepted: 'accepted',
  declined: 'declined',
  'no-reply': 'no reply',
  'awaiting-reply': 'awaiting reply',
};

export const ATTENDANCE_WORDS: Readonly<Record<AttendanceOutcome, string>> = {
  attended: 'attended',
  'did-not-attend': 'did not attend',
  'cancelled-by-patient': 'cancelled by patient',
  'cancelled-by-service': 'cancelled by the service',
};
