import type { Period } from '../../domain/calendar/period.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import { buildQuarterlyReport } from '../../reports/quarterly/build-quarterly-report.js';
import type { QuarterlyReport } from '../../reports/quarterly/report-model.js';
import { idsTouchedInPeriod } from '../../storage/facts/cohort-ids.js';
import { loadReferralFacts } from '../../storage/facts/referral-facts.js';
import { getTeam } from '../../storage/providers/providers.js';
import { currentSettings } from '../../storage/settings/settings.js';
import type { Context } from '../context.js';

/**
 * The report of a team for a period.
 *
 * @param asAt the data cut: facts of that day are seen, later ones are not
 */
export async function reportQuarter(
  context: Context,
  request: { readonly teamId: string; readonly period: Period; readonly asAt: PlainDate },
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
