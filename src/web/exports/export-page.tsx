import { z } from 'zod';
import { AGE_FORMS, DATE_FORMS } from '../../domain/exports/analysis/analysis-request.js';
import { exportAnalysis } from '../../usecases/exports/export-analysis.js';
import type { AnalysisAsked } from '../../usecases/exports/export-analysis.js';
import { exportRecord, RECORD_FORMS } from '../../usecases/exports/export-record.js';
import { frameOf, sendPage } from '../frame.js';
import { sendFile } from '../send-file.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { ExportView } from './export-view.js';

/** The page by which a lead takes the record of the team out, and its files. */
export function exportPages(app: WebApp, { context, pseudonymKey, wordsFor }: Web): void {
  const hasKey = pseudonymKey !== null;

  app.get('/team/export', pageOf('page:export'), (request, reply) =>
    sendPage(
      reply,
      <ExportView frame={frameOf(request, reply)} hasKey={hasKey} asked={FIRST_SHOWN} error={null} />,
    ),
  );

  app.get('/team/export/analysis', pageOf('page:export'), async (request, reply) => {
    const asked = readAsked(request.query);
    const outcome = await exportAnalysis(context, memberOf(request), asked, pseudonymKey);
    if (outcome.kind === 'done') return sendFile(reply, outcome.value);
    const { refusal } = outcome;
    const [fault] = 'faults' in refusal ? refusal.faults : [];
    const error = fault?.message ?? wordsFor(refusal).detail;
    const page = <ExportView frame={frameOf(request, reply)} hasKey={hasKey} asked={asked} error={error} />;
    return sendPage(reply, page, 422);
  });

  app.get<{ Params: { form: string } }>(
    '/team/export/record/:form',
    pageOf('page:export'),
    async (request, reply) => {
      const form = RECORD_FORMS.find((known) => known === request.params.form);
      if (form === undefined) return reply.callNotFound();
      const file = await exportRecord(context, memberOf(request), form);
      return sendFile(reply, file);
    },
  );
}

/** What the form shows first: what gives least away. */
const FIRST_SHOWN: AnalysisAsked = { dates: 'month', ages: 'band', received: null };

const Query = z.object({
  dates: z.enum(DATE_FORMS).catch(FIRST_SHOWN.dates),
  ages: z.enum(AGE_FORMS).catch(FIRST_SHOWN.ages),
  received: z.string().trim().max(40).catch(''),
});

function readAsked(query: unknown): AnalysisAsked {
  const { dates, ages, received } = Query.parse(query ?? {});
  return { dates, ages, received: received === '' ? null : received };
}
