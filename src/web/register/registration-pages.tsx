import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import type { Fault } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import type { Referral, ReferralDetails } from '../../domain/referral/referral.js';
import { findAlike, personWithReferrals } from '../../usecases/patients/search-people.js';
import type { FoundPerson } from '../../usecases/patients/search-people.js';
import { commissionersOfTeam, sitesOfTeam } from '../../usecases/providers.js';
import { registerPersonWithReferral } from '../../usecases/referrals/register-person.js';
import { registerReferral } from '../../usecases/referrals/register-referral.js';
import { readDate, typedDate, typedDateOf } from '../forms/date-entry.js';
import { entryReader } from '../forms/entry-reader.js';
import { NO_ERRORS } from '../forms/form-errors.js';
import type { FormError, FormErrors } from '../forms/form-errors.js';
import { readForm, textOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import { refusalErrors } from '../forms/refusal-errors.js';
import { frameOf, sendPage } from '../frame.js';
import { memberOf, pageOf, REPEATABLE } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { NEW_PERSON, PERSON_FIELD } from './known-people.js';
import { readPerson, readReferral } from './read-registration.js';
import { LOOK_UP, REGISTER, RegistrationView } from './registration-view.js';
import type { Whose } from './registration-view.js';
import { typedValues } from './typed-values.js';

const PAGE = 'page:register-referral';

/** The page to be shown: what was typed, what is wrong with it, and whose referral it is. */
interface Shown {
  readonly form: FormValues;
  readonly errors: FormErrors;
  readonly whose: Whose;
}

const Query = z.object({ person: z.uuid().toLowerCase().nullable().catch(null).default(null) });

/** Registers a referral, of a person whom the team knows or a new one. */
export function registrationPages(app: WebApp, web: Web): void {
  const { context } = web;

  app.get(REGISTER, pageOf(PAGE), async (request, reply) => {
    const actor = memberOf(request);
    const { person: patientId } = Query.parse(request.query ?? {});
    const person = patientId === null ? null : await personWithReferrals(context, actor, patientId);
    const whose: Whose = person === null ? { kind: 'not-looked-up' } : { kind: 'chosen', person };
    return show(request, reply, { form: await newForm(request), errors: NO_ERRORS, whose }, 200);
  });

  app.post(LOOK_UP, { ...pageOf(PAGE), ...REPEATABLE }, async (request, reply) => {
    const form = readForm(request.body);
    const people = await alikeOf(request, form);
    const whose: Whose =
      people.length === 0 ? { kind: 'nobody-known' } : { kind: 'perhaps', people, chosen: '' };
    const isTyped = hasIdentity(form);
    const errors = isTyped ? NO_ERRORS : [NOTHING_TO_LOOK_UP];
    const shown: Whose = isTyped ? whose : { kind: 'not-looked-up' };
    return show(request, reply, { form, errors, whose: shown }, isTyped ? 200 : 422);
  });

  app.post(REGISTER, pageOf(PAGE), async (request, reply) => {
    const form = readForm(request.body);
    const chosen = textOf(form, PERSON_FIELD);
    const read = entryReader(form);
    if (chosen !== '' && chosen !== NEW_PERSON) return registerKnown(request, reply, form, chosen);
    const people = await alikeOf(request, form);
    const whose: Whose =
      people.length === 0 ? { kind: 'not-looked-up' } : { kind: 'perhaps', people, chosen };
    const patient = readPerson(read, form);
    const referral = readReferral(read, form);
    if (people.length > 0 && chosen === '') read.errors.unshift(SAY_WHOSE);
    if (patient === null || referral === null || read.errors.length > 0) {
      return show(request, reply, { form, errors: read.errors, whose }, 422);
    }
    const made = await registerPersonWithReferral(context, memberOf(request), { patient, referral });
    return answer(request, reply, made, { form, whose });
  });

  async function registerKnown(
    request: FastifyRequest,
    reply: FastifyReply,
    form: FormValues,
    patientId: string,
  ): Promise<FastifyReply> {
    const actor = memberOf(request);
    const read = entryReader(form);
    const referral: ReferralDetails | null = readReferral(read, form);
    // Whoever was opened by name has no fields of a person; whoever was chosen among some has.
    const isChosen = !form.has('familyName');
    const people = isChosen ? [] : await alikeOf(request, form);
    const person = isChosen ? await personWithReferrals(context, actor, patientId) : null;
    const whose: Whose =
      person === null ? { kind: 'perhaps', people, chosen: patientId } : { kind: 'chosen', person };
    if (referral === null) return show(request, reply, { form, errors: read.errors, whose }, 422);
    return answer(request, reply, await registerReferral(context, actor, patientId, referral), {
      form,
      whose,
    });
  }

  /** Leads to what was made, or says what was refused. */
  function answer(
    request: FastifyRequest,
    reply: FastifyReply,
    made: Outcome<Referral>,
    { form, whose }: Omit<Shown, 'errors'>,
  ): FastifyReply | Promise<FastifyReply> {
    if (made.kind === 'done') return reply.redirect(`/referrals/${made.value.id}`, 303);
    const errors = refusalErrors(web, made.refusal, errorsAtFields);
    return show(request, reply, { form, errors, whose }, 422);
  }

  async function show(
    request: FastifyRequest,
    reply: FastifyReply,
    { form, errors, whose }: Shown,
    status: number,
  ): Promise<FastifyReply> {
    const actor = memberOf(request);
    const view = {
      typed: typedValues(form),
      errors,
      whose,
      sites: await sitesOfTeam(context, actor),
      commissioners: await commissionersOfTeam(context, actor),
      today: context.clock.today(),
    };
    return sendPage(reply, <RegistrationView frame={frameOf(request, reply)} {...view} />, status);
  }

  /** What a new form begins with: nobody has been asked anything yet, and it was received today. */
  async function newForm(request: FastifyRequest): Promise<FormValues> {
    const actor = memberOf(request);
    const sites = await sitesOfTeam(context, actor);
    const commissioners = await commissionersOfTeam(context, actor);
    const today = typedDate(context.clock.today());
    const begun = {
      ...NOT_ASKED,
      'receivedOn-day': today.day,
      'receivedOn-month': today.month,
      'receivedOn-year': today.year,
      siteId: sites.length === 1 ? (sites[0]?.id ?? '') : '',
      commissionerId: commissioners.length === 1 ? (commissioners[0]?.id ?? '') : '',
    };
    return readForm(begun);
  }

  function alikeOf(request: FastifyRequest, form: FormValues): Promise<readonly FoundPerson[]> {
    const born = readDate(typedDateOf(form, 'bornOn'));
    return findAlike(context, memberOf(request), {
      nhsNumber: textOf(form, 'nhsNumber') || null,
      familyName: textOf(form, 'familyName') || null,
      givenName: textOf(form, 'givenName') || null,
      bornOn: born.kind === 'date' ? born.date : null,
    });
  }
}

const NOT_ASKED = {
  gender: 'not-known',
  ethnicCategory: '99',
  smokingStatus: 'not-known',
  interpreterNeed: 'not-known',
  livesAlone: 'not-known',
  homeOxygen: 'not-known',
} as const;

const SAY_WHOSE: FormError = {
  field: PERSON_FIELD,
  message: 'Your team may know this person already. Say whose referral it is.',
};

const NOTHING_TO_LOOK_UP: FormError = {
  field: 'nhsNumber',
  message: 'To look somebody up, give the NHS number, the family name, or the date of birth.',
};

function hasIdentity(form: FormValues): boolean {
  return ['nhsNumber', 'familyName', 'bornOn-year'].some((name) => textOf(form, name) !== '');
}

/** The last part of a pointer names the field: `/patient/bornOn` and `/bornOn` are one. */
function errorsAtFields(faults: readonly Fault[]): FormErrors {
  return faults.map(({ pointer, message }) => ({ field: pointer.split('/').at(-1) ?? '', message }));
}
