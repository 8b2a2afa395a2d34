import { z } from 'zod';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Outcome, Refusal } from '../../domain/refusal/refusal.js';
import { beginCommit, ROW_CHOICES } from '../../usecases/imports/commit-import.js';
import {
  beginImport,
  chooseColumns,
  discardImport,
  listImports,
} from '../../usecases/imports/keep-import.js';
import { refusedRows } from '../../usecases/imports/refused-rows.js';
import { undoImport } from '../../usecases/imports/undo-import.js';
import { getImport, importUnderway } from '../../usecases/imports/view-import.js';
import { sitesOfTeam } from '../../usecases/providers.js';
import { VERSION_FIELD } from '../components/version-field.js';
import { entryReader } from '../forms/entry-reader.js';
import { NO_ERRORS } from '../forms/form-errors.js';
import type { FormError, FormErrors } from '../forms/form-errors.js';
import { isTicked, readForm, textOf, wholeNumberOf } from '../forms/form-values.js';
import { frameOf, sendPage } from '../frame.js';
import { sendRefusal } from '../send-refusal.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { choicesOf } from './choices-of.js';
import { ImportListView } from './import-list-view.js';
import { ImportPageView } from './import-view.js';
import { progressWords, UnderwayView } from './underway-view.js';

const Params = z.object({ importId: z.string() });
const Query = z.object({ after: z.string().max(80).optional() });
const ON_A_PAGE = 50;

/** The pages of imports: hand a sheet in, say what its columns hold, see every row judged, bring it in, undo it. */
export function importPages(app: WebApp, web: Web): void {
  const { context } = web;
  const page = pageOf('page:import');

  const showList = async (
    request: FastifyRequest,
    reply: FastifyReply,
    errors: FormErrors,
  ): Promise<FastifyReply> => {
    const { after } = Query.parse(request.query);
    const from = after === undefined ? null : { key: after, id: after };
    const { rows, next } = await listImports(context, memberOf(request), { limit: ON_A_PAGE, after: from });
    const list = {
      frame: frameOf(request, reply),
      imports: rows,
      first: after === undefined ? null : '/imports',
      next: next === null ? null : `/imports?after=${next.id}`,
      errors,
    };
    return sendPage(reply, <ImportListView {...list} />, errors.length === 0 ? 200 : 422);
  };

  const showOne = async (
    request: FastifyRequest,
    reply: FastifyReply,
    errors: FormErrors,
  ): Promise<FastifyReply> => {
    const { importId } = Params.parse(request.params);
    const member = memberOf(request);
    const frame = frameOf(request, reply);
    const underway = await importUnderway(context, member, importId);
    if (underway !== null) return sendPage(reply, <UnderwayView {...{ frame, underway }} />);
    const outcome = await getImport(context, member, importId);
    if (outcome.kind === 'refused') return sendRefusal(web, request, reply, outcome.refusal);
    const view = outcome.value;
    const sites = await sitesOfTeam(context, member);
    const told = view.lastRefusal === null || errors.length > 0 ? errors : [refusalAbove(view.lastRefusal)];
    const props = { frame, view, sites, errors: told };
    return sendPage(reply, <ImportPageView {...props} />, errors.length === 0 ? 200 : 422);
  };

  const refusalAbove = (refusal: Refusal): FormError => {
    const { title, detail } = web.wordsFor(refusal);
    return { field: '', message: `${title}. ${detail}` };
  };

  /** Carries a step out and leads back to the import; what is refused is said above it. */
  const step = async (
    request: FastifyRequest,
    reply: FastifyReply,
    carryOut: (id: string, basedOn: readonly number[]) => Promise<Outcome<unknown>>,
  ): Promise<FastifyReply> => {
    const { importId } = Params.parse(request.params);
    const version = wholeNumberOf(readForm(request.body), VERSION_FIELD) ?? 0;
    const outcome = await carryOut(importId, [version]);
    if (outcome.kind === 'done') return reply.redirect(`/imports/${importId}`, 303);
    if (outcome.refusal.code === 'not-found') return sendRefusal(web, request, reply, outcome.refusal);
    return showOne(request, reply, [refusalAbove(outcome.refusal)]);
  };

  app.get('/imports', page, async (request, reply) => showList(request, reply, NO_ERRORS));

  app.post('/imports', { ...page, config: { takesFile: true } }, async (request, reply) => {
    const { upload } = request;
    if (upload === null) return showList(request, reply, [{ field: 'file', message: 'Choose the file.' }]);
    const outcome = await beginImport(context, memberOf(request), upload);
    if (outcome.kind === 'done') return reply.redirect(`/imports/${outcome.value.id}`, 303);
    return showList(request, reply, [{ field: 'file', message: web.wordsFor(outcome.refusal).detail }]);
  });

  app.get('/imports/:importId', page, async (request, reply) => showOne(request, reply, NO_ERRORS));

  app.get('/imports/:importId/progress', page, async (request, reply) => {
    const underway = await importUnderway(context, memberOf(request), Params.parse(request.params).importId);
    if (underway === null) return reply.send({ isOver: true });
    return reply.send({
      ...{ isOver: false, words: progressWords(underway) },
      ...{ done: underway.done, of: underway.of },
    });
  });

  app.get('/imports/:importId/rows-to-mend.csv', page, async (request, reply) => {
    const outcome = await refusedRows(context, memberOf(request), Params.parse(request.params).importId);
    if (outcome.kind === 'refused') return sendRefusal(web, request, reply, outcome.refusal);
    return reply
      .type('text/csv; charset=utf-8')
      .header('content-disposition', 'attachment; filename="rows-to-mend.csv"')
      .send(outcome.value);
  });

  app.post('/imports/:importId/columns', page, async (request, reply) => {
    const member = memberOf(request);
    const former = await getImport(context, member, Params.parse(request.params).importId);
    if (former.kind === 'refused') return sendRefusal(web, request, reply, former.refusal);
    const said = choicesOf(readForm(request.body), former.value);
    if (said.kind === 'errors') return showOne(request, reply, said.errors);
    return step(request, reply, (id, basedOn) =>
      chooseColumns(context, member, id, { choices: said.choices, basedOn }),
    );
  });

  app.post('/imports/:importId/commit', page, async (request, reply) => {
    const form = readForm(request.body);
    const { choice, errors } = entryReader(form);
    const rows = choice('rows', ROW_CHOICES, 'Say which rows are brought in.');
    if (rows === null) return showOne(request, reply, errors);
    const confirmsUnusual = isTicked(form, 'confirmsUnusual');
    const member = memberOf(request);
    return step(request, reply, async (id, basedOn) => {
      const begun = await beginCommit(context, member, id, { rows, confirmsUnusual, basedOn });
      if (begun.kind === 'refused' || (await importUnderway(context, member, id)) !== null) return begun;
      return begun.value.result;
    });
  });

  for (const [name, carryOut] of [
    ['discard', discardImport],
    ['undo', undoImport],
  ] as const) {
    app.post(`/imports/:importId/${name}`, page, async (request, reply) => {
      const reason = textOf(readForm(request.body), 'reason');
      if (reason === '' || reason.length > 200) {
        return showOne(request, reply, [{ field: 'reason', message: 'Say why, in at most 200 characters.' }]);
      }
      return step(request, reply, (id, basedOn) =>
        carryOut(context, memberOf(request), id, { basedOn, reason }),
      );
    });
  }
}
