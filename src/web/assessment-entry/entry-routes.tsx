import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import type { Refusal } from '../../domain/refusal/refusal.js';
import { TIMEPOINTS } from '../../domain/referral/closed-sets.js';
import { loadEntrySheet, openEntrySheet } from '../../usecases/assessments/entry-sheet.js';
import type { EntrySheet } from '../../usecases/assessments/entry-sheet.js';
import { recordAssessment } from '../../usecases/assessments/record-assessment.js';
import { discardDraft, saveDraft } from '../../usecases/drafts/keep-draft.js';
import type { DraftPlace } from '../../usecases/drafts/keep-draft.js';
import { sitesOfTeam } from '../../usecases/providers.js';
import type { FormValues } from '../forms/form-values.js';
import { readForm, wholeNumberOf } from '../forms/form-values.js';
import { frameOf, sendPage } from '../frame.js';
import { sendRefusal } from '../send-refusal.js';
import { memberOf, pageOf, REPEATABLE } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { isAskingForWalk, readSheet } from './another-walk.js';
import { draftAnswer } from './draft-answer.js';
import { DRAFT_SAVED, staleNotice } from './draft-notices.js';
import type { SheetNotice, StaleDraft } from './draft-notices.js';
import { EntryPage, sheetAddress } from './entry-page.js';
import { DRAFT_VERSION } from './field-names.js';
import { fieldsToKeep, firstValues } from './first-values.js';
import { judge } from './judge.js';
import { nextMissing } from './next-missing.js';
import { sameContentNotice } from './same-content-notice.js';

const Place = z.object({ referralId: z.uuid(), timepoint: z.enum(TIMEPOINTS) });
const NOT_FOUND: Refusal = { code: 'not-found', what: 'referral' };

/** The page on which a whole assessment is typed, and what it is sent to. */
export function entryRoutes(app: WebApp, web: Web): void {
  const { context } = web;
  const path = '/referrals/:referralId/assessments/:timepoint';
  const page = pageOf('page:assessment');

  app.get(path, page, async (request, reply) => {
    const place = placeOf(request);
    const opened = place === null ? null : await openEntrySheet(context, memberOf(request), place);
    if (opened === null) return sendRefusal(web, request, reply, NOT_FOUND);
    if (opened.kind === 'refused') return sendRefusal(web, request, reply, opened.refusal);
    const sheet = opened.value;
    const values = firstValues(sheet, context.clock.today());
    return show(web, request, reply, { sheet, values, isJudged: false });
  });

  // A reload after a check, or coming back from signing in.
  for (const step of ['check', 'draft', 'discard']) {
    app.get(`${path}/${step}`, page, (request, reply) =>
      reply.redirect(request.url.replace(/\/[a-z]+(?:\?.*)?$/, ''), 303),
    );
  }

  app.post(`${path}/check`, { ...page, ...REPEATABLE }, async (request, reply) => {
    const place = placeOf(request);
    const kept = place === null ? null : await keep(web, request, place);
    if (place === null || kept === null) return sendRefusal(web, request, reply, NOT_FOUND);
    if (kept.stale === null && kept.refusal !== null) return sendRefusal(web, request, reply, kept.refusal);
    const notice = kept.stale === null ? DRAFT_SAVED : staleNotice(kept.stale);
    const { sheet, values } = kept;
    return show(web, request, reply, { sheet, values, isJudged: !isAskingForWalk(request.body), notice });
  });

  app.post(`${path}/draft`, { ...page, ...REPEATABLE }, async (request, reply) => {
    const place = placeOf(request);
    const kept = place === null ? null : await keep(web, request, place);
    if (place === null || kept === null) return reply.code(404).send({ words: 'There is no such referral.' });
    const { sheet, values, stale, refusal } = kept;
    if (stale !== null) {
      return reply.code(409).send({ words: staleNotice(stale).text, version: sheet.draft.version });
    }
    if (refusal !== null) return reply.code(422).send({ words: web.wordsFor(refusal).detail });
    const judged = await judge(web, memberOf(request), sheet, values);
    return reply.send(draftAnswer(sheet.draft, values, judged, nextMissing(values)));
  });

  app.post(`${path}/discard`, page, async (request, reply) => {
    const place = placeOf(request);
    if (place === null) return sendRefusal(web, request, reply, NOT_FOUND);
    const version = wholeNumberOf(readForm(request.body), DRAFT_VERSION) ?? 0;
    const outcome = await discardDraft(context, memberOf(request), place, version);
    if (outcome.kind === 'refused') return sendRefusal(web, request, reply, outcome.refusal);
    return reply.redirect(request.url.replace(/\/discard$/, ''), 303);
  });

  app.post(path, page, async (request, reply) => {
    const place = placeOf(request);
    const actor = memberOf(request);
    const sheet = place === null ? null : await loadEntrySheet(context, actor, place);
    if (place === null || sheet === null) return sendRefusal(web, request, reply, NOT_FOUND);
    const values = readForm(request.body);
    const { entry, errors, queries } = await judge(web, actor, sheet, values);
    if (errors.length > 0 || queries.length > 0) {
      // What was typed is kept on the server as well as on the page.
      const kept = await keep(web, request, place);
      const notice = kept?.stale === null || kept === null ? null : staleNotice(kept.stale);
      return show(web, request, reply, { sheet: kept?.sheet ?? sheet, values, isJudged: true, notice });
    }
    const version = wholeNumberOf(values, DRAFT_VERSION) ?? 0;
    const outcome = await recordAssessment(context, actor, place.referralId, entry, version);
    if (outcome.kind === 'done') {
      return reply.redirect(`${sheetAddress(sheet)}/recorded/${outcome.value.id}`, 303);
    }
    const { refusal } = outcome;
    if (refusal.code === 'stale-draft') {
      return show(web, request, reply, { sheet, values, isJudged: true, notice: staleNotice(refusal) });
    }
    const notice = await sameContentNotice(web, actor, refusal);
    if (notice === null) return sendRefusal(web, request, reply, refusal);
    const kept = await keep(web, request, place);
    return show(web, request, reply, { sheet: kept?.sheet ?? sheet, values, isJudged: true, notice });
  });
}

