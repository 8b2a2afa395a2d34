import { z } from 'zod';
import { CHECKLIST_IN_ORDER, SAFETY_NOTICE } from '../../domain/safety/conduct.js';
import type { StandingCaution } from '../../domain/safety/standing-cautions.js';
import { acknowledgeCaution, listCautions } from '../../usecases/safety/acknowledge-caution.js';
import { teamMember } from '../app-types.js';
import type { App, Context } from '../app-types.js';
import { AssessmentParams } from '../assessments/assessment-schema.js';
import { CitationShown, presentCitation } from '../catalogue/citation-schema.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { orNull, textField } from '../schema/fields.js';
import { PAGE_QUERY, pageOfList, pageSchema } from '../schema/paging.js';

const tags = ['safety'];

const CautionShown = z
  .strictObject({
    id: z.string(),
    measureId: z.string().nullable(),
    text: z.string(),
    source: CitationShown,
    mustBeAcknowledged: z.boolean(),
    by: z.string(),
    isFromFormerVersion: z
      .boolean()
      .describe('A former version raised it; a correction does not take it away'),
    acknowledgement: z.strictObject({ by: z.string(), at: z.string(), actionTaken: z.string() }).nullable(),
  })
  .meta({ id: 'SafetyCaution' });

const CautionPage = pageSchema(CautionShown, 'SafetyCautionPage');

const NewAcknowledgement = z
  .strictObject({
    cautionId: z.string().max(120),
    measureId: orNull(z.string().max(80)),
    actionTaken: textField(2000).describe('What was done about it; kept with your name and the time'),
  })
  .meta({ id: 'NewAcknowledgement' });

const ChecklistShown = z
  .strictObject({
    notice: z.string(),
    lists: z.array(
      z.strictObject({
        id: z.string(),
        title: z.string(),
        stage: z.string(),
        items: z.array(
          z.strictObject({
            id: z.string(),
            text: z.string(),
            strength: z.string().nullable(),
            canBeFound: z.boolean(),
            note: z.string().nullable(),
            source: CitationShown,
          }),
        ),
      }),
    ),
  })
  .meta({ id: 'SafetyChecklist' });

/** Routes of the safety checklist, and of the cautions of an assessment. */
export function safetyRoutes(app: App, context: Context): void {
  app.get(
    '/safety-checklist',
    {
      schema: {
        operationId: 'getSafetyChecklist',
        summary: 'Contraindications, stop rules and rules of conduct with their sources',
        tags,
        response: { 200: ChecklistShown, ...problemResponses(401) },
      },
    },
    async (_request, reply) => reply.send(presentChecklist()),
  );

  app.get(
    '/assessments/:assessmentId/cautions',
    {
      schema: {
        operationId: 'listCautions',
        summary: 'What a registered clinician must know about an assessment',
        tags,
        params: AssessmentParams,
        querystring: z.strictObject(PAGE_QUERY),
        response: { 200: CautionPage, ...problemResponses(400, 401, 403, 404) },
      },
    },
    async (request, reply) => {
      const { assessmentId } = request.params;
      const outcome = await listCautions(context, teamMember(request), assessmentId);
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      const keyOf = (caution: StandingCaution): string => `${caution.id} ${caution.measureId ?? ''}`;
      const page = pageOfList(outcome.value, request.query, `cautions of ${assessmentId}`, keyOf);
      if (page.kind === 'refused') return sendProblem(reply, problemFor(page.refusal));
      const { rows, nextCursor } = page.value;
      return reply.send({ items: rows.map(presentCaution), nextCursor });
    },
  );

  app.post(
    '/assessments/:assessmentId/acknowledgements',
    {
      schema: {
        operationId: 'acknowledgeCaution',
        summary: 'Put your name to having seen a caution',
        tags,
        params: AssessmentParams,
        body: NewAcknowledgement,
        response: { 201: CautionShown, ...problemResponses(400, 401, 403, 404, 409, 413, 415, 422) },
      },
    },
    async (request, reply) => {
      const { cautionId, measureId } = request.body;
      const outcome = await acknowledgeCaution(
        context,
        teamMember(request),
        request.params.assessmentId,
        request.body,
      );
      if (outcome.kind === 'refused') return sendProblem(reply, problemFor(outcome.refusal));
      const caution = outcome.value.find((each) => each.id === cautionId && each.measureId === measureId);
      if (caution === undefined) throw new Error('An acknowledged caution must stand.');
      return reply.code(201).send(presentCaution(caution));
    },
  );
}

function presentCaution(caution: StandingCaution): z.output<typeof CautionShown> {
  const { id, measureId, text, citation, mustBeAcknowledged, by, isFromFormerVersion, acknowledgement } =
    caution;
  return {
    id,
    measureId,
    text,
    source: presentCitation(citation),
    mustBeAcknowledged,
    by,
    isFromFormerVersion,
    acknowledgement:
      acknowledgement === null
        ? null
        : {
            by: acknowledgement.acknowledgedBy,
            at: acknowledgement.acknowledgedAt,
            actionTaken: acknowledgement.actionTaken,
          },
  };
}

function presentChecklist(): z.output<typeof ChecklistShown> {
  return {
    notice: SAFETY_NOTICE,
    lists: CHECKLIST_IN_ORDER.map((list) => ({
      id: list.id,
      title: list.title,
      stage: list.stage,
      items: list.items.map(({ id, text, strength, canBeFound, note, citation }) => ({
        id,
        text,
        strength,
        canBeFound,
        note,
        source: presentCitation(citation),
      })),
    })),
  };
}
