import type { FastifyReply, FastifyRequest } from 'fastify';
import { latestClosedQuarter } from '../../domain/calendar/period.js';
import type { Refusal } from '../../domain/refusal/refusal.js';
import { makeRelease, previewRelease } from '../../usecases/releases/make-release.js';
import type { ReleaseDraft } from '../../usecases/releases/draft-release.js';
import { commissionersOfTeam } from '../../usecases/providers.js';
import { typedDate } from '../forms/date-entry.js';
import { NO_ERRORS } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { readForm } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import { frameOf, sendPage } from '../frame.js';
import { sendRefusal } from '../send-refusal.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { draftErrors, readDraftForm, withChoices } from './draft-form.js';
import { DraftView } from './draft-view.js';

interface Shown {
  readonly form: FormValues;
  readonly errors?: FormErrors;
  readonly draft?: ReleaseDraft;
  readonly status?: number;
}

/** The lead drafts a release, sees what is hidden and what the attack finds, merges, and releases. */
export function draftPages(app: WebApp, web: Web): void {
  const { context } = web;
  const page = pageOf('page:release-draft');
  const show = async (request: FastifyRequest, reply: FastifyReply, shown: Shown) => {
    const commissioners = await commissionersOfTeam(context, memberOf(request));
    const { form, errors = NO_ERRORS, draft = null, status = 200 } = shown;
    return sendPage(
      reply,
      <DraftView
        frame={frameOf(request, reply)}
        commissioners={commissioners}
        form={form}
        errors={errors}
        draft={draft}
      />,
      status,
    );
  };
  const refuse = (request: FastifyRequest, reply: FastifyReply, form: FormValues, refusal: Refusal) => {
    if (refusal.code === 'rules-broken') {
      return show(request, reply, { form, errors: draftErrors(refusal.faults), status: 422 });
    }
    if (refusal.code === 'release-exists') {
      const message = `Release ${refusal.existingNumber} is of this period: name it here to correct it.`;
      return show(request, reply, { form, errors: [{ field: 'corrects', message }], status: 409 });
    }
    return sendRefusal(web, request, reply, refusal);
  };
  const preview = (mergeAsProposed: boolean) => async (request: FastifyRequest, reply: FastifyReply) => {
    const form = readForm(request.body);
    const read = readDraftForm(form, mergeAsProposed);
    if (read.kind === 'faulty') return show(request, reply, { form, errors: read.errors, status: 422 });
    const outcome = await previewRelease(context, memberOf(request), read.request);
    if (outcome.kind === 'refused') return refuse(request, reply, form, outcome.refusal);
    const draft = outcome.value;
    return show(request, reply, { form: withChoices(form, draft.choices), draft });
  };
  const repeatable = { ...page, config: { isRepeatable: true } };

  app.get('/releases/draft', page, (request, reply) => {
    const today = context.clock.today();
    const { day, month, year } = typedDate(today);
    const form = new Map([
      ['period', [latestClosedQuarter(today).label]],
      ['mode', ['rounded']],
      ['asAt-day', [day]],
      ['asAt-month', [month]],
      ['asAt-year', [year]],
    ]);
    return show(request, reply, { form });
  });
  app.post('/releases/draft', repeatable, preview(false));
  app.post('/releases/draft/merged', repeatable, preview(true));

  app.post('/releases/new', page, async (request, reply) => {
    const form = readForm(request.body);
    const read = readDraftForm(form, false);
    if (read.kind === 'faulty') return show(request, reply, { form, errors: read.errors, status: 422 });
    const outcome = await makeRelease(context, memberOf(request), read.request);
    if (outcome.kind === 'refused') return refuse(request, reply, form, outcome.refusal);
    return reply.redirect(`/releases/${outcome.value.number}`, 303);
  });
}
