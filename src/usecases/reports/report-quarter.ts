import type { Period } from '../../domain/calendar/period.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import { buildQuarterlyReport } from '../../reports/quarterly/build-quarterly-report.js';
import type { QuarterlyReport } from '../../reports/quarterly/report-model.js';
import { idsTouchedInPeriod } from '../../storage/facts/cohort-ids.js';
import { loadReferralFacts } from '../../storage/facts/referral-facts.js';
import { getTeam } from '../../storage/providers/providers.js';
import { currentSettings } from '../../storage/settings/settings.js';
import type { Context, TeamMember } from '../context.js';
import { recordRead } from '../audit/record-event.js';

/** What report is asked for. */
export interface ReportRequest {
  readonly period: Period;
  /** The data cut: facts of that day are seen, later ones are not. */
  readonly asAt: PlainDate;
}

/** The report of the member's own team; that it was read is told to the trail. */
export async function readQuarter(
  context: Context,
  actor: TeamMember,
  { period, asAt }: ReportRequest,
): Promise<QuarterlyReport> {
  await recordRead(context, actor, { action: 'report-read', details: { period: period.label, asAt } });
  return reportQuarter(context, { teamId: actor.teamId, period, asAt });
}

/** The report of any team for a period: for the operator of the service, and behind `readQuarter`. */
export async function reportQuarter(
  context: Context,
  request: ReportRequest & { readonly teamId: string },
): Promise<QuarterlyReport> {
  const { teamId, period, asAt } = request;
  const team = await getTeam(context.reader, teamId);
  const { version, settings } = await currentSettings(context.reader, teamId);
  const ids = await idsTouchedInPeriod(context.reader, teamId, period);
  const facts = await loadReferralFacts(context.reader, teamId, ids, settings);
  return buildQuarterlyReport({
    facts,
    period,
    asAt,
    settings,
    settingsVersion: version,
    teamName: team.name,
  });
}
