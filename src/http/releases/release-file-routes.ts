import { z } from 'zod';
import type { ReleaseForm } from '../../domain/release/kept-release.js';
import { readRelease, readReleaseFile } from '../../usecases/releases/read-releases.js';
import { RELEASE_MEDIA_TYPES } from '../../usecases/releases/render-release.js';
import { signedIn } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { ReleaseParams } from './release-schema.js';

const FILES: readonly {
  readonly form: ReleaseForm;
  readonly ending: string;
  readonly operationId: string;
  readonly summary: string;
}[] = [
  { form: 'csv', ending: 'csv', operationId: 'getReleaseCsv', summary: 'The release as rows' },
  {
    form: 'xlsx',
    ending: 'xlsx',
    operationId: 'getReleaseSpreadsheet',
    summary: 'The release as a spreadsheet',
  },
  { form: 'pdf', ending: 'pdf', operationId: 'getReleasePdf', summary: 'The release to read and print' },
  {
    form: 'fhir',
    ending: 'fhir',
    operationId: 'getReleaseFhir',
    summary: 'The release as a bundle of FHIR R4 measure reports (summary)',
  },
];

/** A release as files: the same bytes for ever. */
export function releaseFileRoutes(app: App, context: Context): void {
  app.get(
    '/releases/:number.json',
    {
      schema: {
        operationId: 'getReleaseJson',
        summary: 'The canonical JSON of a release, over which its digest is taken',
        tags: ['releases'],
        params: ReleaseParams,
        response: fileResponse('application/json', 'The canonical text'),
      },
    },
    async (request, reply) => {
      const outcome = await readRelease(context, signedIn(request), request.params.number, 'json');
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return reply.type('application/json').send(Buffer.from(outcome.value.text));
    },
  );
  for (const { form, ending, operationId, summary } of FILES) {
    app.get(
      `/releases/:number.${ending}`,
      {
        schema: {
          operationId,
          summary,
          tags: ['releases'],
          params: ReleaseParams,
          response: fileResponse(RELEASE_MEDIA_TYPES[form], 'The file'),
        },
      },
      async (request, reply) => {
        const { number } = request.params;
        const outcome = await readReleaseFile(context, signedIn(request), number, form);
        if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
        return reply
          .type(outcome.value.mediaType)
          .header(
            'content-disposition',
            `attachment; filename="release-${number}.${ending === 'fhir' ? 'fhir.json' : ending}"`,
          )
          .send(outcome.value.content);
      },
    );
  }
}

function fileResponse(mediaType: string, description: string) {
  return {
    200: { description, content: { [mediaType]: { schema: z.unknown().describe('Binary') } } },
    ...problemResponses(400, 401, 403, 404),
  };
}
