import type { FastifyReply, FastifyRequest } from 'fastify';
import { VERSION_FIELD } from '../components/version-field.js';
import { readForm, textOf, wholeNumberOf } from '../forms/form-values.js';
import { reasonFault } from '../forms/line.js';
import { frameOf, sendPage } from '../frame.js';
import { sendRefusal } from '../send-refusal.js';
import { NEW_STEP, shownOf } from '../steps/step-shown.js';
import type { StepShown } from '../steps/step-shown.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { MARKINGS } from './marking-kinds.js';
import type { Marking, MarkingParams } from './marking.js';
import { MarkingView } from './marking-view.js';
import type { MarkingStep } from './marking-view.js';

interface Params {
  readonly Params: MarkingParams;
}

/** Pages by which an entry is marked as made in error, and restored, each with its reason. */
export function markingPages(app: WebApp, web: Web): void {
  for (const marking of MARKINGS) {
    stepPages(app, web, marking, 'entered-in-error');
    stepPages(app, web, marking, 'restoration');
  }
}

function stepPages(app: WebApp, web: Web, marking: Marking, step: MarkingStep): void {
  const { context } = web;
  const path = `${marking.path}/${step}`;
  const change = step === 'restoration' ? marking.restore : marking.mark;

  app.get<Params>(path, pageOf(marking.pageId), (request, reply) => show(request, reply, NEW_STEP));

  app.post<Params>(path, pageOf(marking.pageId), async (request, reply) => {
    const form = readForm(request.body);
    const reason = textOf(form, 'reason');
    const fault = reasonFault('reason', reason);
    if (fault !== null) return show(request, reply, { form, errors: [fault], status: 422 });
    const basedOn = [wholeNumberOf(form, VERSION_FIELD) ?? 0];
    const made = await change(context, memberOf(request), request.params, { reason, basedOn });
    if (made.kind === 'refused') return show(request, reply, { form, ...shownOf(web, made.refusal) });
    return reply.redirect(made.value, 303);
  });

  async function show(
    request: FastifyRequest<Params>,
    reply: FastifyReply,
    { form, errors, meanwhile = null, status }: StepShown,
  ): Promise<FastifyReply> {
    const loaded = await marking.load(context, memberOf(request), request.params);
    if (loaded.kind === 'refused') return sendRefusal(web, request, reply, loaded.refusal);
    const addressOf = (other: MarkingStep): string =>
      `${marking.path.replace(/:([a-zA-Z]+)/g, (_, name: keyof MarkingParams) => encodeURIComponent(request.params[name]))}/${other}`;
    const view = {
      step,
      addresses: {
        'entered-in-error': addressOf('entered-in-error'),
        restoration: addressOf('restoration'),
      },
      entry: loaded.value,
      consequence: marking.consequence,
      fieldWords: marking.fieldWords,
      reason: form === null ? '' : textOf(form, 'reason'),
      // A rule that stands against it is about the entry, which has no field here.
      errors: errors.map((error) => (error.field === 'reason' ? error : { ...error, field: '' })),
      meanwhile,
    };
    return sendPage(reply, <MarkingView frame={frameOf(request, reply)} {...view} />, status);
  }
}