function placeOf(request: FastifyRequest): DraftPlace | null {
  const place = Place.safeParse(request.params);
  return place.success ? place.data : null;
}

/** Keeps what was typed as the draft; null where there is no such referral. */
async function keep(
  { context }: Web,
  request: FastifyRequest,
  place: DraftPlace,
): Promise<{
  readonly sheet: EntrySheet;
  readonly values: FormValues;
  readonly stale: StaleDraft | null;
  readonly refusal: Refusal | null;
} | null> {
  // Not under the key of the form: it is taken when the assessment is recorded.
  const { accountId, role, teamId } = memberOf(request);
  const actor = { accountId, role, teamId };
  const values = readSheet(request.body);
  const basedOn = [wholeNumberOf(values, DRAFT_VERSION) ?? 0];
  const outcome = await saveDraft(context, actor, place, { fields: fieldsToKeep(values), basedOn });
  const sheet = await loadEntrySheet(context, actor, place);
  if (sheet === null) return null;
  const refusal = outcome.kind === 'refused' ? outcome.refusal : null;
  return { sheet, values, stale: refusal?.code === 'stale-draft' ? refusal : null, refusal };
}

interface Shown {
  readonly sheet: EntrySheet;
  readonly values: FormValues;
  /** Whether what is wrong is said: not before somebody asked for it. */
  readonly isJudged: boolean;
  readonly notice?: SheetNotice | null;
}

async function show(
  web: Web,
  request: FastifyRequest,
  reply: FastifyReply,
  shown: Shown,
): Promise<FastifyReply> {
  const { sheet, values, isJudged, notice = null } = shown;
  const actor = memberOf(request);
  const { figures, errors, queries } = await judge(web, actor, sheet, values);
  const isWrong = isJudged && errors.length + queries.length > 0;
  const state = {
    frame: frameOf(request, reply),
    sheet,
    sites: await sitesOfTeam(web.context, actor),
    values,
    errors: isJudged ? errors : [],
    queries: isJudged ? queries : [],
    figures,
    draft: sheet.draft,
  };
  const status = notice?.kind === 'warning' ? 409 : isWrong ? 422 : 200;
  return sendPage(reply, <EntryPage state={state} notice={notice} />, status);
}
