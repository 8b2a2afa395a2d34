import { NOT_NARROWED } from '../../domain/cohort/narrowing.js';
import type { QuarterlyReportInput } from '../../reports/quarterly/build-quarterly-report.js';
import { idsTouchedInPeriod } from '../../storage/facts/cohort-ids.js';
import { entriesInErrorOf } from '../../storage/facts/entries-in-error.js';
import { loadReferralFacts } from '../../storage/facts/referral-facts.js';
import { idsWaitingOn } from '../../storage/facts/waiting-ids.js';
import { commissionersOfTeam, getTeam, sitesOfTeam } from '../../storage/providers/providers.js';
import { currentSettings } from '../../storage/settings/settings.js';
import type { Context } from '../context.js';
import { factsOfTrend, factsToCompare } from './earlier-facts.js';
import type { ReportRequest } from './report-quarter.js';

/**
 * Everything that the report of a team is counted from, each referral read once: those that the period touches, and those
 * that may wait at the cut.
 */
export async function reportInput(
  { reader }: Context,
  request: ReportRequest & { readonly teamId: string },
): Promise<QuarterlyReportInput> {
  const { teamId, period, asAt, narrowing = NOT_NARROWED, include = [] } = request;
  const team = await getTeam(reader, teamId);
  const { version, settings } = await currentSettings(reader, teamId);
  const ids = new Set(await idsTouchedInPeriod(reader, teamId, period));
  const earlierOf = { teamId, period, asAt, settings };
  for (const id of await idsWaitingOn(reader, teamId, asAt)) ids.add(id);
  return {
    facts: await loadReferralFacts(reader, teamId, [...ids].sort(), settings),
    period,
    asAt,
    settings,
    settingsVersion: version,
    teamName: team.name,
    sites: await sitesOfTeam(reader, teamId),
    commissioners: await commissionersOfTeam(reader, teamId),
    narrowing,
    compareWith: include.includes('comparisons') ? await factsToCompare(reader, earlierOf) : null,
    trendOver: include.includes('trend') ? await factsOfTrend(reader, earlierOf) : null,
    entriesInError: await entriesInErrorOf(reader, teamId, period),
  };
}
