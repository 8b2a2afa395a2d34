import { z } from 'zod';
import type { DiaryWeek } from '../../domain/session/diary.js';
import { readDiary, recordDiaryWeek } from '../../usecases/diary/keep-diary.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { ReferralParams } from '../referrals/referral-schema.js';
import { dateField, dateShown, numberField } from '../schema/fields.js';
import { PAGE_QUERY, pageOfList, pageSchema } from '../schema/paging.js';

const tags = ['sessions'];

const NewDiaryWeek = z
  .strictObject({
    weekStartingOn: dateField.describe('A Monday'),
    sessionsReported: numberField
      .int()
      .describe('Sessions the person reports, 0 to 21; never supervised ones'),
  })
  .meta({ id: 'NewDiaryWeek' });

const DiaryWeekShown = z
  .strictObject({ weekStartingOn: dateShown, sessionsReported: z.int() })
  .meta({ id: 'DiaryWeek' });

/** Routes of the exercise diary of people who train at home. */
export function diaryRoutes(app: App, context: Context): void {
  app.post(
    '/referrals/:referralId/diary-weeks',
    {
      schema: {
        operationId: 'recordDiaryWeek',
        summary: 'Record what a person reports of one week at home',
        description: 'A further entry for the same week replaces the former, which is kept.',
        tags,
        params: ReferralParams,
        body: NewDiaryWeek,
        response: { 201: DiaryWeekShown, ...problemResponses(400, 401, 403, 404, 413, 415, 422) },
      },
    },
    async (request, reply) => {
      const week: DiaryWeek = request.body;
      const outcome = await recordDiaryWeek(context, teamMember(request), request.params.referralId, week);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return reply.code(201).send(present(week));
    },
  );

  app.get(
    '/referrals/:referralId/diary-weeks',
    {
      schema: {
        operationId: 'readDiary',
        summary: 'Read the exercise diary of a referral, earliest week first',
        tags,
        params: ReferralParams,
        querystring: z.strictObject(PAGE_QUERY),
        response: {
          200: pageSchema(DiaryWeekShown, 'DiaryWeekPage'),
          ...problemResponses(400, 401, 403, 404),
        },
      },
    },
    async (request, reply) => {
      const { referralId } = request.params;
      const outcome = await readDiary(context, teamMember(request), referralId);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      const list = `diary of ${referralId}`;
      const page = pageOfList(outcome.value, request.query, list, (week) => week.weekStartingOn);
      if (page.kind === 'refused') return sendProblem(reply, problemFor(page.refusal));
      const { rows, nextCursor } = page.value;
      return reply.send({ items: rows.map(present), nextCursor });
    },
  );
}

function present({ weekStartingOn, sessionsReported }: DiaryWeek): z.output<typeof DiaryWeekShown> {
  return { weekStartingOn, sessionsReported };
}
