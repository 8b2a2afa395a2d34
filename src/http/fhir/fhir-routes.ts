import { z } from 'zod';
import { FHIR_MEDIA_TYPE, sendCourse } from '../../usecases/fhir/send-course.js';
import { takeInReferral } from '../../usecases/fhir/take-in-referral.js';
import { withStage } from '../../usecases/referrals/list-referrals.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { tagged } from '../conditional.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { presentReferral, ReferralParams, ReferralShown } from '../referrals/referral-schema.js';

const tags = ['fhir'];

const SentReferral = z
  .looseObject({ resourceType: z.enum(['Bundle', 'ServiceRequest']) })
  .describe(
    'A Bundle of type collection with a ServiceRequest and its Patient, or a ServiceRequest that contains the Patient',
  )
  .meta({ id: 'FhirReferral' });

const TakenInShown = z
  .strictObject({
    referral: ReferralShown,
    notKept: z
      .array(
        z.strictObject({ pointer: z.string().describe('JSON Pointer into the body'), message: z.string() }),
      )
      .describe('Elements that came and are not in the record'),
  })
  .meta({ id: 'FhirReferralTakenIn' });

/** Courses and referrals in the form that other services read and write. */
export function fhirRoutes(app: App, context: Context): void {
  courseRoute(app, context);
  void app.register((scope: App, _options, ready) => {
    const read = scope.getDefaultJsonParser('error', 'error');
    scope.addContentTypeParser(FHIR_MEDIA_TYPE, { parseAs: 'string' }, read);
    intakeRoute(scope, context);
    ready();
  });
}

function courseRoute(app: App, context: Context): void {
  app.get(
    '/referrals/:referralId/fhir',
    {
      schema: {
        operationId: 'getCourseFhir',
        summary: 'The course of one person as a bundle of FHIR R4 resources (collection)',
        description:
          'Patient, ServiceRequest, EpisodeOfCare, Encounter (assessments, and sessions attended), Observation, QuestionnaireResponse by item numbers without wording, and CarePlan where a written plan was given. Clinical codes stand only where they were confirmed; everything else is told in words.',
        tags,
        params: ReferralParams,
        response: {
          200: {
            description: 'The bundle',
            content: { [FHIR_MEDIA_TYPE]: { schema: z.unknown().describe('A FHIR R4 Bundle') } },
          },
          ...problemResponses(400, 401, 403, 404, 409),
        },
      },
    },
    async (request, reply) => {
      const outcome = await sendCourse(context, teamMember(request), request.params.referralId);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return reply.type(FHIR_MEDIA_TYPE).send(Buffer.from(outcome.value));
    },
  );
}

function intakeRoute(app: App, context: Context): void {
  app.post(
    '/referrals/fhir',
    {
      schema: {
        operationId: 'takeInReferralFhir',
        summary: 'Register a new person with their referral, sent as FHIR R4',
        description:
          'The same rules as for registering by hand. The request must be active, an order of pulmonary rehabilitation, and about the patient that comes with it. What the record needs and FHIR has no element for stands in extensions of urn:tidemark:extension, by the names and codes of NewPatient and NewReferral: received-on, source, pathway and sex-at-birth are needed. The diagnosis is a code of urn:tidemark:code:diagnosis in reasonCode; the site is an identifier of urn:tidemark:site in locationReference. An element that cannot be used is refused with its pointer; one that the record has no place for is named in notKept. Somebody whom the team has a record of is never changed by what is sent: the request is refused (409) with the id of the record in existingId; once somebody has compared the two, POST /referrals with that patientId registers the referral.',
        tags,
        consumes: ['application/json', FHIR_MEDIA_TYPE],
        body: SentReferral,
        response: { 201: TakenInShown, ...problemResponses(400, 401, 403, 409, 413, 415, 422) },
      },
    },
    async (request, reply) => {
      const actor = teamMember(request);
      const outcome = await takeInReferral(context, actor, request.body);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      const { notKept } = outcome.value;
      const { referral, stage } = await withStage(context, actor, outcome.value.referral);
      return tagged(reply, referral)
        .code(201)
        .header('location', `/api/v1/referrals/${referral.id}`)
        .send({ referral: presentReferral(referral, stage, actor.role), notKept: [...notKept] });
    },
  );
}
