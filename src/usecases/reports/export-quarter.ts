import { isNarrowed } from '../../domain/cohort/narrowing.js';
import { recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import type { ReportForm } from './report-maker.js';
import { toldOfReport } from './report-request.js';
import type { ReportRequest } from './report-request.js';

export const REPORT_MEDIA_TYPES: Readonly<Record<ReportForm, string>> = {
  pdf: 'application/pdf',
  xlsx: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
  csv: 'text/csv; charset=utf-8; header=present',
  json: 'application/json; charset=utf-8',
  txt: 'text/plain; charset=utf-8',
};

/** A report as a file. */
export interface ReportFile {
  readonly content: Uint8Array;
  readonly mediaType: string;
  /** Names the period and nobody, and says where the report is narrowed. */
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
  const [content] = await Promise.all([
    context.reports.file({ ...request, teamId: actor.teamId }, form),
    recordRead(context, actor, {
      action: 'report-exported',
      details: { form, ...toldOfReport(request) },
    }),
  ]);
  return {
    content,
    mediaType: REPORT_MEDIA_TYPES[form],
    fileName: `report-${period.label.replace('..', '-to-')}-as-at-${asAt}${isNarrowed(narrowing) ? '-narrowed' : ''}.${form}`,
  };
}
