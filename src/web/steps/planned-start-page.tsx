import type { FastifyReply, FastifyRequest } from 'fastify';
import { DELIVERY_MODES } from '../../domain/referral/closed-sets.js';
import { MODE_WORDS } from '../../domain/referral/words.js';
import type { Referral } from '../../domain/referral/referral.js';
import { correctReferral } from '../../usecases/referrals/change-referral.js';
import { Select } from '../components/choices.js';
import { DateField } from '../components/date-field.js';
import { Button, Form } from '../components/form.js';
import { Notice } from '../components/notice.js';
import { NumberField, TextField } from '../components/text-fields.js';
import { VERSION_FIELD, VersionField } from '../components/version-field.js';
import { choicesOf } from '../components/words.js';
import { sendErrorPage } from '../error-page.js';
import { typedDate, typedDateOf } from '../forms/date-entry.js';
import { entryReader } from '../forms/entry-reader.js';
import { errorAt } from '../forms/form-errors.js';
import { readForm, textOf, wholeNumberOf } from '../forms/form-values.js';
import { frameOf, sendPage } from '../frame.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { loadReferral } from './load-referral.js';
import type { ReferralParams } from './load-referral.js';
import { NEW_STEP, shownOf } from './step-shown.js';
import type { StepShown } from './step-shown.js';
import { StepPage } from './step-page.js';

const SESSIONS = { min: 1, max: 60 };
const WEEKS = { min: 1, max: 52 };

/** Stands in the history where a start is planned for the first time: nothing is corrected then. */
const FIRST_PLAN = 'Start planned';

/** The day on which somebody starts, and how their programme is planned. */
export function plannedStartPage(app: WebApp, web: Web): void {
  const { context } = web;
  const path = '/referrals/:referralId/planned-start';

  app.get<ReferralParams>(path, pageOf('page:planned-start'), (request, reply) =>
    show(request, reply, NEW_STEP),
  );

  app.post<ReferralParams>(path, pageOf('page:planned-start'), async (request, reply) => {
    const { referralId } = request.params;
    const form = readForm(request.body);
    const read = entryReader(form);
    const plannedStartOn = read.date('plannedStartOn', 'Give the day of the first class.');
    const deliveryMode = read.optionalChoice('deliveryMode', DELIVERY_MODES);
    const plannedSessions = read.optionalWhole('plannedSessions', SESSIONS);
    const plannedWeeks = read.optionalWhole('plannedWeeks', WEEKS);
    const reason = form.has('reason') ? read.line('reason', 500, 'Say why the plan is changed.') : FIRST_PLAN;
    if (plannedStartOn === null || reason === null || read.errors.length > 0) {
      return show(request, reply, { form, errors: read.errors, status: 422 });
    }
    const changes = { plannedStartOn, deliveryMode, plannedSessions, plannedWeeks };
    const basedOn = [wholeNumberOf(form, VERSION_FIELD) ?? 0];
    const correction = { changes, reason, basedOn };
    const made = await correctReferral(context, memberOf(request), referralId, correction);
    if (made.kind === 'done') return reply.redirect(`/referrals/${referralId}`, 303);
    return show(request, reply, { form, ...shownOf(web, made.refusal) });
  });

  async function show(
    request: FastifyRequest<ReferralParams>,
    reply: FastifyReply,
    { form, errors, meanwhile, status }: StepShown,
  ): Promise<FastifyReply> {
    const read = await loadReferral(context, memberOf(request), request.params.referralId);
    if (read.kind === 'refused') return sendErrorPage(request, reply, web.wordsFor(read.refusal));
    const { referral } = read.value;
    const frame = frameOf(request, reply);
    const title = 'Planned start';
    return sendPage(
      reply,
      <StepPage
        frame={frame}
        title={title}
        of={read.value}
        today={context.clock.today()}
        errors={errors}
        meanwhile={meanwhile}
      >
        {referral.closure !== null ? (
          <Notice kind="plain" title="The referral is closed">
            <p>No start can be planned.</p>
          </Notice>
        ) : (
          <Form frame={frame} action={`/referrals/${referral.id}/planned-start`} sending="whole">
            <VersionField version={referral.version} />
            <PlanFields referral={referral} form={form} errors={errors} />
            <div class="actions">
              <Button kind="primary">Record the plan</Button>
            </div>
          </Form>
        )}
      </StepPage>,
      status,
    );
  }
}

interface PlanFieldsProps extends Pick<StepShown, 'form' | 'errors'> {
  readonly referral: Referral;
}

function PlanFields({ referral, form, errors }: PlanFieldsProps): JSX.Element {
  const { plannedStartOn, deliveryMode, plannedSessions, plannedWeeks } = referral;
  const at = (name: string, held: string | number | null) => ({
    name,
    error: errorAt(errors, name),
    value: form === null ? String(held ?? '') : textOf(form, name),
  });
  return (
    <>
      <DateField
        name="plannedStartOn"
        label="First class on"
        value={form === null ? typedDate(plannedStartOn) : typedDateOf(form, 'plannedStartOn')}
        error={errorAt(errors, 'plannedStartOn')}
      />
      <Select
        {...at('deliveryMode', deliveryMode)}
        label="Delivered"
        none="Not decided"
        choices={choicesOf(DELIVERY_MODES, MODE_WORDS)}
      />
      <NumberField
        {...at('plannedSessions', plannedSessions)}
        label="Planned supervised sessions (optional)"
        hint="Left empty, the number that your team has set applies."
        maxlength={2}
      />
      <NumberField
        {...at('plannedWeeks', plannedWeeks)}
        label="Planned weeks (optional)"
        hint="Left empty, the number that your team has set applies."
        maxlength={2}
      />
      {plannedStartOn === null ? (
        ''
      ) : (
        <TextField
          {...at('reason', null)}
          label="Why the plan is changed"
          hint="Kept in the history."
          width="long"
          autocomplete="off"
          maxlength={500}
        />
      )}
    </>
  );
}
