import type { FastifyReply, FastifyRequest } from 'fastify';
import { britishDate } from '../../domain/calendar/british-date.js';
import { TRIAGE_DECISIONS } from '../../domain/referral/closed-sets.js';
import { TRIAGE_WORDS } from '../../domain/referral/step-words.js';
import { triageReferral } from '../../usecases/referrals/change-referral.js';
import { RadioGroup, Select } from '../components/choices.js';
import { DateField } from '../components/date-field.js';
import { Button, Form } from '../components/form.js';
import { Notice } from '../components/notice.js';
import { TextField } from '../components/text-fields.js';
import { VERSION_FIELD, VersionField } from '../components/version-field.js';
import { capital, choicesOf } from '../components/words.js';
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

const GRADES = { min: 1, max: 5 };

/** The decision whether the programme suits somebody; it is made once. */
export function triagePage(app: WebApp, web: Web): void {
  const { context } = web;

  app.get<ReferralParams>('/referrals/:referralId/triage', pageOf('page:triage'), (request, reply) =>
    show(request, reply, NEW_STEP),
  );

  app.post<ReferralParams>('/referrals/:referralId/triage', pageOf('page:triage'), async (request, reply) => {
    const { referralId } = request.params;
    const form = readForm(request.body);
    const read = entryReader(form);
    const decision = read.choice('decision', TRIAGE_DECISIONS, 'Choose the decision.');
    const reason = read.optionalText('reason', 500);
    const mrcGrade = read.optionalWhole('mrcGrade', GRADES);
    const decidedOn = read.date('decidedOn', 'Give the day of the decision.');
    if (decision === null || decidedOn === null || read.errors.length > 0) {
      return show(request, reply, { form, errors: read.errors, status: 422 });
    }
    const basedOn = [wholeNumberOf(form, VERSION_FIELD) ?? 0];
    const triage = { decision, decidedOn, reason, mrcGrade, basedOn };
    const made = await triageReferral(context, memberOf(request), referralId, triage);
    if (made.kind === 'done') return reply.redirect(nextAfter(referralId, decision), 303);
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
    const text = (name: string, begun = ''): string => (form === null ? begun : textOf(form, name));
    return sendPage(
      reply,
      <StepPage
        frame={frame}
        title="Triage"
        of={read.value}
        today={today}
        errors={errors}
        meanwhile={meanwhile}
      >
        {referral.triage !== null ? (
          <Notice kind="plain" title="Decided already">
            <p safe>
              {`${capital(TRIAGE_WORDS[referral.triage.decision])} on ${britishDate(referral.triage.decidedOn)}${referral.triage.reason === null ? '' : `: ${referral.triage.reason}`}.`}
            </p>
          </Notice>
        ) : (
          <Form frame={frame} action={`/referrals/${referral.id}/triage`} sending="whole">
            <VersionField version={referral.version} />
            <RadioGroup
              name="decision"
              label="Decision"
              value={text('decision')}
              error={errorAt(errors, 'decision')}
              choices={choicesOf(TRIAGE_DECISIONS, TRIAGE_WORDS)}
            />
            <TextField
              name="reason"
              label="Reason"
              hint="Needed where the referral is not accepted; where it was redirected, say where to."
              value={text('reason')}
              error={errorAt(errors, 'reason')}
              width="long"
              autocomplete="off"
              maxlength={500}
            />
            <Select
              name="mrcGrade"
              label="MRC dyspnoea grade"
              hint="1 to 5; not the modified scale, which begins with 0."
              none="Not known"
              value={text('mrcGrade', referral.mrcGrade === null ? '' : String(referral.mrcGrade))}
              error={errorAt(errors, 'mrcGrade')}
              choices={['1', '2', '3', '4', '5'].map((grade) => ({ value: grade, label: grade }))}
            />
            <DateField
              name="decidedOn"
              label="Decided on"
              value={form === null ? typedDate(today) : typedDateOf(form, 'decidedOn')}
              error={errorAt(errors, 'decidedOn')}
            />
            <div class="actions">
              <Button kind="primary">Record the decision</Button>
            </div>
          </Form>
        )}
      </StepPage>,
      status,
    );
  }
}

/** Who was accepted is booked next; otherwise the referral is closed. */
function nextAfter(referralId: string, decision: (typeof TRIAGE_DECISIONS)[number]): string {
  return `/referrals/${referralId}/${decision === 'accepted' ? 'offers' : 'closing'}`;
}
