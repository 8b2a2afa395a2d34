import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Meanwhile } from '../../domain/history/history.js';
import type { Refusal } from '../../domain/refusal/refusal.js';
import { loadCorrectionSheet, openCorrectionSheet } from '../../usecases/assessments/correction-sheet.js';
import { correctAssessment } from '../../usecases/assessments/record-assessment.js';
import {
  correctedSince,
  discardCorrectionDraft,
  saveCorrectionDraft,
} from '../../usecases/drafts/correction-drafts.js';
import { VERSION_FIELD } from '../components/version-field.js';
import { readForm, textOf, wholeNumberOf } from '../forms/form-values.js';
import { reasonFault } from '../forms/line.js';
import { refusalErrors } from '../forms/refusal-errors.js';
import { sendRefusal } from '../send-refusal.js';
import { memberOf, pageOf, REPEATABLE } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { isAskingForWalk, readSheet } from './another-walk.js';
import { correctionAddress, missingReason } from './correction-view.js';
import { draftAnswer } from './draft-answer.js';
import { DRAFT_SAVED, staleNotice } from './draft-notices.js';
import type { StaleDraft } from './draft-notices.js';
import { sheetAddress } from './entry-page.js';
import { DRAFT_VERSION } from './field-names.js';
import { fieldsToKeep } from './first-values.js';
import { judge } from './judge.js';
import { sameContentNotice } from './same-content-notice.js';
import { begunFrom, recordedValues, showCorrection, showTooMuch } from './show-correction.js';
import type { Shown } from './show-correction.js';

interface Params {
  readonly Params: { readonly assessmentId: string };
}

