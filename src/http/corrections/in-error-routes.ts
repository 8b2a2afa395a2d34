import { markAssessmentInError, restoreAssessment } from '../../usecases/corrections/assessment-in-error.js';
import {
  markOfferInError,
  markReferralInError,
  restoreOffer,
  restoreReferral,
} from '../../usecases/corrections/referral-in-error.js';
import { markSessionInError, restoreSession } from '../../usecases/corrections/session-in-error.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { AssessmentParams, AssessmentShown, presentAssessment } from '../assessments/assessment-schema.js';
import { IfMatchHeaders, onBase, tagged } from '../conditional.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { answerReferral } from '../referrals/answer-referral.js';
import { OfferParams } from '../referrals/event-schema.js';
import { ReferralParams, ReferralShown } from '../referrals/referral-schema.js';
import { MarkReason } from '../schema/in-error.js';
import { presentSession, SessionParams, SessionShown } from '../sessions/session-schema.js';

const tags = ['corrections'];
const headers = IfMatchHeaders;
const body = MarkReason;
const PROBLEMS = problemResponses(400, 401, 403, 404, 409, 412, 413, 415, 422, 428);
const MARKED =
  'It stays readable and visibly marked, and counts in no figure, outcome, letter or work list until it is restored.';

/** Routes by which an entry is marked as made in error, and restored. Each gives the record as it then stands. */
export function inErrorRoutes(app: App, context: Context): void {
  referralMarks(app, context);
  offerMarks(app, context);
  sessionMarks(app, context);
  assessmentMarks(app, context);
}

const REFERRAL_MARKS = [
  {
    path: 'entered-in-error',
    operationId: 'markReferralInError',
    summary: 'Mark a referral as entered in error',
    description: MARKED,
    change: markReferralInError,
  },
  {
    path: 'restoration',
    operationId: 'restoreReferral',
    summary: 'Restore a referral that was marked as entered in error',
    description: 'Refused where the person has another open referral that it would stand beside.',
    change: restoreReferral,
  },
] as const;

function referralMarks(app: App, context: Context): void {
  for (const { path, operationId, summary, description, change } of REFERRAL_MARKS) {
    const response = { 200: ReferralShown, ...PROBLEMS };
    app.post(
      `/referrals/:referralId/${path}`,
      {
        schema: { operationId, summary, description, tags, params: ReferralParams, headers, body, response },
      },
      async (request, reply) => {
        const { reason } = request.body;
        const { referralId } = request.params;
        const outcome = await onBase(request, (basedOn) =>
          change(context, teamMember(request), referralId, { reason, basedOn }),
        );
        return answerReferral(context, request, reply, outcome);
      },
    );
  }
}

const OFFER_MARKS = [
  {
    path: 'entered-in-error',
    operationId: 'markOfferInError',
    summary: 'Mark an offer as entered in error',
    description: `${MARKED} Its version is that of the referral.`,
    change: markOfferInError,
  },
  {
    path: 'restoration',
    operationId: 'restoreOffer',
    summary: 'Restore an offer that was marked as entered in error',
    description: 'Its version is that of the referral.',
    change: restoreOffer,
  },
] as const;

function offerMarks(app: App, context: Context): void {
  for (const { path, operationId, summary, description, change } of OFFER_MARKS) {
    const response = { 200: ReferralShown, ...PROBLEMS };
    app.post(
      `/referrals/:referralId/offers/:offerId/${path}`,
      { schema: { operationId, summary, description, tags, params: OfferParams, headers, body, response } },
      async (request, reply) => {
        const { reason } = request.body;
        const { referralId, offerId } = request.params;
        const outcome = await onBase(request, (basedOn) =>
          change(context, teamMember(request), referralId, { reason, basedOn, offerId }),
        );
        return answerReferral(context, request, reply, outcome);
      },
    );
  }
}

const SESSION_MARKS = [
  {
    path: 'entered-in-error',
    operationId: 'markSessionInError',
    summary: 'Mark a session, and its register with it, as entered in error',
    description: MARKED,
    change: markSessionInError,
  },
  {
    path: 'restoration',
    operationId: 'restoreSession',
    summary: 'Restore a session that was marked as entered in error',
    description: 'Refused where what happened meanwhile speaks against its register.',
    change: restoreSession,
  },
] as const;

function sessionMarks(app: App, context: Context): void {
  for (const { path, operationId, summary, description, change } of SESSION_MARKS) {
    const response = { 200: SessionShown, ...PROBLEMS };
    app.post(
      `/sessions/:sessionId/${path}`,
      { schema: { operationId, summary, description, tags, params: SessionParams, headers, body, response } },
      async (request, reply) => {
        const { reason } = request.body;
        const { sessionId } = request.params;
        const outcome = await onBase(request, (basedOn) =>
          change(context, teamMember(request), sessionId, { reason, basedOn }),
        );
        if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
        return tagged(reply, outcome.value).send(presentSession(outcome.value));
      },
    );
  }
}

const ASSESSMENT_MARKS = [
  {
    path: 'entered-in-error',
    operationId: 'markAssessmentInError',
    summary: 'Mark an assessment as entered in error',
    description: MARKED,
    change: markAssessmentInError,
  },
  {
    path: 'restoration',
    operationId: 'restoreAssessment',
    summary: 'Restore an assessment that was marked as entered in error',
    description: 'Refused where it would break a rule beside what was recorded meanwhile.',
    change: restoreAssessment,
  },
] as const;

function assessmentMarks(app: App, context: Context): void {
  for (const { path, operationId, summary, description, change } of ASSESSMENT_MARKS) {
    const response = { 200: AssessmentShown, ...PROBLEMS };
    app.post(
      `/assessments/:assessmentId/${path}`,
      {
        schema: {
          operationId,
          summary,
          description,
          tags,
          params: AssessmentParams,
          headers,
          body,
          response,
        },
      },
      async (request, reply) => {
        const { reason } = request.body;
        const { assessmentId } = request.params;
        const outcome = await onBase(request, (basedOn) =>
          change(context, teamMember(request), assessmentId, { reason, basedOn }),
        );
        if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
        return tagged(reply, outcome.value).send(presentAssessment(outcome.value));
      },
    );
  }
}
