import { z } from 'zod';
import {
  getSession,
  holdSession,
  listSessions,
  recordAttendances,
} from '../../usecases/sessions/keep-register.js';
import { readClass } from '../../usecases/sessions/read-class.js';
import { correctSession } from '../../usecases/sessions/correct-session.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { IfMatchHeaders, onBase, tagged } from '../conditional.js';
import { problemFor, within } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { dateField, idField } from '../schema/fields.js';
import { entriesField } from '../schema/in-error.js';
import { PAGE_QUERY, pageSchema, readPageRequest, writeCursor } from '../schema/paging.js';
import {
  ClassPeople,
  NewSession,
  presentPerson,
  presentSession,
  Register,
  SessionCorrection,
  SessionParams,
  SessionShown,
} from './session-schema.js';

/** Routes under /sessions. */
export function sessionRoutes(app: App, context: Context): void {
  const tags = ['sessions'];

  app.post(
    '/sessions',
    {
      schema: {
        operationId: 'holdSession',
        summary: 'Register a class or a contact',
        tags,
        body: NewSession,
        response: { 201: SessionShown, ...problemResponses(400, 401, 403, 413, 415, 422) },
      },
    },
    async (request, reply) => {
      const outcome = await holdSession(context, teamMember(request), request.body);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      const { id } = outcome.value;
      return tagged(reply, outcome.value)
        .code(201)
        .header('location', `/api/v1/sessions/${id}`)
        .send(presentSession(outcome.value));
    },
  );

  app.get(
    '/sessions',
    {
      schema: {
        operationId: 'listSessions',
        summary: 'List sessions with their registers, latest first',
        tags,
        querystring: z.strictObject({
          siteId: idField.optional(),
          from: dateField.optional(),
          to: dateField.optional(),
          entries: entriesField,
          ...PAGE_QUERY,
        }),
        response: { 200: pageSchema(SessionShown, 'SessionPage'), ...problemResponses(400, 401, 403) },
      },
    },
    async (request, reply) => {
      const { siteId = null, from = null, to = null, entries } = request.query;
      const page = readPageRequest(request.query, 'sessions');
      if (page.kind === 'refused') return sendProblem(reply, problemFor(page.refusal));
      const { rows, next } = await listSessions(
        context,
        teamMember(request),
        { siteId, from, to, entries },
        page.value,
      );
      return reply.send({ items: rows.map(presentSession), nextCursor: writeCursor(next, 'sessions') });
    },
  );

  app.get(
    '/sessions/:sessionId',
    {
      schema: {
        operationId: 'getSession',
        summary: 'Read one session with its register',
        tags,
        params: SessionParams,
        response: { 200: SessionShown, ...problemResponses(400, 401, 403, 404) },
      },
    },
    async (request, reply) => {
      const outcome = await getSession(context, teamMember(request), request.params.sessionId);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return tagged(reply, outcome.value).send(presentSession(outcome.value));
    },
  );

  app.get(
    '/sessions/:sessionId/expected',
    {
      schema: {
        operationId: 'listExpectedPeople',
        summary: 'List who is expected at a session, or stands on its register',
        description:
          'Expected is who is in the programme, or whose start is planned, at the site of the session and delivered its way, and does not come on two other days of the week.',
        tags,
        params: SessionParams,
        response: { 200: ClassPeople, ...problemResponses(400, 401, 403, 404) },
      },
    },
    async (request, reply) => {
      const outcome = await readClass(context, teamMember(request), request.params.sessionId);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      const { session, people } = outcome.value;
      return tagged(reply, session).send({ items: people.map(presentPerson) });
    },
  );

  app.put(
    '/sessions/:sessionId/attendances',
    {
      schema: {
        operationId: 'recordAttendances',
        summary: 'Write the register of a session',
        description: 'Former entries that change stay in the history.',
        tags,
        params: SessionParams,
        headers: IfMatchHeaders,
        body: Register,
        response: {
          200: SessionShown,
          ...problemResponses(400, 401, 403, 404, 409, 412, 413, 415, 422, 428),
        },
      },
    },
    async (request, reply) => {
      const { sessionId } = request.params;
      const outcome = await onBase(request, (base) =>
        recordAttendances(context, teamMember(request), sessionId, { ...request.body, basedOn: base }),
      );
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return tagged(reply, outcome.value).send(presentSession(outcome.value));
    },
  );

  app.patch(
    '/sessions/:sessionId',
    {
      schema: {
        operationId: 'correctSession',
        summary: 'Correct the day, the site or the kind of a session',
        description: 'The former state is kept with its register and the reason.',
        tags,
        params: SessionParams,
        headers: IfMatchHeaders,
        body: SessionCorrection,
        response: {
          200: SessionShown,
          ...problemResponses(400, 401, 403, 404, 409, 412, 413, 415, 422, 428),
        },
      },
    },
    async (request, reply) => {
      const { sessionId } = request.params;
      const outcome = await onBase(request, (base) =>
        correctSession(context, teamMember(request), sessionId, { ...request.body, basedOn: base }),
      );
      if (outcome.kind === 'refused') {
        return sendProblem(reply, problemFor(within('/changes', outcome.refusal)));
      }
      return tagged(reply, outcome.value).send(presentSession(outcome.value));
    },
  );
}
