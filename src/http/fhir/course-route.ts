import { z } from 'zod';
import { FHIR_MEDIA_TYPE, sendCourse } from '../../usecases/fhir/send-course.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { ReferralParams } from '../referrals/referral-schema.js';

/** One person's course in the form that other services read. */
export function fhirCourseRoute(app: App, context: Context): void {
  app.get(
    '/referrals/:referralId/fhir',
    {
      schema: {
        operationId: 'getCourseFhir',
        summary: 'The course of one person as a bundle of FHIR R4 resources (collection)',
        description:
          'Patient, ServiceRequest, EpisodeOfCare, Encounter (assessments, and sessions attended), Observation, QuestionnaireResponse by item numbers without wording, and CarePlan where a written plan was given. Clinical codes stand only where they were confirmed; everything else is told in words.',
        tags: ['fhir'],
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
