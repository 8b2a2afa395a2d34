import { done } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { markAssessmentInError, restoreAssessment } from '../../usecases/corrections/assessment-in-error.js';
import {
  markOfferInError,
  markReferralInError,
  restoreOffer,
  restoreReferral,
} from '../../usecases/corrections/referral-in-error.js';
import { markSessionInError, restoreSession } from '../../usecases/corrections/session-in-error.js';
import type { Marking } from './marking.js';

import {
  loadReferralEntry,
  loadAssessmentEntry,
  loadOfferEntry,
  loadSessionEntry,
  seenReferral,
  seenAssessment,
  seenOffers,
  seenClass,
} from './load-markable.js';

const REFERRAL_MARKING: Marking = {
  pageId: 'page:referral-in-error',
  path: '/referrals/:id',
  consequence:
    'The referral stays readable and visibly marked. It, its assessments and its attendances count in no figure, outcome, letter or work list until it is restored.',
  load: loadReferralEntry,
  mark: async (context, actor, { id }, request) =>
    seenAt(await markReferralInError(context, actor, id, request), seenReferral),
  restore: async (context, actor, { id }, request) =>
    seenAt(await restoreReferral(context, actor, id, request), seenReferral),
};

const ASSESSMENT_MARKING: Marking = {
  pageId: 'page:assessment-in-error',
  path: '/assessments/:id',
  consequence:
    'The assessment stays readable and visibly marked. None of its tests and questionnaires counts in a figure, outcome, letter or work list until it is restored. This is for one that should not be there at all, such as that of another person; a wrong value is corrected.',
  load: loadAssessmentEntry,
  mark: async (context, actor, { id }, request) =>
    seenAt(await markAssessmentInError(context, actor, id, request), seenAssessment),
  restore: async (context, actor, { id }, request) =>
    seenAt(await restoreAssessment(context, actor, id, request), seenAssessment),
};

const OFFER_MARKING: Marking = {
  pageId: 'page:offer-in-error',
  path: '/referrals/:referralId/offers/:id',
  consequence: 'The offer stays readable and visibly marked, and counts in nothing until it is restored.',
  load: loadOfferEntry,
  mark: async (context, actor, { id, referralId }, request) =>
    seenAt(await markOfferInError(context, actor, referralId, { ...request, offerId: id }), seenOffers),
  restore: async (context, actor, { id, referralId }, request) =>
    seenAt(await restoreOffer(context, actor, referralId, { ...request, offerId: id }), seenOffers),
};

const SESSION_MARKING: Marking = {
  pageId: 'page:class-in-error',
  path: '/classes/:id',
  consequence:
    'The class and its register stay readable and visibly marked. Nobody counts as having been there or not, until it is restored. A class that was to be and did not take place is cancelled by the service on its page instead.',
  load: loadSessionEntry,
  mark: async (context, actor, { id }, request) =>
    seenAt(await markSessionInError(context, actor, id, request), seenClass),
  restore: async (context, actor, { id }, request) =>
    seenAt(await restoreSession(context, actor, id, request), seenClass),
};

/** Every kind of entry that a page marks. */
export const MARKINGS: readonly Marking[] = [
  REFERRAL_MARKING,
  ASSESSMENT_MARKING,
  OFFER_MARKING,
  SESSION_MARKING,
];

function seenAt<Changed>(outcome: Outcome<Changed>, of: (changed: Changed) => string): Outcome<string> {
  return outcome.kind === 'refused' ? outcome : done(of(outcome.value));
}
