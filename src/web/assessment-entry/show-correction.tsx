import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Assessment } from '../../domain/assessment/assessment.js';
import type { CorrectionSheet } from '../../usecases/assessments/correction-sheet.js';
import { correctedSince } from '../../usecases/drafts/correction-drafts.js';
import { sitesOfTeam } from '../../usecases/providers.js';
import type { FormErrors } from '../forms/form-errors.js';
import { wholeNumberOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import { frameOf, sendPage } from '../frame.js';
import { memberOf } from '../web.js';
import type { Web } from '../web.js';
import { CorrectionView } from './correction-view.js';
import type { SheetNotice } from './draft-notices.js';
import { BEGUN_FROM } from './field-names.js';
import { judge } from './judge.js';
import { valuesOfEntry } from './values-of-entry.js';

/** How the page of a correction is shown. */
export interface Shown {
  /** Null where the page has no room for all of the assessment. */
  readonly values: FormValues | null;
  readonly isJudged: boolean;
  readonly errors?: FormErrors;
  readonly notice?: SheetNotice | null;
  readonly status?: number;
}

/**
 * Shows the page of a correction. What was corrected since the typing began is told each time, until it is recorded or
 * thrown away: the next sending is taken as knowing of it.
 */
export async function showCorrection(
  web: Web,
  request: FastifyRequest,
  reply: FastifyReply,
  { assessment, sheet, draft }: CorrectionSheet,
  { values, isJudged, errors: own = [], notice = null, status }: Shown,
): Promise<FastifyReply> {
  const { context } = web;
  const actor = memberOf(request);
  const typed: FormValues = values ?? new Map<string, readonly string[]>();
  const judged = await judge(web, actor, sheet, typed);
  const [errors, queries] = isJudged ? [[...judged.errors, ...own], judged.queries] : [[], []];
  const isSent = request.method === 'POST';
  const opened = draft.state === 'open' ? draft.assessmentVersion : assessment.version;
  const begun = isSent ? begunFrom(typed) : opened;
  const meanwhile = values === null ? null : await correctedSince(context.db, actor, assessment, begun);
  const state = {
    frame: frameOf(request, reply),
    sheet,
    sites: await sitesOfTeam(context, actor),
    values: typed,
    errors,
    queries,
    figures: values === null ? {} : judged.figures,
    draft,
  };
  const view = { state, assessment, begunFrom: begun, isSent, isTooMuch: values === null, meanwhile, notice };
  const isWrong = errors.length + queries.length > 0;
  return sendPage(reply, <CorrectionView {...view} />, status ?? (isWrong ? 422 : 200));
}

/** Says that the page has no room for all of the assessment. */
export function showTooMuch(
  web: Web,
  request: FastifyRequest,
  reply: FastifyReply,
  corrected: CorrectionSheet,
): Promise<FastifyReply> {
  return showCorrection(web, request, reply, corrected, { values: null, isJudged: false, status: 409 });
}

/** What stands in the fields when nothing was typed; null where the page has no room for all of it. */
export function recordedValues({ context }: Pick<Web, 'context'>, { entry }: Assessment): FormValues | null {
  return valuesOfEntry(entry, context.clock.today());
}

/** The version that the typing began with, as the page says; 0 where it says none. */
export function begunFrom(values: FormValues): number {
  return wholeNumberOf(values, BEGUN_FROM) ?? 0;
}
