import { writePdf } from '../../documents/write-pdf.js';
import { writeXlsx } from '../../documents/write-xlsx.js';
import { csvTable } from '../../reports/quarterly/csv/csv-table.js';
import { quarterlyDocument } from '../../reports/quarterly/document/build-document.js';
import type { QuarterlyReport } from '../../reports/quarterly/report-model.js';
import { renderQuarterlyReportText } from '../../reports/quarterly/render-text.js';
import { writeCsv } from '../../sheets/write-csv.js';
import { recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { reportQuarter } from './report-quarter.js';
import type { ReportRequest } from './report-quarter.js';

/** The forms in which a report leaves the service as a file. */
export const REPORT_FORMS = ['pdf', 'xlsx', 'csv', 'json', 'txt'] as const;
export type ReportForm = (typeof REPORT_FORMS)[number];

export const REPORT_MEDIA_TYPES: Readonly<Record<ReportForm, string>> = {
  pdf: 'application/pdf',
  xlsx: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
  csv: 'text/csv; charset=utf-8; header=present',
  json: 'application/json; charset=utf-8',
  txt: 'text/plain; charset=utf-8',
};

/** A report as a file. */
export interface ReportFile {
  readonly content: Buffer;
  readonly mediaType: string;
  /** Names the period and nobody. */
  readonly fileName: string;
}

/** The report of the member's own team as a file, counted as `readQuarter` does; that it left the service is told to the trail. */
export async function exportQuarter(
  context: Context,
  actor: TeamMember,
  request: ReportRequest,
  form: ReportForm,
): Promise<ReportFile> {
  const { period, asAt, narrowing = {} } = request;
  await recordRead(context, actor, {
    action: 'report-exported',
    details: { form, period: period.label, asAt, ...narrowing },
  });
  const report = await reportQuarter(context, { ...request, teamId: actor.teamId });
  return {
    content: await written(report, form),
    mediaType: REPORT_MEDIA_TYPES[form],
    fileName: `report-${period.label.replace('..', '-to-')}-as-at-${asAt}.${form}`,
  };
}

async function written(report: QuarterlyReport, form: ReportForm): Promise<Buffer> {
  switch (form) {
    case 'pdf':
      return writePdf(quarterlyDocument(report));
    case 'xlsx':
      return writeXlsx(quarterlyDocument(report));
    case 'csv':
      return Buffer.from(writeCsv(csvTable(report)));
    case 'json':
      return Buffer.from(JSON.stringify(report));
    case 'txt':
      return Buffer.from(renderQuarterlyReportText(report));
  }
}
