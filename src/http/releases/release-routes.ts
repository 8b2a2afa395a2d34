import { z } from 'zod';
import { makeRelease, previewRelease } from '../../usecases/releases/make-release.js';
import { readRelease, readReleases, withdraw } from '../../usecases/releases/read-releases.js';
import { signedIn, teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { presentDocument, presentDraft, presentEntry } from './present-release.js';
import {
  NewRelease,
  ReleaseDocumentShown,
  ReleaseEntryShown,
  ReleaseParams,
  ReleasePreviewShown,
  Withdrawal,
} from './release-schema.js';

const tags = ['releases'];

/** Routes of the summaries that leave the team. */
export function releaseRoutes(app: App, context: Context): void {
  app.post(
    '/releases/preview',
    {
      schema: {
        operationId: 'previewRelease',
        summary: 'Draft a summary: what would leave, what is hidden and why, what the attack comes to',
        description: 'Nothing is kept. The counts that are hidden are shown to the lead only.',
        tags,
        body: NewRelease,
        response: { 200: ReleasePreviewShown, ...problemResponses(400, 401, 403, 404, 409, 413, 415, 422) },
      },
    },
    async (request, reply) => {
      const outcome = await previewRelease(context, teamMember(request), request.body);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return reply.send(presentDraft(outcome.value));
    },
  );

  app.post(
    '/releases',
    {
      schema: {
        operationId: 'makeRelease',
        summary: 'Release a summary to a commissioner',
        description:
          'Attacked together with all releases of the team and financial year; refused with the tables and the categories to merge where anything could be worked out. A release is frozen; a correction is a new number with its reason.',
        tags,
        body: NewRelease,
        response: { 201: ReleaseEntryShown, ...problemResponses(400, 401, 403, 404, 409, 413, 415, 422) },
      },
    },
    async (request, reply) => {
      const outcome = await makeRelease(context, teamMember(request), request.body);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      const { number } = outcome.value;
      return reply
        .code(201)
        .header('location', `/api/v1/releases/${number}`)
        .send(presentEntry(outcome.value));
    },
  );

  app.get(
    '/releases',
    {
      schema: {
        operationId: 'listReleases',
        summary: 'List releases: of the own team for a lead, those made to it for a commissioner',
        tags,
        response: {
          200: z.strictObject({ releases: z.array(ReleaseEntryShown) }).meta({ id: 'Releases' }),
          ...problemResponses(401, 403),
        },
      },
    },
    async (request, reply) => {
      const releases = await readReleases(context, signedIn(request));
      return reply.send({ releases: releases.map(presentEntry) });
    },
  );

  app.get(
    '/releases/:number',
    {
      schema: {
        operationId: 'getRelease',
        summary: 'A release with what has become of it since: corrected, or withdrawn',
        tags,
        params: ReleaseParams,
        response: {
          200: ReleaseEntryShown.extend({ document: ReleaseDocumentShown }).meta({ id: 'Release' }),
          ...problemResponses(400, 401, 403, 404),
        },
      },
    },
    async (request, reply) => {
      const outcome = await readRelease(context, signedIn(request), request.params.number);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      const { entry, release } = outcome.value;
      return reply.send({ ...presentEntry(entry), document: presentDocument(release) });
    },
  );

  app.post(
    '/releases/:number/withdrawal',
    {
      schema: {
        operationId: 'withdrawRelease',
        summary: 'Withdraw a release: it stays readable and says that it no longer stands',
        tags,
        params: ReleaseParams,
        body: Withdrawal,
        response: { 200: ReleaseEntryShown, ...problemResponses(400, 401, 403, 404, 409, 413, 415) },
      },
    },
    async (request, reply) => {
      const outcome = await withdraw(
        context,
        teamMember(request),
        request.params.number,
        request.body.reason,
      );
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return reply.send(presentEntry(outcome.value));
    },
  );
}
