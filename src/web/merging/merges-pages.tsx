import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Refusal } from '../../domain/refusal/refusal.js';
import { listMerges } from '../../usecases/patients/list-merges.js';
import type { NamedMerge } from '../../usecases/patients/list-merges.js';
import { undoMerge } from '../../usecases/patients/merge-patients.js';
import { personWithReferrals } from '../../usecases/patients/search-people.js';
import type { FoundPerson } from '../../usecases/patients/search-people.js';
import { readForm, textOf, wholeNumberOf } from '../forms/form-values.js';
import { reasonFault } from '../forms/line.js';
import { frameOf, sendPage } from '../frame.js';
import { sendRefusal } from '../send-refusal.js';
import { NEW_STEP, shownOf } from '../steps/step-shown.js';
import type { StepShown } from '../steps/step-shown.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import type { Pair } from './compare-table.js';
import { FIRST_VERSION, SECOND_VERSION } from './merge-view.js';
import { MergesView } from './merges-view.js';
import { UndoView } from './undo-view.js';

interface Params {
  readonly Params: { readonly patientId: string };
}
interface MergeParams {
  readonly Params: { readonly patientId: string; readonly mergeId: string };
}

/** The merges of a record, and the page by which one is undone. */
export function mergesPages(app: WebApp, web: Web): void {
  const { context } = web;
  const page = pageOf('page:merge');

  app.get<Params>('/patients/:patientId/merges', page, async (request, reply) => {
    const actor = memberOf(request);
    const { patientId } = request.params;
    const listed = await listMerges(context, actor, patientId);
    const person = await personWithReferrals(context, actor, patientId);
    if (listed.kind === 'refused' || person === null) {
      return sendRefusal(web, request, reply, { code: 'not-found', what: 'patient' });
    }
    const merges: { readonly merge: NamedMerge; readonly other: FoundPerson | null }[] = [];
    for (const merge of listed.value) {
      const otherId = merge.survivorId === patientId ? merge.duplicateId : merge.survivorId;
      merges.push({ merge, other: await personWithReferrals(context, actor, otherId) });
    }
    const view = { frame: frameOf(request, reply), person, merges, today: context.clock.today() };
    return sendPage(reply, <MergesView {...view} />);
  });

  const path = '/patients/:patientId/merges/:mergeId/undo';
  app.get<MergeParams>(path, page, (request, reply) => show(request, reply, NEW_STEP));

  app.post<MergeParams>(path, page, async (request, reply) => {
    const { patientId, mergeId } = request.params;
    const form = readForm(request.body);
    const reason = textOf(form, 'reason');
    const fault = reasonFault('reason', reason);
    if (fault !== null) return show(request, reply, { form, errors: [fault], status: 422 });
    const basedOn = [wholeNumberOf(form, FIRST_VERSION) ?? 0];
    const duplicateBasedOn = [wholeNumberOf(form, SECOND_VERSION) ?? 0];
    const undoing = { mergeId, reason, basedOn, duplicateBasedOn };
    const made = await undoMerge(context, memberOf(request), patientId, undoing);
    if (made.kind === 'done') return reply.redirect(`/patients/${patientId}/merges`, 303);
    return show(request, reply, { form, ...shownOf(web, made.refusal) });
  });

  async function show(
    request: FastifyRequest<MergeParams>,
    reply: FastifyReply,
    { form, errors, meanwhile = null, status }: StepShown,
  ): Promise<FastifyReply> {
    const found = await mergeAndPair(request);
    if (found === null) return sendRefusal(web, request, reply, NO_SUCH_MERGE);
    const view = {
      ...found,
      today: context.clock.today(),
      reason: form === null ? '' : textOf(form, 'reason'),
      errors: errors.map((error) => (error.field === 'reason' ? error : { ...error, field: '' })),
      meanwhile,
    };
    return sendPage(reply, <UndoView frame={frameOf(request, reply)} {...view} />, status);
  }

  /** The merge with the record that is kept first; null where the record was not the one that is kept. */
  async function mergeAndPair(
    request: FastifyRequest<MergeParams>,
  ): Promise<{ readonly merge: NamedMerge; readonly pair: Pair } | null> {
    const actor = memberOf(request);
    const { patientId, mergeId } = request.params;
    const listed = await listMerges(context, actor, patientId);
    const merge =
      listed.kind === 'done'
        ? listed.value.find(({ id, survivorId }) => id === mergeId && survivorId === patientId)
        : undefined;
    if (merge === undefined) return null;
    const first = await personWithReferrals(context, actor, merge.survivorId);
    const second = await personWithReferrals(context, actor, merge.duplicateId);
    return first === null || second === null ? null : { merge, pair: { first, second } };
  }
}

const NO_SUCH_MERGE: Refusal = { code: 'not-found', what: 'merge' };
