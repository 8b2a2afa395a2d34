import { z } from 'zod';
import { COUNTED_OVER } from '../../domain/cohort/cohorts.js';
import { MEMBER_FILTERS, MEMBER_KINDS } from '../../domain/indicators/figure.js';
import { readFiguresOfReferral } from '../../usecases/reports/figures-of-referral.js';
import { openFigureOfQuarter } from '../../usecases/reports/open-figure.js';
import { reportRequest } from '../../usecases/reports/report-request.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { ReferralParams } from '../referrals/referral-schema.js';
import { dateShown } from '../schema/fields.js';
import { PAGE_QUERY, readPageRequest, writeCursor } from '../schema/paging.js';
import { FigureShown, SourceShown } from './figure-schema.js';
import { ReportQuery } from './report-query.js';

const FigureParams = z.strictObject({
  figureId: z.string().max(200).describe('Id of a figure as the report prints it, such as `uptake`'),
});

const kindShown = z
  .enum(MEMBER_KINDS)
  .describe('In the numerator; in the denominator alone; not decided by the day of the data cut; left out');

const MembersShown = z
  .strictObject({
    figure: FigureShown,
    rule: z.strictObject({
      numerator: z.string(),
      denominator: z.string(),
      exclusions: z.string().nullable(),
      source: SourceShown,
    }),
    items: z
      .array(
        z.strictObject({
          referralId: z.string(),
          patientId: z.string(),
          familyName: z.string(),
          givenName: z.string(),
          receivedOn: dateShown,
          kind: kindShown,
          exclusion: z.string().nullable().describe('Id of the exclusion for those left out'),
          reason: z.string().describe('In words'),
        }),
      )
      .describe('By how they count, then by day of receipt'),
    nextCursor: z.string().nullable().describe('Where the list goes on; null at the end'),
  })
  .meta({ id: 'FigureMembers' });

const FiguresOfReferralShown = z
  .strictObject({
    period: z.string(),
    asAt: dateShown,
    items: z
      .array(
        z.strictObject({
          figureId: z.string(),
          ruleId: z.string(),
          title: z.string(),
          cohort: z.enum(COUNTED_OVER),
          kind: kindShown,
          reason: z.string(),
        }),
      )
      .describe('Empty where the referral belongs to no cohort of the period'),
  })
  .meta({ id: 'FiguresOfReferral' });

/** From a figure to the referrals behind it, and from a referral back to its figures. */
export function figureRoutes(app: App, context: Context): void {
  app.get(
    '/reports/quarterly/figures/:figureId/members',
    {
      schema: {
        operationId: 'listFigureMembers',
        summary:
          'Who stands behind a figure: numerator, denominator, open and left out, each with the reason',
        description: 'The query is that of the report in which the figure stands.',
        tags: ['reports'],
        params: FigureParams,
        querystring: z.strictObject({
          ...ReportQuery.shape,
          kind: z
            .enum(MEMBER_FILTERS)
            .optional()
            .describe('Those who count so only; `counted` is all of the denominator'),
          ...PAGE_QUERY,
        }),
        response: { 200: MembersShown, ...problemResponses(400, 401, 403, 404, 422) },
      },
    },
    async (request, reply) => {
      const { kind = null, limit, cursor, ...query } = request.query;
      const { figureId } = request.params;
      const list = `members of ${figureId}`;
      const page = readPageRequest({ limit, cursor }, list);
      if (page.kind === 'refused') return sendProblem(reply, problemFor(page.refusal));
      const asked = reportRequest(query, context.clock.today());
      if (asked.kind === 'refused') return sendProblem(reply, problemFor(asked.refusal));
      const what = { figureId, kind, page: page.value };
      const outcome = await openFigureOfQuarter(context, teamMember(request), asked.value, what);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      const { figure, rule, page: shown } = outcome.value;
      return reply.send({
        figure: { ...figure, excluded: figure.excluded.map((each) => ({ ...each })) },
        rule,
        items: [...shown.rows],
        nextCursor: writeCursor(shown.next, list),
      });
    },
  );

  app.get(
    '/referrals/:referralId/figures',
    {
      schema: {
        operationId: 'listFiguresOfReferral',
        summary: 'Every figure of a period in which a referral counts, or from which it is left out, and why',
        description: 'Over the whole report of the team, not narrowed. Reasons tell of results.',
        tags: ['outcomes'],
        params: ReferralParams,
        querystring: ReportQuery.pick({ period: true, asAt: true }),
        response: { 200: FiguresOfReferralShown, ...problemResponses(400, 401, 403, 404, 409, 422) },
      },
    },
    async (request, reply) => {
      const asked = reportRequest(request.query, context.clock.today());
      if (asked.kind === 'refused') return sendProblem(reply, problemFor(asked.refusal));
      const { referralId } = request.params;
      const outcome = await readFiguresOfReferral(context, teamMember(request), referralId, asked.value);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      const { period, asAt } = asked.value;
      return reply.send({ period: period.label, asAt, items: [...outcome.value] });
    },
  );
}
