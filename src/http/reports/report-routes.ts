import { z } from 'zod';
import { readQuarterAs } from '../../usecases/reports/report-quarter.js';
import { QuarterlyReportShown } from './quarterly-schema.js';
import { ReportQuery } from './report-query.js';
import { getOutcomes } from '../../usecases/reports/get-outcomes.js';
import { reportRequest } from '../../usecases/reports/report-request.js';
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
        response: { 200: OutcomesShown, ...problemResponses(400, 401, 403, 404, 409) },
      },
    },
    async (request, reply) => {
      const outcome = await getOutcomes(context, teamMember(request), request.params.referralId);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return reply.send(presentOutcomes(outcome.value));
    },
  );

  app.get(
    '/reports/quarterly',
    {
      schema: {
        operationId: 'getQuarterlyReport',
        summary: 'The report of a quarter, a financial year or two dates',
        description:
          'Every percentage carries its numerator, denominator, exclusions and rule. Numbers are unrounded; a renderer rounds once.',
        tags: ['reports'],
        querystring: ReportQuery,
        response: { 200: QuarterlyReportShown, ...problemResponses(400, 401, 403, 422) },
      },
    },
    async (request, reply) => {
      const asked = reportRequest(request.query, context.clock.today());
      if (asked.kind === 'refused') return sendProblem(reply, problemFor(asked.refusal));
      // The schema describes the report and a test holds it to that; checking each of its thousands of numbers would cost
      // more than counting them.
      const json = await readQuarterAs(context, teamMember(request), asked.value, 'json');
      return reply.type('application/json; charset=utf-8').send(json as never);
    },
  );

  app.get(
    '/reports/quarterly.txt',
    {
      schema: {
        operationId: 'getQuarterlyReportText',
        summary: 'The same report as a table for the terminal',
        tags: ['reports'],
        querystring: ReportQuery,
        response: {
          200: { description: 'Report', content: { 'text/plain': { schema: z.string() } } },
          ...problemResponses(400, 401, 403, 422),
        },
      },
    },
    async (request, reply) => {
      const asked = reportRequest(request.query, context.clock.today());
      if (asked.kind === 'refused') return sendProblem(reply, problemFor(asked.refusal));
      const text = await readQuarterAs(context, teamMember(request), asked.value, 'txt');
      return reply.type('text/plain; charset=utf-8').send(text as never);
    },
  );
}
