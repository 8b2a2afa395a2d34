import { buildQuarterlyReport } from '../../reports/quarterly/build-quarterly-report.js';
import { csvTable } from '../../reports/quarterly/csv/csv-table.js';
import { quarterlyWorkbook } from '../../reports/quarterly/document/all-numbers.js';
import { quarterlyDocument } from '../../reports/quarterly/document/build-document.js';
import { openFigure } from '../../reports/quarterly/open-figure.js';
import type { OpenedFigure } from '../../reports/quarterly/open-figure.js';
import { renderQuarterlyReportText } from '../../reports/quarterly/render-text.js';
import type { QuarterlyReport } from '../../reports/quarterly/report-model.js';
import { writeCsv } from '../../sheets/write-csv.js';
import type { Executor } from '../../storage/connection.js';
import { letOthersWork } from '../../storage/let-others-work.js';
import { reportInput } from './report-input.js';
import type { ReportRequest } from './report-request.js';

/** The forms in which a report is written. */
export const REPORT_FORMS = ['pdf', 'xlsx', 'csv', 'json', 'txt'] as const;
export type ReportForm = (typeof REPORT_FORMS)[number];

/** Which report, and of which team. */
export type TeamReportRequest = ReportRequest & { readonly teamId: string };

/**
 * Makes reports from the record as it stands at one moment, whatever is written meanwhile. What goes in and what comes out
 * is plain data: it may be made in another thread than that in which requests are answered.
 */
export interface ReportMaker {
  readonly report: (request: TeamReportRequest) => Promise<QuarterlyReport>;
  /** The report as a file: UTF-8 where it is text. */
  readonly file: (request: TeamReportRequest, form: ReportForm) => Promise<Uint8Array>;
  /** A figure of the report with everybody behind it; null where there is no such figure. */
  readonly figure: (request: TeamReportRequest, figureId: string) => Promise<OpenedFigure | null>;
}

/**
 * Makes reports in the thread that asks for them.
 *
 * @param reader a connection that only reads: whoever else reads by it waits until the facts of a report have been read
 */
export function reportMaker(reader: Executor): ReportMaker {
  const inputOf = (request: TeamReportRequest) =>
    reader.transaction().execute((snapshot) => reportInput(snapshot, request));
  const report = async (request: TeamReportRequest): Promise<QuarterlyReport> => {
    const input = await inputOf(request);
    await letOthersWork();
    return buildQuarterlyReport(input);
  };
  return {
    report,
    file: async (request, form) => {
      const made = await report(request);
      await letOthersWork();
      return written(made, form);
    },
    figure: async (request, figureId) => openFigure(await inputOf({ ...request, include: [] }), figureId),
  };
}

/** What writes PDF and spreadsheets is large, and loaded with the first of them: the program is up sooner. */
async function written(report: QuarterlyReport, form: ReportForm): Promise<Uint8Array> {
  switch (form) {
    case 'pdf': {
      const { writePdf } = await import('../../documents/write-pdf.js');
      return writePdf(quarterlyDocument(report));
    }
    case 'xlsx': {
      const { writeXlsx } = await import('../../documents/write-xlsx.js');
      return writeXlsx(quarterlyWorkbook(report));
    }
    case 'csv':
      return Buffer.from(writeCsv(csvTable(report)));
    case 'json':
      return Buffer.from(JSON.stringify(report));
    case 'txt':
      return Buffer.from(renderQuarterlyReportText(report));
  }
}
