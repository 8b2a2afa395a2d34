import type { FastifyReply } from 'fastify';
import { z } from 'zod';
import { VersionOriginShown } from '../schema/version-origin.js';

/** Problem document of RFC 9457, with a JSON Pointer for each field that is wrong. */
export const Problem = z
  .strictObject({
    type: z.string().describe('Stable path that names the kind of problem'),
    title: z.string(),
    status: z.int(),
    detail: z.string(),
    instance: z.string().describe('Id of the request, for the log'),
    existingId: z
      .string()
      .optional()
      .describe('Id of the record that stands in the way, for those who may see it'),
    changedMeanwhile: z
      .strictObject({
        version: z.int().describe('The version that the record now has'),
        versions: z.array(VersionOriginShown).describe('Each version since the one you have, earliest first'),
        changes: z
          .array(
            z.strictObject({
              field: z.string(),
              former: z.unknown().optional(),
              present: z.unknown().optional(),
            }),
          )
          .describe('Fields that differ; what identifies a person is named without its values'),
      })
      .optional()
      .describe('With 412: what became of the record since the version you have'),
    errors: z
      .array(
        z.strictObject({
          pointer: z.string().describe('JSON Pointer into the body, or the name of a parameter'),
          code: z.string(),
          message: z.string(),
        }),
      )
      .optional(),
  })
  .meta({ id: 'Problem' });

export type Problem = z.output<typeof Problem>;

/** A problem before it is tied to a request. */
export type ProblemBody = Omit<Problem, 'instance'>;

const PROBLEM_MEDIA_TYPE = 'application/problem+json';

/** The statuses that a route may declare. */
type ProblemStatus = 400 | 401 | 403 | 404 | 409 | 412 | 413 | 415 | 422 | 428 | 503;

/** What a status says wherever it is given; the type and the detail of the problem say more. */
const MEANINGS: Readonly<Record<ProblemStatus, string>> = {
  400: 'What was sent cannot be read, or has fields that there are not; each is named.',
  401: 'No token, or one that is not taken.',
  403: 'The role may not do this.',
  404: 'There is no such record in the team.',
  409: 'The state of the record, or what the request key was used for before, stands in the way.',
  412: 'The record has changed since the version in If-Match; what changed is told.',
  413: 'The body is too large.',
  415: 'The body is not of a type that is taken.',
  422: 'The entry breaks a rule, or holds unusual values to be checked; each is named, and nothing is stored.',
  428: 'If-Match is missing: say which version you have.',
  503: 'A sheet is being brought in; figures are given again once it is whole.',
};

/** Response declarations of a route for some problem statuses. */
export function problemResponses<Status extends ProblemStatus>(...statuses: readonly Status[]) {
  const content = { [PROBLEM_MEDIA_TYPE]: { schema: Problem } };
  const responses = statuses.map((status) => [status, { description: MEANINGS[status], content }] as const);
  return Object.fromEntries(responses) as Record<Status, { description: string; content: typeof content }>;
}

/** A small body can be wrong in thousands of places: the answer must not grow with it. */
const MOST_FAULTS = 50;

/** Sends a problem document; of many faults the first are named. */
export function sendProblem(reply: FastifyReply, body: ProblemBody): FastifyReply {
  const problem: Problem = { ...withFewFaults(body), instance: reply.request.id };
  return reply.code(body.status).type(PROBLEM_MEDIA_TYPE).serializer(JSON.stringify).send(problem);
}

function withFewFaults(body: ProblemBody): ProblemBody {
  const count = body.errors?.length ?? 0;
  if (count <= MOST_FAULTS) return body;
  return {
    ...body,
    detail: `Nothing was stored. Of ${count} faults the first ${MOST_FAULTS} are named.`,
    errors: body.errors?.slice(0, MOST_FAULTS),
  };
}
