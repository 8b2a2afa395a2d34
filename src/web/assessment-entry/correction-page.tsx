import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Assessment } from '../../domain/assessment/assessment.js';
import type { Meanwhile } from '../../domain/history/history.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { loadEntrySheet } from '../../usecases/assessments/entry-sheet.js';
import type { EntrySheet } from '../../usecases/assessments/entry-sheet.js';
import { correctAssessment, getAssessment } from '../../usecases/assessments/record-assessment.js';
import { sitesOfTeam } from '../../usecases/providers.js';
import { VERSION_FIELD } from '../components/version-field.js';
import type { FormErrors } from '../forms/form-errors.js';
import { isTicked, readForm, textOf, wholeNumberOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import { reasonFault } from '../forms/line.js';
import { refusalErrors } from '../forms/refusal-errors.js';
import { frameOf, sendPage } from '../frame.js';
import { sendRefusal } from '../send-refusal.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { CorrectionView } from './correction-view.js';
import { sheetAddress } from './entry-page.js';
import { judge } from './judge.js';
import { valuesOfEntry } from './values-of-entry.js';

interface Params {
  readonly Params: { readonly assessmentId: string };
}

/** An assessment of the record with the sheet that it is judged on: that of its referral without itself. */
interface Corrected {
  readonly assessment: Assessment;
  readonly sheet: EntrySheet;
}

interface Shown {
  readonly values: FormValues | null;
  readonly isJudged: boolean;
  readonly errors?: FormErrors;
  readonly meanwhile?: Meanwhile | null;
  readonly status?: number;
}

/** The page on which an assessment of the record is corrected; the former version stays readable. */
export function correctionPage(app: WebApp, web: Web): void {
  const { context } = web;
  const path = '/assessments/:assessmentId/correction';
  const page = pageOf('page:assessment-correction');

  app.get<Params>(path, page, async (request, reply) => {
    const found = await find(request);
    if (found.kind === 'refused') return sendRefusal(web, request, reply, found.refusal);
    const values = valuesOfEntry(found.value.assessment.entry, context.clock.today());
    return show(request, reply, found.value, { values, isJudged: false });
  });

  app.post<Params>(path, page, async (request, reply) => {
    const found = await find(request);
    if (found.kind === 'refused') return sendRefusal(web, request, reply, found.refusal);
    const { assessment, sheet } = found.value;
    const isTooMuch = valuesOfEntry(assessment.entry, context.clock.today()) === null;
    if (isTooMuch) {
      return show(request, reply, found.value, { values: null, isJudged: false, status: 409 });
    }
    const values = readForm(request.body);
    const actor = memberOf(request);
    const { entry, errors, queries } = await judge(web, actor, sheet, values);
    if (isTicked(values, 'check')) return show(request, reply, found.value, { values, isJudged: true });
    const reason = textOf(values, 'reason');
    const fault = reasonFault('reason', reason);
    if (fault !== null || errors.length + queries.length > 0) {
      const own = fault === null ? [] : [fault];
      return show(request, reply, found.value, { values, isJudged: true, errors: own });
    }
    const basedOn = [wholeNumberOf(values, VERSION_FIELD) ?? 0];
    const made = await correctAssessment(context, actor, assessment.id, { entry, reason, basedOn });
    if (made.kind === 'done') {
      return reply.redirect(`${sheetAddress(sheet)}/recorded/${assessment.id}`, 303);
    }
    const { refusal } = made;
    const { status } = web.wordsFor(refusal);
    const isStale = refusal.code === 'changed-meanwhile';
    return show(request, reply, found.value, {
      values,
      isJudged: true,
      errors: isStale ? [] : refusalErrors(web, refusal, (faults) => faults.map(ofTheWhole)),
      meanwhile: isStale ? refusal.meanwhile : null,
      status,
    });
  });

  async function find(request: FastifyRequest<Params>): Promise<Outcome<Corrected>> {
    const actor = memberOf(request);
    const read = await getAssessment(context, actor, request.params.assessmentId);
    if (read.kind === 'refused') return read;
    const assessment = read.value;
    if (assessment.enteredInError !== null) return refused({ code: 'entered-in-error', what: 'assessment' });
    const { timepoint } = assessment.entry;
    const sheet = await loadEntrySheet(context, actor, { referralId: assessment.referralId, timepoint });
    if (sheet === null) return refused({ code: 'not-found', what: 'assessment' });
    const others = sheet.assessments.filter(({ id }) => id !== assessment.id);
    return done({ assessment, sheet: { ...sheet, assessments: others } });
  }

  async function show(
    request: FastifyRequest,
    reply: FastifyReply,
    { assessment, sheet }: Corrected,
    { values, isJudged, errors: own = [], meanwhile = null, status }: Shown,
  ): Promise<FastifyReply> {
    const actor = memberOf(request);
    const typed: FormValues = values ?? new Map<string, readonly string[]>();
    const judged = await judge(web, actor, sheet, typed);
    const [errors, queries] = isJudged ? [[...judged.errors, ...own], judged.queries] : [[], []];
    const state = {
      frame: frameOf(request, reply),
      sheet,
      sites: await sitesOfTeam(context, actor),
      values: typed,
      errors,
      queries,
      figures: values === null ? {} : judged.figures,
      draftVersion: 0,
    };
    const view = { state, assessment, isTooMuch: values === null, meanwhile };
    const isWrong = errors.length + queries.length > 0;
    return sendPage(reply, <CorrectionView {...view} />, status ?? (isWrong ? 422 : 200));
  }
}

function ofTheWhole({ message }: { readonly message: string }): { field: string; message: string } {
  return { field: '', message };
}