/** The page on which an assessment of the record is corrected; the former version stays readable. */
export function correctionPage(app: WebApp, web: Web): void {
  const { context } = web;
  const path = '/assessments/:assessmentId/correction';
  const page = pageOf('page:assessment-correction');

  app.get<Params>(path, page, async (request, reply) => {
    const opened = await openCorrectionSheet(context, memberOf(request), request.params.assessmentId);
    if (opened.kind === 'refused') return sendRefusal(web, request, reply, opened.refusal);
    const { draft, assessment } = opened.value;
    const recorded = recordedValues(web, assessment);
    const isGoneOn = recorded !== null && draft.state === 'open';
    const values = isGoneOn ? new Map(Object.entries(draft.fields)) : recorded;
    return showCorrection(web, request, reply, opened.value, { values, isJudged: false });
  });

  // A reload after a check, or coming back from signing in.
  for (const step of ['check', 'draft', 'discard']) {
    app.get<Params>(`${path}/${step}`, page, (request, reply) =>
      reply.redirect(correctionAddress(request.params.assessmentId), 303),
    );
  }

  app.post<Params>(`${path}/check`, { ...page, ...REPEATABLE }, async (request, reply) => {
    const { found, values, stale, refusal } = await keep(request);
    if (found.kind === 'refused') return sendRefusal(web, request, reply, found.refusal);
    if (recordedValues(web, found.value.assessment) === null)
      return showTooMuch(web, request, reply, found.value);
    if (stale === null && refusal !== null) return sendRefusal(web, request, reply, refusal);
    const notice = stale === null ? DRAFT_SAVED : staleNotice(stale);
    const status = stale === null ? {} : { status: 409 };
    const isJudged = !isAskingForWalk(request.body);
    return showCorrection(web, request, reply, found.value, { values, isJudged, notice, ...status });
  });

  app.post<Params>(`${path}/draft`, { ...page, ...REPEATABLE }, async (request, reply) => {
    const { found, values, stale, refusal } = await keep(request);
    if (found.kind === 'refused') {
      const { status, detail } = web.wordsFor(found.refusal);
      return reply.code(status).send({ words: detail });
    }
    const { sheet, draft, assessment } = found.value;
    if (stale !== null) {
      return reply.code(409).send({ words: staleNotice(stale).text, version: draft.version });
    }
    if (refusal !== null) return reply.code(422).send({ words: web.wordsFor(refusal).detail });
    const actor = memberOf(request);
    const judged = await judge(web, actor, sheet, values);
    const meanwhile = await correctedSince(context.db, actor, assessment, draft.assessmentVersion);
    const alsoTold = meanwhile === null ? '' : ` ${correctedWords(meanwhile)}`;
    return reply.send(draftAnswer(draft, values, judged, missingReason(values), alsoTold));
  });

  app.post<Params>(`${path}/discard`, page, async (request, reply) => {
    const { assessmentId } = request.params;
    const version = wholeNumberOf(readForm(request.body), DRAFT_VERSION) ?? 0;
    const outcome = await discardCorrectionDraft(context, memberOf(request), assessmentId, version);
    if (outcome.kind === 'refused') return sendRefusal(web, request, reply, outcome.refusal);
    return reply.redirect(correctionAddress(assessmentId), 303);
  });

  app.post<Params>(path, page, async (request, reply) => {
    const actor = memberOf(request);
    const { assessmentId } = request.params;
    const found = await loadCorrectionSheet(context, actor, assessmentId);
    if (found.kind === 'refused') return sendRefusal(web, request, reply, found.refusal);
    if (recordedValues(web, found.value.assessment) === null)
      return showTooMuch(web, request, reply, found.value);
    const values = readForm(request.body);
    const { entry, errors, queries } = await judge(web, actor, found.value.sheet, values);
    const reason = textOf(values, 'reason');
    const fault = reasonFault('reason', reason);
    if (fault !== null || errors.length + queries.length > 0) {
      return showKept(request, reply, { isJudged: true, errors: fault === null ? [] : [fault] });
    }
    const basedOn = [wholeNumberOf(values, VERSION_FIELD) ?? 0];
    const draftVersion = wholeNumberOf(values, DRAFT_VERSION) ?? 0;
    const correction = { entry, reason, basedOn, draftVersion };
    const made = await correctAssessment(context, actor, assessmentId, correction);
    if (made.kind === 'done') {
      return reply.redirect(`${sheetAddress(found.value.sheet)}/recorded/${assessmentId}`, 303);
    }
    const { refusal } = made;
    const { status } = web.wordsFor(refusal);
    if (refusal.code === 'stale-draft') {
      const latest = await loadCorrectionSheet(context, actor, assessmentId);
      const shown = { values, isJudged: true, notice: staleNotice(refusal), status: 409 };
      return showCorrection(web, request, reply, latest.kind === 'done' ? latest.value : found.value, shown);
    }
    const notice = await sameContentNotice(web, actor, refusal);
    const isTold = refusal.code === 'changed-meanwhile' || notice !== null;
    const own = isTold ? [] : refusalErrors(web, refusal, (faults) => faults.map(ofTheWhole));
    return showKept(request, reply, { isJudged: true, errors: own, status, notice });
  });

  /** Keeps what was typed as the draft, not under the key of the form: it is taken when the correction is recorded. */
  async function keep(request: FastifyRequest<Params>) {
    const { accountId, role, teamId } = memberOf(request);
    const actor = { accountId, role, teamId };
    const { assessmentId } = request.params;
    const values = readSheet(request.body);
    const outcome = await saveCorrectionDraft(context, actor, assessmentId, {
      fields: fieldsToKeep(values),
      assessmentVersion: begunFrom(values),
      basedOn: [wholeNumberOf(values, DRAFT_VERSION) ?? 0],
    });
    const refusal: Refusal | null = outcome.kind === 'refused' ? outcome.refusal : null;
    const stale: StaleDraft | null = refusal?.code === 'stale-draft' ? refusal : null;
    return { found: await loadCorrectionSheet(context, actor, assessmentId), values, stale, refusal };
  }

  /** Shows what was typed once more, and keeps it on the server as well as on the page. */
  async function showKept(
    request: FastifyRequest<Params>,
    reply: FastifyReply,
    shown: Omit<Shown, 'values'>,
  ): Promise<FastifyReply> {
    const { found, values, stale } = await keep(request);
    if (found.kind === 'refused') return sendRefusal(web, request, reply, found.refusal);
    const notice = stale === null ? (shown.notice ?? null) : staleNotice(stale);
    return showCorrection(web, request, reply, found.value, { ...shown, values, notice });
  }
}

function correctedWords({ versions }: Meanwhile): string {
  const who = versions.at(-1)?.changedBy?.name ?? 'Somebody';
  return `${who} corrected this assessment meanwhile: open the page anew to compare before you record yours.`;
}

function ofTheWhole({ message }: { readonly message: string }): { field: string; message: string } {
  return { field: '', message };
}
