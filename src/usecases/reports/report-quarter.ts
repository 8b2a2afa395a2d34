import type { QuarterlyReport } from '../../reports/quarterly/report-model.js';
import { recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import type { ReportForm } from './report-maker.js';
import { toldOfReport } from './report-request.js';
import type { ReportRequest } from './report-request.js';

/** Which of its chapters is shown, and which part of that, where it is not the whole. */
export interface ShownOfReport {
  readonly chapter?: string;
  readonly part?: string;
}

/** The report of the member's own team; that it was read, and what of it was shown, is told to the trail. */
export async function readQuarter(
  context: Context,
  actor: TeamMember,
  request: ReportRequest,
  shown: ShownOfReport = {},
): Promise<QuarterlyReport> {
  const [report] = await Promise.all([
    context.reports.report({ ...request, teamId: actor.teamId }),
    tellReading(context, actor, request, shown),
  ]);
  return report;
}

/** The same as it is sent to programs, written where it is made. */
export async function readQuarterAs(
  context: Context,
  actor: TeamMember,
  request: ReportRequest,
  form: Extract<ReportForm, 'json' | 'txt'>,
): Promise<Uint8Array> {
  const [text] = await Promise.all([
    context.reports.file({ ...request, teamId: actor.teamId }, form),
    tellReading(context, actor, request, {}),
  ]);
  return text;
}

async function tellReading(
  context: Context,
  actor: TeamMember,
  request: ReportRequest,
  shown: ShownOfReport,
): Promise<void> {
  await recordRead(context, actor, {
    action: 'report-read',
    details: { ...toldOfReport(request), ...shown },
  });
}
