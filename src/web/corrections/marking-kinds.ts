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
import type { Context, TeamMember } from '../../usecases/context.js';
import type { MarkRequest } from '../../usecases/corrections/mark.js';
import { assessmentHistoryWords } from '../referral/assessment-history-words.js';
import { recordWords } from '../referral/record-words.js';
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
  fieldWords: recordWords(),
  load: loadReferralEntry,
  mark: byId(markReferralInError, seenReferral),
  restore: byId(restoreReferral, seenReferral),
};

const ASSESSMENT_MARKING: Marking = {
  pageId: 'page:assessment-in-error',
  path: '/assessments/:id',
  consequence:
    'The assessment stays readable and visibly marked. None of its tests and questionnaires counts in a figure, outcome, letter or work list until it is restored. This is for one that should not be there at all, such as that of another person; a wrong value is corrected.',
  fieldWords: assessmentHistoryWords(),
  load: loadAssessmentEntry,
  mark: byId(markAssessmentInError, seenAssessment),
  restore: byId(restoreAssessment, seenAssessment),
};

const OFFER_MARKING: Marking = {
  pageId: 'page:offer-in-error',
  path: '/referrals/:referralId/offers/:id',
  consequence: 'The offer stays readable and visibly marked, and counts in nothing until it is restored.',
  fieldWords: recordWords(),
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
  fieldWords: recordWords(),
  load: loadSessionEntry,
  mark: byId(markSessionInError, seenClass),
  restore: byId(restoreSession, seenClass),
};

/** Every kind of entry that a page marks. */
export const MARKINGS: readonly Marking[] = [
  REFERRAL_MARKING,
  ASSESSMENT_MARKING,
  OFFER_MARKING,
  SESSION_MARKING,
];

/** What is done to an entry that its own id leads to, with the address at which it is seen then. */
function byId<Changed>(
  change: (
    context: Context,
    actor: TeamMember,
    id: string,
    request: MarkRequest,
  ) => Promise<Outcome<Changed>>,
  of: (changed: Changed) => string,
): Marking['mark'] {
  return async (context, actor, { id }, request) => seenAt(await change(context, actor, id, request), of);
}

function seenAt<Changed>(outcome: Outcome<Changed>, of: (changed: Changed) => string): Outcome<string> {
  return outcome.kind === 'refused' ? outcome : done(of(outcome.value));
}
