import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { readSearch } from '../../domain/patient/read-search.js';
import { mergePatients } from '../../usecases/patients/merge-patients.js';
import { findAlike, personWithReferrals, searchPeople } from '../../usecases/patients/search-people.js';
import type { FoundPerson } from '../../usecases/patients/search-people.js';
import { entryReader } from '../forms/entry-reader.js';
import { readForm, textOf, wholeNumberOf } from '../forms/form-values.js';
import { reasonFault } from '../forms/line.js';
import { frameOf, sendPage } from '../frame.js';
import { sendRefusal } from '../send-refusal.js';
import { NEW_STEP, shownOf } from '../steps/step-shown.js';
import type { StepShown } from '../steps/step-shown.js';
import { memberOf, pageOf, REPEATABLE } from '../web.js';
import type { Web, WebApp } from '../web.js';
import type { Pair } from './compare-table.js';
import { FindView } from './find-view.js';
import { FIRST_VERSION, MergeView, SECOND_VERSION } from './merge-view.js';

interface Params {
  readonly Params: { readonly patientId: string };
}

const Query = z.object({ with: z.string().nullable().catch(null).default(null) });
/** Other records shown at once. */
const FOUND_SHOWN = 10;

/** Pages by which two records of one person are found, compared and brought together. */
export function mergePages(app: WebApp, web: Web): void {
  const { context } = web;
  const path = '/patients/:patientId/merge';
  const page = pageOf('page:merge');

  app.get<Params>(path, page, async (request, reply) => {
    const { with: otherId } = Query.parse(request.query);
    if (otherId !== null) return show(request, reply, otherId, NEW_STEP);
    return showOthers(request, reply, '', (person) => findAlike(context, memberOf(request), person.patient));
  });

  app.get<Params>(`${path}/find`, page, (request, reply) =>
    reply.redirect(`/patients/${request.params.patientId}/merge`, 303),
  );

  app.post<Params>(`${path}/find`, { ...page, ...REPEATABLE }, (request, reply) => {
    const typed = textOf(readForm(request.body), 'q');
    return showOthers(request, reply, typed, async () => {
      const found = await searchPeople(context, memberOf(request), readSearch(typed), FOUND_SHOWN);
      return found.people;
    });
  });

  app.post<Params>(path, page, async (request, reply) => {
    const { patientId } = request.params;
    const form = readForm(request.body);
    const otherId = textOf(form, 'with');
    const read = entryReader(form);
    const keep = read.choice('keep', [patientId, otherId], 'Choose the record that is kept.');
    const reason = textOf(form, 'reason');
    const fault = reasonFault('reason', reason);
    const errors = fault === null ? read.errors : [...read.errors, fault];
    if (keep === null || errors.length > 0) {
      return show(request, reply, otherId, { form, errors, status: 422 });
    }
    const [first, second] = [FIRST_VERSION, SECOND_VERSION].map((name) => [wholeNumberOf(form, name) ?? 0]);
    const [basedOn = [], duplicateBasedOn = []] = keep === patientId ? [first, second] : [second, first];
    const duplicateId = keep === patientId ? otherId : patientId;
    const merge = { duplicateId, reason, basedOn, duplicateBasedOn };
    const made = await mergePatients(context, memberOf(request), keep, merge);
    if (made.kind === 'done') return reply.redirect(`/patients/${keep}/merges`, 303);
    return show(request, reply, otherId, { form, ...shownOf(web, made.refusal) });
  });

  async function showOthers(
    request: FastifyRequest<Params>,
    reply: FastifyReply,
    typed: string,
    find: (person: FoundPerson) => Promise<readonly FoundPerson[]>,
  ): Promise<FastifyReply> {
    const { patientId } = request.params;
    const person = await personWithReferrals(context, memberOf(request), patientId);
    if (person === null) return sendRefusal(web, request, reply, NO_SUCH_PATIENT);
    if (person.patient.mergedInto !== null) return reply.redirect(`/patients/${patientId}/merges`, 303);
    const others = (await find(person)).filter(({ patient }) => patient.id !== patientId);
    const view = { frame: frameOf(request, reply), person, typed, others, today: context.clock.today() };
    return sendPage(reply, <FindView {...view} />);
  }

  async function show(
    request: FastifyRequest<Params>,
    reply: FastifyReply,
    otherId: string,
    { form, errors, meanwhile = null, status }: StepShown,
  ): Promise<FastifyReply> {
    const pair = await pairOf(request, otherId);
    if (pair === null) return sendRefusal(web, request, reply, NO_SUCH_PATIENT);
    const typed = (name: string): string => (form === null ? '' : textOf(form, name));
    const view = {
      pair,
      today: context.clock.today(),
      keep: typed('keep'),
      reason: typed('reason'),
      // What stands against a merge is about both records.
      errors: errors.map((error) =>
        ['keep', 'reason'].includes(error.field) ? error : { ...error, field: '' },
      ),
      meanwhile,
    };
    return sendPage(reply, <MergeView frame={frameOf(request, reply)} {...view} />, status);
  }

  async function pairOf(request: FastifyRequest<Params>, otherId: string): Promise<Pair | null> {
    const actor = memberOf(request);
    const first = await personWithReferrals(context, actor, request.params.patientId);
    const second = await personWithReferrals(context, actor, otherId);
    if (first === null || second === null || first.patient.id === second.patient.id) return null;
    return { first, second };
  }
}

const NO_SUCH_PATIENT = { code: 'not-found', what: 'patient' } as const;
