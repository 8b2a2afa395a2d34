import { z } from 'zod';
import { ATTENDANCE_OUTCOMES, SESSION_MODES } from '../../domain/referral/closed-sets.js';
import {
  getSession,
  holdSession,
  listSessions,
  recordAttendances,
} from '../../usecases/sessions/keep-register.js';
import type { SessionRegister } from '../../usecases/sessions/keep-register.js';
import { readClass } from '../../usecases/sessions/read-class.js';
import type { ClassPerson } from '../../usecases/sessions/read-class.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { basedOn, IfMatchHeaders, tagged } from '../conditional.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { dateField, dateShown, idField } from '../schema/fields.js';
import { PAGE_QUERY, pageSchema, readPageRequest, writeCursor } from '../schema/paging.js';

const NewSession = z
  .strictObject({
    siteId: idField,
    heldOn: dateField.describe('May lie in the future, so that a register can be prepared'),
    mode: z.enum(SESSION_MODES),
    isSupervised: z.boolean(),
  })
  .meta({ id: 'NewSession' });

const Register = z
  .strictObject({
    attendances: z
      .array(z.strictObject({ referralId: idField, outcome: z.enum(ATTENDANCE_OUTCOMES) }))
      .max(200)
      .describe('The whole register: who is not listed is taken off it'),
  })
  .meta({ id: 'Register' });

const SessionParams = z.strictObject({ sessionId: idField });

const SessionShown = z
  .strictObject({
    id: z.string(),
    version: z.int(),
    siteId: z.string(),
    heldOn: dateShown,
    mode: z.string(),
    isSupervised: z.boolean(),
    attendances: z.array(z.strictObject({ referralId: z.string(), outcome: z.string() })),
  })
  .meta({ id: 'Session' });

const ClassPersonShown = z.strictObject({
  referralId: z.string(),
  patientId: z.string(),
  familyName: z.string(),
  givenName: z.string(),
  outcome: z.string().nullable().describe('Null where nobody has said yet'),
  isExpected: z.boolean().describe('Else only on the register'),
  isNewcomer: z.boolean().describe('Has attended no supervised session before the day'),
  attended: z.int().describe('Supervised sessions attended before the day'),
  expectedSessions: z.int().describe('Planned, less those the service cancelled before the day'),
  reachesEnough: z.boolean().describe('Reaches 75 % of the sessions expected by attending'),
});

const ClassPeople = z
  .strictObject({
    items: z.array(ClassPersonShown).describe('By name'),
  })
  .meta({ id: 'ClassPeople' });

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
        .send(present(outcome.value));
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
          ...PAGE_QUERY,
        }),
        response: { 200: pageSchema(SessionShown, 'SessionPage'), ...problemResponses(400, 401, 403) },
      },
    },
    async (request, reply) => {
      const { siteId = null, from = null, to = null } = request.query;
      const page = readPageRequest(request.query, 'sessions');
      if (page.kind === 'refused') return sendProblem(reply, problemFor(page.refusal));
      const { rows, next } = await listSessions(
        context,
        teamMember(request),
        { siteId, from, to },
        page.value,
      );
      return reply.send({ items: rows.map(present), nextCursor: writeCursor(next, 'sessions') });
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
      return tagged(reply, outcome.value).send(present(outcome.value));
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
        response: { 200: SessionShown, ...problemResponses(400, 401, 403, 404, 412, 413, 415, 422, 428) },
      },
    },
    async (request, reply) => {
      const { sessionId } = request.params;
      const base = basedOn(request);
      if (base.kind === 'refused') return sendProblem(reply, problemFor(base.refusal));
      const change = { ...request.body, basedOn: base.value };
      const outcome = await recordAttendances(context, teamMember(request), sessionId, change);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return tagged(reply, outcome.value).send(present(outcome.value));
    },
  );
}

function presentPerson(person: ClassPerson): z.output<typeof ClassPersonShown> {
  return {
    referralId: person.referralId,
    patientId: person.patientId,
    familyName: person.familyName,
    givenName: person.givenName,
    outcome: person.outcome,
    isExpected: person.isExpected,
    isNewcomer: person.isNewcomer,
    attended: person.attended,
    expectedSessions: person.expectedSessions,
    reachesEnough: person.reachesEnough,
  };
}

function present(session: SessionRegister): z.output<typeof SessionShown> {
  return {
    id: session.id,
    version: session.version,
    siteId: session.siteId,
    heldOn: session.heldOn,
    mode: session.mode,
    isSupervised: session.isSupervised,
    attendances: session.attendances.map(({ referralId, outcome }) => ({ referralId, outcome })),
  };
}
