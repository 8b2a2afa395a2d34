import { z } from 'zod';
import { parsePeriod } from '../../domain/calendar/period.js';
import type { Period } from '../../domain/calendar/period.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Fault, Outcome } from '../../domain/refusal/refusal.js';
import { renderQuarterlyReportText } from '../../reports/quarterly/render-text.js';
import { readQuarter } from '../../usecases/reports/report-quarter.js';
import { dateField } from '../schema/fields.js';
import { QuarterlyReportShown } from './quarterly-schema.js';
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
      const asked = readQuery(request.query, context.clock.today());
      if (asked.kind === 'refused') return sendProblem(reply, problemFor(asked.refusal));
      const report = await readQuarter(context, teamMember(request), asked.value);
      // The schema describes the report and a test holds it to that; checking each of its thousands of numbers would cost
      // more than counting them.
      return reply
        .type('application/json; charset=utf-8')
        .serializer(JSON.stringify)
        .send(report as never);
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
      const asked = readQuery(request.query, context.clock.today());
      if (asked.kind === 'refused') return sendProblem(reply, problemFor(asked.refusal));
      const report = await readQuarter(context, teamMember(request), asked.value);
      return reply
        .type('text/plain; charset=utf-8')
        .serializer((text) => String(text))
        .send(renderQuarterlyReportText(report));
    },
  );
}

const ReportQuery = z.strictObject({
  period: z
    .string()
    .max(40)
    .describe('`2026-27-Q1` (1 April to 30 June 2026), `2026-27`, or `2026-04-01..2026-05-31`'),
  asAt: dateField.optional().describe('Data cut; today where it is left out'),
});

function readQuery(
  query: z.output<typeof ReportQuery>,
  today: PlainDate,
): Outcome<{ readonly period: Period; readonly asAt: PlainDate }> {
  const faults: Fault[] = [];
  const period = parsePeriod(query.period);
  if (period === null) {
    const message =
      'Give a financial quarter as 2026-27-Q1, a financial year as 2026-27, or two dates as 2026-04-01..2026-05-31.';
    faults.push({ pointer: 'period', code: 'not-a-period', message });
  }
  const asAt = query.asAt ?? today;
  if (asAt > today) {
    faults.push({ pointer: 'asAt', code: 'in-the-future', message: 'The data cut cannot be in the future.' });
  }
  if (period !== null && period.firstDay > asAt) {
    faults.push({
      pointer: 'period',
      code: 'in-the-future',
      message: 'The period has not begun at the data cut.',
    });
  }
  if (period === null || faults.length > 0) return refused({ code: 'rules-broken', faults });
  return done({ period, asAt });
}
