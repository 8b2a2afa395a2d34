import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { getAssessment } from '../../usecases/assessments/record-assessment.js';
import { acknowledgeCaution, listCautions } from '../../usecases/safety/acknowledge-caution.js';
import { entryReader } from '../forms/entry-reader.js';
import { NO_ERRORS } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { readForm, textOf } from '../forms/form-values.js';
import { refusalErrors } from '../forms/refusal-errors.js';
import { frameOf, sendPage } from '../frame.js';
import { sendRefusal } from '../send-refusal.js';
import { loadReferral } from '../steps/load-referral.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { cautionKey } from './caution-words.js';
import { actionField, CautionsView, LONGEST_ACTION } from './cautions-view.js';

interface Params {
  readonly Params: { readonly assessmentId: string };
}

const Query = z.object({ caution: z.string().catch('') });

interface Shown {
  readonly typed: { readonly key: string; readonly action: string };
  readonly errors: FormErrors;
  readonly status: number;
}

/** The cautions of an assessment, on which a clinician puts a name to having seen each. */
export function cautionsPage(app: WebApp, web: Web): void {
  const { context } = web;
  const path = '/assessments/:assessmentId/cautions';

  app.get<Params>(path, pageOf('page:cautions'), (request, reply) => {
    const typed = { key: Query.parse(request.query).caution, action: '' };
    return show(request, reply, { typed, errors: NO_ERRORS, status: 200 });
  });

  app.post<Params>(path, pageOf('page:cautions'), async (request, reply) => {
    const { assessmentId } = request.params;
    const actor = memberOf(request);
    const form = readForm(request.body);
    const key = textOf(form, 'caution');
    const name = actionField(key);
    const typed = { key, action: textOf(form, name) };
    const read = entryReader(form);
    const actionTaken = read.optionalText(name, LONGEST_ACTION);
    if (actionTaken === null) {
      const missing = { field: name, message: 'Say what you did about it.' };
      const errors = read.errors.length === 0 ? [missing] : read.errors;
      return show(request, reply, { typed, errors, status: 422 });
    }
    const listed = await listCautions(context, actor, assessmentId);
    if (listed.kind === 'refused') return sendRefusal(web, request, reply, listed.refusal);
    const caution = listed.value.find((each) => cautionKey(each) === key);
    const acknowledged = await acknowledgeCaution(context, actor, assessmentId, {
      cautionId: caution?.id ?? key,
      measureId: caution?.measureId ?? null,
      actionTaken,
    });
    if (acknowledged.kind === 'done') return reply.redirect(`/assessments/${assessmentId}/cautions`, 303);
    const errors = refusalErrors(web, acknowledged.refusal, (faults) =>
      faults.map(({ message }) => ({ field: '', message })),
    );
    return show(request, reply, { typed, errors, status: web.wordsFor(acknowledged.refusal).status });
  });

  async function show(
    request: FastifyRequest<Params>,
    reply: FastifyReply,
    { status, ...shown }: Shown,
  ): Promise<FastifyReply> {
    const actor = memberOf(request);
    const { assessmentId } = request.params;
    const assessment = await getAssessment(context, actor, assessmentId);
    if (assessment.kind === 'refused') return sendRefusal(web, request, reply, assessment.refusal);
    const of = await loadReferral(context, actor, assessment.value.referralId);
    if (of.kind === 'refused') return sendRefusal(web, request, reply, of.refusal);
    const cautions = await listCautions(context, actor, assessmentId);
    if (cautions.kind === 'refused') return sendRefusal(web, request, reply, cautions.refusal);
    const view = { of: of.value, assessment: assessment.value, cautions: cautions.value, ...shown };
    return sendPage(reply, <CautionsView frame={frameOf(request, reply)} {...view} />, status);
  }
}
