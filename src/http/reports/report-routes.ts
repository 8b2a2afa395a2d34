import { getOutcomes } from '../../usecases/reports/get-outcomes.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { ReferralParams } from '../referrals/referral-schema.js';
import { OutcomesShown, presentOutcomes } from './outcomes-schema.js';

/** Routes of outcomes and reports. */
export function reportRoutes(app: App, context: Context): void {
  app.get(
    '/referrals/:referralId/outcomes',
    {
      schema: {
        operationId: 'getOutcomes',
        summary: 'How one person changed between baseline and discharge',
        description:
          'Each measure with its change against the minimal important difference, whether like is compared with like, and the share of the predicted result.',
        tags: ['outcomes'],
        params: ReferralParams,
        response: { 200: OutcomesShown, ...problemResponses(400, 401, 403, 404) },
      },
    },
    async (request, reply) => {
      const outcome = await getOutcomes(context, teamMember(request), request.params.referralId);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return reply.send(presentOutcomes(outcome.value));
    },
  );
}
