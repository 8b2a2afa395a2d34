import type { FastifyReply, FastifyRequest } from 'fastify';
import { readSearch } from '../../domain/patient/read-search.js';
import { ATTENDANCE_OUTCOMES } from '../../domain/referral/closed-sets.js';
import type { Refusal } from '../../domain/refusal/refusal.js';
import { exportRegister } from '../../usecases/exports/export-lists.js';
import { searchPeople } from '../../usecases/patients/search-people.js';
import { sitesOfTeam } from '../../usecases/providers.js';
import { markAttendances } from '../../usecases/sessions/keep-register.js';
import type { Mark } from '../../usecases/sessions/keep-register.js';
import { readClass } from '../../usecases/sessions/read-class.js';
import { reasonsGiven } from '../../usecases/sessions/reasons-given.js';
import type { ClassWithPeople } from '../../usecases/sessions/read-class.js';
import { VERSION_FIELD } from '../components/version-field.js';
import { sendErrorPage } from '../error-page.js';
import { reasonFault } from '../forms/line.js';
import { isTicked, readForm, textOf, wholeNumberOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import { frameOf, sendPage } from '../frame.js';
import { sendFile } from '../send-file.js';
import { memberOf, pageOf, REPEATABLE } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { ClassView } from './class-view.js';
import type { ClassNotes } from './class-notes.js';
import { REASON_FIELD, REASON_FOR_ALL } from './reason-field.js';
import type { RegisterChange } from './reason-field.js';

interface Params {
  readonly Params: { readonly sessionId: string };
}

/** People shown of a search on the page of a class. */
const FOUND_SHOWN = 8;

/** The register of a class: one tap for each person, and one for all where the service cancels it. */
export function classPage(app: WebApp, web: Web): void {
  const { context } = web;

  app.get<Params>('/classes/:sessionId', pageOf('page:class'), (request, reply) =>
    show(request, reply, request.params.sessionId, {}),
  );

  app.get<Params>('/classes/:sessionId/register.csv', pageOf('page:class'), async (request, reply) => {
    const outcome = await exportRegister(context, memberOf(request), request.params.sessionId);
    if (outcome.kind === 'refused') return sendErrorPage(request, reply, web.wordsFor(outcome.refusal));
    return sendFile(reply, outcome.value);
  });

  app.post<Params>('/classes/:sessionId', pageOf('page:class'), async (request, reply) => {
    const { sessionId } = request.params;
    const form = readForm(request.body);
    const actor = memberOf(request);
    const read = await readClass(context, actor, sessionId);
    if (read.kind === 'refused') return sendErrorPage(request, reply, web.wordsFor(read.refusal));
    const { people, session } = read.value;
    const isForAll = isTicked(form, 'all');
    const asksWhetherAll = isForAll && session.attendances.length > 0;
    if (asksWhetherAll && !isTicked(form, 'sure')) {
      return show(request, reply, sessionId, { asksWhetherAll }, 422);
    }
    const change = changeOf(form, isForAll ? REASON_FOR_ALL : REASON_FIELD);
    const marks = isForAll
      ? people.map(({ referralId }): Mark => ({ referralId, outcome: 'cancelled-by-service' }))
      : marksOf(form);
    if (marks.length === 0) {
      if (change.reason === null) return reply.redirect(`/classes/${sessionId}`, 303);
      return show(request, reply, sessionId, { change, faults: [TAP_MISSING] }, 422);
    }
    const fault = change.reason === null ? null : reasonFault(change.field, change.reason);
    if (fault !== null) {
      return show(request, reply, sessionId, { change, asksWhetherAll, errors: [fault], marks }, 422);
    }
    const basedOn = [wholeNumberOf(form, VERSION_FIELD) ?? 0];
    const { reason } = change;
    const marked = await markAttendances(context, actor, sessionId, { marks, basedOn, reason });
    if (marked.kind === 'done') {
      const [first] = marks;
      return reply.redirect(
        `/classes/${sessionId}${isForAll ? '' : `#person-${first?.referralId ?? ''}`}`,
        303,
      );
    }
    return showRefused(request, reply, sessionId, { marks, change, asksWhetherAll }, marked.refusal);
  });

  app.post<Params>('/classes/:sessionId/find', { ...pageOf('page:class'), ...REPEATABLE }, (request, reply) =>
    showFound(request, reply, request.params.sessionId, textOf(readForm(request.body), 'q')),
  );

  async function showRefused(
    request: FastifyRequest,
    reply: FastifyReply,
    sessionId: string,
    tapped: Pick<ClassNotes, 'change' | 'asksWhetherAll'> & { readonly marks: readonly Mark[] },
    refusal: Refusal,
  ): Promise<FastifyReply> {
    if (refusal.code === 'changed-meanwhile') {
      const { meanwhile } = refusal;
      const { marks, change } = tapped;
      return show(request, reply, sessionId, { stale: { meanwhile, marks }, change }, 412);
    }
    if (refusal.code !== 'rules-broken') return sendErrorPage(request, reply, web.wordsFor(refusal));
    const [ofReason, others] = [true, false].map((isOfReason) =>
      refusal.faults.filter(({ pointer }) => (pointer === '/reason') === isOfReason),
    );
    const field = tapped.change?.field ?? REASON_FIELD;
    const errors = ofReason?.map(({ message }) => ({ field, message })) ?? [];
    const faults = [...new Set(others?.map(({ message }) => message))];
    return show(request, reply, sessionId, { ...tapped, errors, faults }, 422);
  }

  async function showFound(
    request: FastifyRequest,
    reply: FastifyReply,
    sessionId: string,
    typed: string,
  ): Promise<FastifyReply> {
    const found = await searchPeople(context, memberOf(request), readSearch(typed), FOUND_SHOWN);
    return show(request, reply, sessionId, { search: { typed, found } });
  }

  async function show(
    request: FastifyRequest,
    reply: FastifyReply,
    sessionId: string,
    notes: ClassNotes,
    status = 200,
  ): Promise<FastifyReply> {
    const actor = memberOf(request);
    const read = await readClass(context, actor, sessionId);
    if (read.kind === 'refused') return sendErrorPage(request, reply, web.wordsFor(read.refusal));
    const siteName = await siteNameOf(request, read.value);
    const reasons = await reasonsGiven(context, actor);
    const view = { ...read.value, siteName, today: context.clock.today(), notes, reasons };
    return sendPage(reply, <ClassView frame={frameOf(request, reply)} {...view} />, status);
  }

  async function siteNameOf(request: FastifyRequest, { session }: ClassWithPeople): Promise<string> {
    const sites = await sitesOfTeam(context, memberOf(request));
    return sites.find(({ id }) => id === session.siteId)?.name ?? '';
  }
}

const TAP_MISSING = 'Tap what became of somebody: the reason alone changes nothing.';

/** Why a register is changed, as it was typed; null where nothing was. */
function changeOf(form: FormValues, field: string): RegisterChange {
  const typed = textOf(form, field);
  return { field, reason: typed === '' ? null : typed };
}

/** The mark of a tap, such as `{referral}:attended`; `none` takes the person off the register. Nothing else is a mark. */
function marksOf(form: FormValues): readonly Mark[] {
  const [referralId = '', typed = ''] = textOf(form, 'mark').split(':');
  const outcome = ATTENDANCE_OUTCOMES.find((each) => each === typed) ?? null;
  if (referralId === '' || (outcome === null && typed !== 'none')) return [];
  return [{ referralId, outcome }];
}
