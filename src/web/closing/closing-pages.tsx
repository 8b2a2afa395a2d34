import type { FastifyReply, FastifyRequest } from 'fastify';
import { mayOpen } from '../../auth/access.js';
import { CLOSURE_REASONS } from '../../domain/referral/closed-sets.js';
import type { Meanwhile } from '../../domain/history/history.js';
import { LETTER_KINDS } from '../../reports/letters/letter-model.js';
import { getLetter } from '../../usecases/letters/get-letter.js';
import { closeReferral } from '../../usecases/referrals/change-referral.js';
import { openClosingSheet } from '../../usecases/referrals/closing-sheet.js';
import { VERSION_FIELD } from '../components/version-field.js';
import { typedDate, typedDateOf, NO_DATE } from '../forms/date-entry.js';
import { entryReader } from '../forms/entry-reader.js';
import type { EntryReader } from '../forms/entry-reader.js';
import { errorsOf, NO_ERRORS } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { readForm, textOf, wholeNumberOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import { refusalErrors } from '../forms/refusal-errors.js';
import { frameOf, sendPage } from '../frame.js';
import { sendRefusal } from '../send-refusal.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { ClosingView } from './closing-view.js';
import type { ShownLetter, TypedClosing } from './closing-view.js';

interface Params {
  readonly Params: { readonly referralId: string };
}

/** Room for a note, as the API has it. */
const LONGEST_NOTE = 2000;

/** The closing of a referral: its reason, the plan that was given, and then both letters. */
export function closingPages(app: WebApp, web: Web): void {
  const { context } = web;
  const path = '/referrals/:referralId/closing';

  app.get<Params>(path, pageOf('page:closing'), (request, reply) =>
    show(request, reply, request.params.referralId, { errors: NO_ERRORS }),
  );

  app.post<Params>(path, pageOf('page:closing'), async (request, reply) => {
    const { referralId } = request.params;
    const form = readForm(request.body);
    const read = entryReader(form);
    const closedOn = read.date('closedOn', 'Give the day on which the referral was closed.');
    const reason = read.choice('reason', CLOSURE_REASONS, 'Choose the reason.');
    const exercisePlanGivenOn = planOf(read, form);
    const note = read.optionalText('note', LONGEST_NOTE);
    const typed = typedOf(form);
    if (closedOn === null || reason === null || read.errors.length > 0) {
      return show(request, reply, referralId, { typed, errors: read.errors }, 422);
    }
    const basedOn = [wholeNumberOf(form, VERSION_FIELD) ?? 0];
    const ending = { closedOn, reason, note, exercisePlanGivenOn, basedOn };
    const closed = await closeReferral(context, memberOf(request), referralId, ending);
    if (closed.kind === 'done') return reply.redirect(`/referrals/${referralId}/closing`, 303);
    const { refusal } = closed;
    if (refusal.code === 'not-found') return sendRefusal(web, request, reply, refusal);
    if (refusal.code === 'changed-meanwhile') {
      return show(
        request,
        reply,
        referralId,
        { typed, errors: NO_ERRORS, meanwhile: refusal.meanwhile },
        412,
      );
    }
    return show(request, reply, referralId, { typed, errors: refusalErrors(web, refusal, errorsOf) }, 422);
  });

  async function show(
    request: FastifyRequest,
    reply: FastifyReply,
    referralId: string,
    given: { readonly typed?: TypedClosing; readonly errors: FormErrors; readonly meanwhile?: Meanwhile },
    status = 200,
  ): Promise<FastifyReply> {
    const actor = memberOf(request);
    const sheet = await openClosingSheet(context, actor, referralId);
    if (sheet.kind === 'refused') return sendRefusal(web, request, reply, sheet.refusal);
    const { referral } = sheet.value;
    const nothingYet = { ...NOTHING_TYPED, closedOn: typedDate(context.clock.today()) };
    const { typed = nothingYet, errors, meanwhile = null } = given;
    const letters = referral.closure === null ? [] : await lettersOf(request, referralId);
    const view = { ...sheet.value, today: context.clock.today(), typed, errors, meanwhile, letters };
    return sendPage(reply, <ClosingView frame={frameOf(request, reply)} {...view} />, status);
  }

  /** Both letters, or why there is none; nothing for a role that sees no scores. */
  async function lettersOf(request: FastifyRequest, referralId: string): Promise<readonly ShownLetter[]> {
    const actor = memberOf(request);
    if (!mayOpen(actor.role, 'page:letter')) return [];
    const letters: ShownLetter[] = [];
    for (const kind of LETTER_KINDS) {
      const letter = await getLetter(context, actor, referralId, kind);
      letters.push(
        letter.kind === 'done'
          ? { kind, letter: letter.value }
          : { kind, why: web.wordsFor(letter.refusal).detail },
      );
    }
    return letters;
  }
}

/** The day on which a plan was given; null where none was. What is wrong stands at the question or at the date. */
function planOf(read: EntryReader, form: FormValues): ReturnType<EntryReader['date']> {
  // A plan that is recorded already is not asked for again.
  if (textOf(form, 'planKnown') === 'yes') return null;
  const plan = read.choice('plan', ['yes', 'no'], 'Say whether a written exercise plan was given.');
  return plan === 'yes' ? read.date('exercisePlanGivenOn', 'Give the day of the plan.') : null;
}

const NOTHING_TYPED: TypedClosing = {
  closedOn: NO_DATE,
  reason: '',
  plan: '',
  exercisePlanGivenOn: NO_DATE,
  note: '',
};

function typedOf(form: FormValues): TypedClosing {
  return {
    closedOn: typedDateOf(form, 'closedOn'),
    reason: textOf(form, 'reason'),
    plan: textOf(form, 'plan'),
    exercisePlanGivenOn: typedDateOf(form, 'exercisePlanGivenOn'),
    note: textOf(form, 'note'),
  };
}
