import { z } from 'zod';
import type { Draft } from '../../domain/draft/draft.js';
import { TIMEPOINTS } from '../../domain/referral/closed-sets.js';
import { ACCEPTED_TEXT, TEXT_NOT_ACCEPTED } from '../../domain/text/accepted-text.js';
import { discardDraft, openDrafts, readDraft, saveDraft } from '../../usecases/drafts/keep-draft.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { basedOn, IfMatchHeaders, tagged } from '../conditional.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { ReferralParams } from '../referrals/referral-schema.js';
import { idField } from '../schema/fields.js';

const MOST_FIELDS = 800;

const Fields = z
  .record(
    z.string().regex(/^[A-Za-z0-9][A-Za-z0-9_.-]{0,79}$/, 'A field has a name of letters and digits.'),
    z.array(z.string().max(5000).regex(ACCEPTED_TEXT, TEXT_NOT_ACCEPTED)).max(50),
  )
  .refine((fields) => Object.keys(fields).length <= MOST_FIELDS, {
    message: `Give at most ${MOST_FIELDS} fields.`,
  })
  .describe('What was typed, by the name of the field: texts, unchecked');

const DraftToSave = z.strictObject({ fields: Fields }).meta({ id: 'DraftToSave' });

const DraftToDiscard = z
  .strictObject({ version: z.int().min(0).max(999_999_999).describe('The version that is thrown away') })
  .meta({ id: 'DraftToDiscard' });

const DraftShown = z
  .strictObject({
    referralId: z.string(),
    timepoint: z.string(),
    version: z.int().describe('0 where nothing was ever saved; never starts again'),
    state: z.string().describe('none, open, recorded or discarded'),
    savedAt: z.string().nullable().describe('UTC'),
    savedBy: z.strictObject({ id: z.string(), name: z.string() }).nullable(),
    fields: z.record(z.string(), z.array(z.string())),
  })
  .meta({ id: 'Draft' });

const DraftParams = z.strictObject({ referralId: idField, timepoint: z.enum(TIMEPOINTS) });

/** Drafts of assessments, under their referral. */
export function draftRoutes(app: App, context: Context): void {
  const tags = ['assessments'];

  app.get(
    '/referrals/:referralId/drafts',
    {
      schema: {
        operationId: 'listDrafts',
        summary: 'List the open drafts of assessments of a referral',
        tags,
        params: ReferralParams,
        response: {
          200: z.strictObject({ items: z.array(DraftShown) }).meta({ id: 'DraftList' }),
          ...problemResponses(400, 401, 403, 404),
        },
      },
    },
    async (request, reply) => {
      const outcome = await openDrafts(context, teamMember(request), request.params.referralId);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return reply.send({ items: outcome.value.map(present) });
    },
  );

  app.get(
    '/referrals/:referralId/drafts/:timepoint',
    {
      schema: {
        operationId: 'readDraft',
        summary: 'Read what has been typed of an assessment',
        description: 'Whoever typed it, on whatever device. A draft of version 0 is given where nothing was.',
        tags,
        params: DraftParams,
        response: { 200: DraftShown, ...problemResponses(400, 401, 403, 404) },
      },
    },
    async (request, reply) => {
      const outcome = await readDraft(context, teamMember(request), request.params);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return tagged(reply, outcome.value).send(present(outcome.value));
    },
  );

  app.put(
    '/referrals/:referralId/drafts/:timepoint',
    {
      schema: {
        operationId: 'saveDraft',
        summary: 'Save what has been typed of an assessment so far',
        description: 'Nothing is checked and nothing counts until the assessment is recorded.',
        tags,
        params: DraftParams,
        headers: IfMatchHeaders,
        body: DraftToSave,
        response: { 200: DraftShown, ...problemResponses(400, 401, 403, 404, 409, 412, 413, 415, 422, 428) },
      },
    },
    async (request, reply) => {
      const base = basedOn(request);
      if (base.kind === 'refused') return sendProblem(reply, problemFor(base.refusal));
      const change = { fields: request.body.fields, basedOn: base.value };
      const outcome = await saveDraft(context, teamMember(request), request.params, change);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return tagged(reply, outcome.value).send(present(outcome.value));
    },
  );

  app.post(
    '/referrals/:referralId/drafts/:timepoint/discard',
    {
      schema: {
        operationId: 'discardDraft',
        summary: 'Throw away what has been typed of an assessment',
        tags,
        params: DraftParams,
        body: DraftToDiscard,
        response: { 200: DraftShown, ...problemResponses(400, 401, 403, 404, 412, 413, 415) },
      },
    },
    async (request, reply) => {
      const { version } = request.body;
      const outcome = await discardDraft(context, teamMember(request), request.params, version);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      return tagged(reply, outcome.value).send(present(outcome.value));
    },
  );
}

function present({
  referralId,
  timepoint,
  version,
  state,
  saved,
  fields,
}: Draft): z.output<typeof DraftShown> {
  return {
    referralId,
    timepoint,
    version,
    state,
    savedAt: saved?.at ?? null,
    savedBy: saved === null ? null : { id: saved.byId, name: saved.byName },
    fields: Object.fromEntries(Object.entries(fields).map(([name, values]) => [name, [...values]])),
  };
}
