import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import { OFFER_KINDS, OFFER_RESPONSES } from '../../domain/referral/closed-sets.js';
import { OFFER_WORDS, RESPONSE_WORDS } from '../../domain/referral/step-words.js';
import { recordOffer } from '../../usecases/referrals/change-referral.js';
import { RadioGroup } from '../components/choices.js';
import { DateField } from '../components/date-field.js';
import { Button, Form } from '../components/form.js';
import { Notice } from '../components/notice.js';
import { VERSION_FIELD, VersionField } from '../components/version-field.js';
import { choicesOf } from '../components/words.js';
import { sendErrorPage } from '../error-page.js';
import { typedDate } from '../forms/date-entry.js';
import { entryReader } from '../forms/entry-reader.js';
import { errorAt } from '../forms/form-errors.js';
import { readForm, wholeNumberOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import { frameOf, sendPage } from '../frame.js';
import { typedValues } from '../register/typed-values.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { loadReferral } from './load-referral.js';
import type { ReferralOfPerson, ReferralParams } from './load-referral.js';
import { OffersMade } from './offers-made.js';
import { NEW_STEP, shownOf } from './step-shown.js';
import type { StepShown } from './step-shown.js';
import { StepPage } from './step-page.js';

const Query = z.object({ answer: z.string().nullable().catch(null).default(null) });

/** Offers of an assessment or of a place in the programme, with what became of them. */
export function offersPage(app: WebApp, web: Web): void {
  const { context } = web;

  app.get<ReferralParams>('/referrals/:referralId/offers', pageOf('page:offers'), (request, reply) =>
    show(request, reply, NEW_STEP),
  );

  app.post<ReferralParams>('/referrals/:referralId/offers', pageOf('page:offers'), async (request, reply) => {
    const { referralId } = request.params;
    const form = readForm(request.body);
    const read = entryReader(form);
    const kind = read.choice('kind', OFFER_KINDS, 'Choose what was offered.');
    const offeredOn = read.date('offeredOn', 'Give the day of the offer.');
    const appointmentOn = read.optionalDate('appointmentOn');
    const response = read.choice('response', OFFER_RESPONSES, 'Choose the answer, or awaiting reply.');
    const respondedOn = read.optionalDate('respondedOn');
    if (kind === null || offeredOn === null || response === null || read.errors.length > 0) {
      return show(request, reply, { form, errors: read.errors, status: 422 });
    }
    const basedOn = [wholeNumberOf(form, VERSION_FIELD) ?? 0];
    const offer = { kind, offeredOn, appointmentOn, response, respondedOn, basedOn };
    const made = await recordOffer(context, memberOf(request), referralId, offer);
    if (made.kind === 'done') return reply.redirect(`/referrals/${referralId}/offers`, 303);
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
    const today = context.clock.today();
    const frame = frameOf(request, reply);
    const { answer } = Query.parse(request.query ?? {});
    const typed = typedValues(form ?? begunForm(read.value, answer, today));
    return sendPage(
      reply,
      <StepPage
        frame={frame}
        title="Offers"
        of={read.value}
        today={today}
        errors={errors}
        meanwhile={meanwhile}
      >
        <OffersMade referral={referral} />
        {referral.closure !== null ? (
          <Notice kind="plain" title="The referral is closed">
            <p>Nothing more can be offered.</p>
          </Notice>
        ) : (
          <Form frame={frame} action={`/referrals/${referral.id}/offers`} sending="whole">
            <VersionField version={referral.version} />
            <h2>Record an offer</h2>
            <RadioGroup
              name="kind"
              label="What is offered"
              value={typed.text('kind')}
              error={errorAt(errors, 'kind')}
              choices={choicesOf(OFFER_KINDS, OFFER_WORDS)}
            />
            <DateField
              name="offeredOn"
              label="Offered on"
              value={typed.date('offeredOn')}
              error={errorAt(errors, 'offeredOn')}
            />
            <DateField
              name="appointmentOn"
              label="For the day (optional)"
              hint="The day of the assessment, or of the first class."
              value={typed.date('appointmentOn')}
              error={errorAt(errors, 'appointmentOn')}
            />
            <RadioGroup
              name="response"
              label="Answer"
              value={typed.text('response')}
              error={errorAt(errors, 'response')}
              choices={choicesOf(OFFER_RESPONSES, RESPONSE_WORDS)}
            />
            <DateField
              name="respondedOn"
              label="Answered on (optional)"
              value={typed.date('respondedOn')}
              error={errorAt(errors, 'respondedOn')}
            />
            <div class="actions">
              <Button kind="primary">Record the offer</Button>
            </div>
          </Form>
        )}
      </StepPage>,
      status,
    );
  }
}

/** A new offer is made today, of what comes next; an answer is to the offer that waits for it. */
function begunForm(
  { referral, stage }: ReferralOfPerson,
  answerTo: string | null,
  today: PlainDate,
): FormValues {
  const offer = referral.offers.find(({ id }) => id === answerTo);
  const kind = stage === 'awaiting-start' ? 'programme' : 'assessment';
  return readForm({
    kind: offer?.kind ?? kind,
    response: offer === undefined ? 'awaiting-reply' : '',
    ...dateFields('offeredOn', offer?.offeredOn ?? today),
    ...dateFields('appointmentOn', offer?.appointmentOn ?? null),
    ...dateFields('respondedOn', offer === undefined ? null : today),
  });
}

function dateFields(name: string, date: PlainDate | null): Readonly<Record<string, string>> {
  const { day, month, year } = typedDate(date);
  return { [`${name}-day`]: day, [`${name}-month`]: month, [`${name}-year`]: year };
}
