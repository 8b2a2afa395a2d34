import type { Period } from '../../domain/calendar/period.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Narrowing } from '../../domain/cohort/narrowing.js';
import { buildQuarterlyReport } from '../../reports/quarterly/build-quarterly-report.js';
import type { QuarterlyReport } from '../../reports/quarterly/report-model.js';
import { letOthersWork } from '../../storage/let-others-work.js';
import type { Context, TeamMember } from '../context.js';
import { recordRead } from '../audit/record-event.js';
import { reportInput } from './report-input.js';

/** Parts of a report that read other periods too. */
export const REPORT_PARTS = ['comparisons', 'trend'] as const;
export type ReportPart = (typeof REPORT_PARTS)[number];

/** What report is asked for. */
export interface ReportRequest {
  readonly period: Period;
  /** The data cut: facts of that day are seen, later ones are not. */
  readonly asAt: PlainDate;
  /** What it is narrowed to; everything of the team where it is left out. */
  readonly narrowing?: Narrowing;
  /** Parts that cost more than the rest, asked for by name. */
  readonly include?: readonly ReportPart[];
}

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
  const { period, asAt, narrowing = {} } = request;
  await recordRead(context, actor, {
    action: 'report-read',
    details: { period: period.label, asAt, ...narrowing, ...shown },
  });
  return reportQuarter(context, { ...request, teamId: actor.teamId });
}

/** The report of any team for a period: for the operator of the service, and behind `readQuarter`. */
export async function reportQuarter(
  context: Context,
  request: ReportRequest & { readonly teamId: string },
): Promise<QuarterlyReport> {
  const input = await reportInput(context, request);
  await letOthersWork();
  const report = buildQuarterlyReport(input);
  // Whoever asked for it writes it out, which takes as long again.
  await letOthersWork();
  return report;
}
