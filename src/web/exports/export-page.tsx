import { exportRecord, RECORD_FORMS } from '../../usecases/exports/export-record.js';
import { frameOf, sendPage } from '../frame.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { ExportView } from './export-view.js';

/** The page by which a lead takes the record of the team out, and its files. */
export function exportPages(app: WebApp, { context }: Web): void {
  app.get('/team/export', pageOf('page:export'), (request, reply) =>
    sendPage(reply, <ExportView frame={frameOf(request, reply)} />),
  );

  app.get<{ Params: { form: string } }>(
    '/team/export/record/:form',
    pageOf('page:export'),
    async (request, reply) => {
      const form = RECORD_FORMS.find((known) => known === request.params.form);
      if (form === undefined) return reply.callNotFound();
      const file = await exportRecord(context, memberOf(request), form);
      return reply
        .type(file.mediaType)
        .header('content-disposition', `attachment; filename="${file.fileName}"`)
        .send(file.content);
    },
  );
}
