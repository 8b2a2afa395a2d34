import type { FastifyReply, FastifyRequest } from 'fastify';
import { periodWords } from '../../domain/calendar/period-words.js';
import { quarterlyDocument } from '../../reports/quarterly/document/build-document.js';
import { commissionersOfTeam, sitesOfTeam } from '../../usecases/providers.js';
import { exportQuarter } from '../../usecases/reports/export-quarter.js';
import { REPORT_FORMS } from '../../usecases/reports/report-maker.js';
import { readQuarter } from '../../usecases/reports/report-quarter.js';
import { REPORT_PARTS, reportRequest } from '../../usecases/reports/report-request.js';
import type { AskedReport, ReportRequest } from '../../usecases/reports/report-request.js';
import { attributeText } from '../components/field.js';
import { Notice } from '../components/notice.js';
import { Tag } from '../components/parts.js';
import type { FormErrors } from '../forms/form-errors.js';
import { frameOf, sendPage } from '../frame.js';
import { Page } from '../page.js';
import { sendRefusal } from '../send-refusal.js';
import { memberOf, pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { addressesOf, contentsOf, onFirstPage } from './chapters.js';
import { Contents, SectionView } from './document-view.js';
import { faultsAddress, readReportAddress, reportQuery } from './report-address.js';
import type { ReportAddress } from './report-address.js';
import { ReportFilter } from './report-filter.js';

/** The audit report: a first page whose address is the whole report, and its files. */
export function reportPages(app: WebApp, web: Web): void {
  const { context } = web;

  app.get('/report', pageOf('page:report'), async (request, reply) => {
    const today = context.clock.today();
    const address = readReportAddress(request.query, today);
    if (address.faults.length > 0) return sendFaults(request, reply, address, address.faults);
    const canonical = `/report?${reportQuery(address.asked)}`;
    // The form sends its empty fields too; the address that is kept says only what narrows.
    if (request.url !== canonical) return reply.redirect(canonical, 303);
    const asked = reportRequest({ ...address.asked, include: REPORT_PARTS }, today);
    if (asked.kind === 'refused') {
      if (asked.refusal.code !== 'rules-broken') return sendRefusal(web, request, reply, asked.refusal);
      const faults = asked.refusal.faults.map(({ pointer, message }) => ({ field: pointer, message }));
      return sendFaults(request, reply, address, faults);
    }
    return sendReport(request, reply, address, asked.value);
  });

  app.get<{ Params: { form: string } }>(
    '/report/files/:form',
    pageOf('page:report-file'),
    async (request, reply) => {
      const form = REPORT_FORMS.find((known) => known === request.params.form);
      if (form === undefined) return reply.callNotFound();
      const today = context.clock.today();
      const { asked, faults } = readReportAddress(request.query, today);
      if (faults.length > 0) return reply.redirect(faultsAddress(request.url), 303);
      const read = reportRequest({ ...asked, include: REPORT_PARTS }, today);
      if (read.kind === 'refused') return sendRefusal(web, request, reply, read.refusal);
      const file = await exportQuarter(context, memberOf(request), read.value, form);
      return reply
        .type(file.mediaType)
        .header('content-disposition', `attachment; filename="${file.fileName}"`)
        .send(file.content);
    },
  );

  async function filterProps(request: FastifyRequest, address: ReportAddress, errors: FormErrors) {
    const actor = memberOf(request);
    const sites = await sitesOfTeam(context, actor);
    const commissioners = await commissionersOfTeam(context, actor);
    return { address, today: context.clock.today(), sites, commissioners, errors };
  }

  async function sendFaults(
    request: FastifyRequest,
    reply: FastifyReply,
    address: ReportAddress,
    errors: FormErrors,
  ): Promise<FastifyReply> {
    const filter = await filterProps(request, address, errors);
    const page = (
      <Page frame={frameOf(request, reply)} title="Report">
        <h1>Report</h1>
        <Notice kind="warning" title="There is no report of this">
          <ul>
            {errors.map(({ message }) => (
              <li safe>{message}</li>
            ))}
          </ul>
        </Notice>
        <ReportFilter {...filter} />
      </Page>
    );
    return sendPage(reply, page, 422);
  }

  async function sendReport(
    request: FastifyRequest,
    reply: FastifyReply,
    address: ReportAddress,
    asked: ReportRequest,
  ): Promise<FastifyReply> {
    const report = await readQuarter(context, memberOf(request), asked);
    const document = quarterlyDocument(report);
    const filter = await filterProps(request, address, []);
    const { title, subtitle } = document;
    return sendPage(
      reply,
      <Page
        styles={['report.css']}
        frame={frameOf(request, reply)}
        title={`Report ${periodWords(report.period)}`}
        sheetLine={document.footer}
      >
        <article class="report">
          <h1>
            <span safe>{title}</span>{' '}
            {report.provisional.isProvisional ? <Tag kind="check" label="provisional" /> : ''}
          </h1>
          {subtitle.map((line) => (
            <p class="muted" safe>
              {line}
            </p>
          ))}
          <ReportFilter {...filter} />
          <Downloads asked={address.asked} />
          <Contents entries={contentsOf(document, address.asked)} />
          {onFirstPage(document).map((section) => (
            <SectionView section={section} addresses={addressesOf(section.id, address.asked)} />
          ))}
        </article>
      </Page>,
    );
  }
}

const FORM_WORDS = { pdf: 'PDF', xlsx: 'Spreadsheet (XLSX)', csv: 'CSV', json: 'JSON', txt: 'Text' } as const;

function Downloads({ asked }: { readonly asked: AskedReport }): JSX.Element {
  return (
    <p class="downloads not-printed">
      <span>Take it with you: </span>
      {REPORT_FORMS.map((form) => (
        <>
          <a href={attributeText(`/report/files/${form}?${reportQuery(asked)}`)}>{FORM_WORDS[form]}</a>{' '}
        </>
      ))}
    </p>
  );
}
