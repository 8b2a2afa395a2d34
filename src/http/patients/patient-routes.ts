import { z } from 'zod';
import { correctPatient } from '../../usecases/patients/correct-patient.js';
import { getPatient, listPatients, searchPatients } from '../../usecases/patients/find-patients.js';
import { registerPatient } from '../../usecases/patients/register-patient.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { basedOn, IfMatchHeaders, tagged } from '../conditional.js';
import { problemFor, within } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { PAGE_QUERY, readPageRequest, writeCursor } from '../schema/paging.js';
import {
  NewPatient,
  PatientCorrection,
  PatientPage,
  PatientParams,
  PatientSearch,
  PatientShown,
  presentPatient,
} from './patient-schema.js';

/** Routes under /patients. */
export function patientRoutes(app: App, context: Context): void {
  const tags = ['patients'];

  app.post(
    '/patients',
    {
      schema: {
        operationId: 'registerPatient',
        summary: 'Register a person with the team',
        tags,
        body: NewPatient,
        response: { 201: PatientShown, ...problemResponses(400, 401, 403, 409, 413, 415, 422) },
      },
    },
    async (request, reply) => {
      const outcome = await registerPatient(context, teamMember(request), request.body);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      const { id } = outcome.value;
      return tagged(reply, outcome.value)
        .code(201)
        .header('location', `/api/v1/patients/${id}`)
        .send(presentPatient(outcome.value));
    },
  );

  app.get(
    '/patients',
    {
      schema: {
        operationId: 'listPatients',
        summary: 'List the people registered with the team',
        tags,
        querystring: z.strictObject(PAGE_QUERY),
        response: { 200: PatientPage, ...problemResponses(400, 401, 403) },
      },
    },
    async (request, reply) => {
      const page = readPageRequest(request.query, 'patients');
      if (page.kind === 'refused') return sendProblem(reply, problemFor(page.refusal));
      const { rows, next } = await listPatients(context, teamMember(request), page.value);
      return reply.send({ items: rows.map(presentPatient), nextCursor: writeCursor(next, 'patients') });
    },
  );

  app.post(
    '/patients/search',
    {
      schema: {
        operationId: 'searchPatients',
        summary: 'Find people by NHS number, name or date of birth',
        description: 'What is searched for travels in the body, so that it is in no log.',
        tags,
        body: PatientSearch,
        response: { 200: PatientPage, ...problemResponses(400, 401, 403, 413, 415) },
      },
    },
    async (request, reply) => {
      const { limit, cursor, ...query } = request.body;
      const page = readPageRequest({ limit, cursor }, 'patients found');
      if (page.kind === 'refused') return sendProblem(reply, problemFor(page.refusal));
      const { rows, next } = await searchPatients(context, teamMember(request), query, page.value);
      return reply.send({ items: rows.map(presentPatient), nextCursor: writeCursor(next, 'patients found') });
    },
  );

  app.get(
    '/patients/:patientId',
    {
      schema: {
        operationId: 'getPatient',
        summary: 'Read one person',
        tags,
        params: PatientParams,
        response: { 200: PatientShown, ...problemResponses(400, 401, 403, 404) },
      },
    },
    async (request, reply) => {
      const outcome = await getPatient(context, teamMember(request), request.params.patientId);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return tagged(reply, outcome.value).send(presentPatient(outcome.value));
    },
  );

  app.patch(
    '/patients/:patientId',
    {
      schema: {
        operationId: 'correctPatient',
        summary: 'Correct what is held about a person',
        description: 'The former state is kept with the reason.',
        tags,
        params: PatientParams,
        headers: IfMatchHeaders,
        body: PatientCorrection,
        response: {
          200: PatientShown,
          ...problemResponses(400, 401, 403, 404, 409, 412, 413, 415, 422, 428),
        },
      },
    },
    async (request, reply) => {
      const base = basedOn(request);
      if (base.kind === 'refused') return sendProblem(reply, problemFor(base.refusal));
      const outcome = await correctPatient(context, teamMember(request), request.params.patientId, {
        ...request.body,
        basedOn: base.value,
      });
      if (outcome.kind === 'refused') {
        return sendProblem(reply, problemFor(within('/changes', outcome.refusal)));
      }
      return tagged(reply, outcome.value).send(presentPatient(outcome.value));
    },
  );
}
