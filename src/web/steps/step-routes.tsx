import { escapeHtml } from '@kitajs/html';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Referral } from '../../domain/referral/referral.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import type { Context, TeamMember } from '../../usecases/context.js';
import { Button, Form } from '../components/form.js';
import { VERSION_FIELD, VersionField } from '../components/version-field.js';
import { sendErrorPage } from '../error-page.js';
import { typedDate } from '../forms/date-entry.js';
import { entryReader } from '../forms/entry-reader.js';
import type { EntryReader } from '../forms/entry-reader.js';
import { errorAt } from '../forms/form-errors.js';
import { readForm, wholeNumberOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import { frameOf, sendPage } from '../frame.js';
import { typedValues } from '../register/typed-values.js';
import type { TypedValues } from '../register/typed-values.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { loadReferral } from './load-referral.js';
import type { ReferralOfPerson, ReferralParams } from './load-referral.js';
import { NEW_STEP, shownOf } from './step-shown.js';
import type { StepShown } from './step-shown.js';
import { StepPage } from './step-page.js';

/** What the fields of a step show, each by its name. */
export interface StepFields {
  readonly referral: Referral;
  readonly text: (name: string) => {
    readonly name: string;
    readonly value: string;
    readonly error: string | null;
  };
  readonly date: (name: string) => {
    readonly name: string;
    readonly value: ReturnType<TypedValues['date']>;
    readonly error: string | null;
  };
}

/** The form of a step as it was sent. */
export interface SentStep {
  readonly context: Context;
  readonly actor: TeamMember;
  readonly referralId: string;
  readonly form: FormValues;
  readonly read: EntryReader;
  readonly basedOn: readonly number[];
}

/** One step of a referral: what its page asks, and what becomes of the answers. */
export interface Step {
  /** Last part of the address of its page. */
  readonly slug: string;
  readonly pageId: Parameters<typeof pageOf>[0];
  readonly title: string;
  readonly button: string;
  /** What stands in the fields to begin with. */
  readonly begun: (
    of: ReferralOfPerson,
    today: PlainDate,
    query: unknown,
  ) => Readonly<Record<string, string>>;
  /** What stands above the form. */
  readonly Before?: (props: { readonly referral: Referral }) => JSX.Element;
  /** Whether the step can be taken still. */
  readonly isOpen: (referral: Referral) => boolean;
  /** What stands in place of the form where it cannot. */
  readonly Over: (props: { readonly referral: Referral }) => JSX.Element;
  readonly Fields: (props: StepFields) => JSX.Element;
  /** Carries the step out; null where something is wrong with what was typed, which the reader of the form tells. */
  readonly record: (sent: SentStep) => Promise<Outcome<Referral>> | null;
  /** Where it goes on, below the address of the referral. */
  readonly next: (form: FormValues) => string;
}

/** The page of a step, and what its form is sent to. */
export function stepRoutes(app: WebApp, web: Web, step: Step): void {
  const { context } = web;
  const path = `/referrals/:referralId/${step.slug}`;
  const page = pageOf(step.pageId);

  app.get<ReferralParams>(path, page, (request, reply) => show(request, reply, NEW_STEP));

  app.post<ReferralParams>(path, page, async (request, reply) => {
    const { referralId } = request.params;
    const form = readForm(request.body);
    const read = entryReader(form);
    const basedOn = [wholeNumberOf(form, VERSION_FIELD) ?? 0];
    const made = await step.record({ context, actor: memberOf(request), referralId, form, read, basedOn });
    if (made === null) return show(request, reply, { form, errors: read.errors, status: 422 });
    if (made.kind === 'done') return reply.redirect(`/referrals/${referralId}${step.next(form)}`, 303);
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
    const typed = typedValues(form ?? readForm(step.begun(read.value, today, request.query)));
    const { Before, Fields, Over } = step;
    return sendPage(
      reply,
      <StepPage {...{ frame, today, errors, meanwhile }} title={step.title} of={read.value}>
        {Before === undefined ? '' : <Before referral={referral} />}
        {!step.isOpen(referral) ? (
          <Over referral={referral} />
        ) : (
          <Form frame={frame} action={`/referrals/${referral.id}/${step.slug}`} sending="whole">
            <VersionField version={referral.version} />
            <Fields
              referral={referral}
              text={(name) => ({ name, value: typed.text(name), error: errorAt(errors, name) })}
              date={(name) => ({ name, value: typed.date(name), error: errorAt(errors, name) })}
            />
            <div class="actions">
              <Button kind="primary">{escapeHtml(step.button)}</Button>
            </div>
          </Form>
        )}
      </StepPage>,
      status,
    );
  }
}

/** The three fields of a date, to begin with. */
export function dateFields(name: string, date: PlainDate | null): Readonly<Record<string, string>> {
  const { day, month, year } = typedDate(date);
  return { [`${name}-day`]: day, [`${name}-month`]: month, [`${name}-year`]: year };
}
