import { NOT_NARROWED } from '../../domain/cohort/narrowing.js';
import type { ReferralFacts } from '../../domain/cohort/referral-facts.js';
import type { QuarterlyReportInput } from '../../reports/quarterly/build-quarterly-report.js';
import type { Executor } from '../../storage/connection.js';
import { idsTouchedInPeriod } from '../../storage/facts/cohort-ids.js';
import { entriesInErrorOf } from '../../storage/facts/entries-in-error.js';
import { loadReferralFacts } from '../../storage/facts/referral-facts.js';
import { idsWaitingOn } from '../../storage/facts/waiting-ids.js';
import { commissionersOfTeam, getTeam, sitesOfTeam } from '../../storage/providers/providers.js';
import { currentSettings } from '../../storage/settings/settings.js';
import type { Context } from '../context.js';
import { periodsToCompare, quartersOfTrend } from './earlier-facts.js';
import type { EarlierOf } from './earlier-facts.js';
import type { ReportRequest } from './report-quarter.js';

/** Everything that the report of a team is counted from. */
export async function reportInput(
  { reader }: Context,
  request: ReportRequest & { readonly teamId: string },
): Promise<QuarterlyReportInput> {
  const { teamId, period, asAt, narrowing = NOT_NARROWED, include = [] } = request;
  const team = await getTeam(reader, teamId);
  const { version, settings } = await currentSettings(reader, teamId);
  const sites = await sitesOfTeam(reader, teamId);
  const earlierOf = { teamId, period, asAt, settings, sites, narrowing };
  return {
    facts: await factsOfReport(reader, { teamId, period, asAt, settings }),
    period,
    asAt,
    settings,
    settingsVersion: version,
    teamName: team.name,
    sites,
    commissioners: await commissionersOfTeam(reader, teamId),
    narrowing,
    compareWith: include.includes('comparisons') ? await periodsToCompare(reader, earlierOf) : null,
    trendOver: include.includes('trend') ? await quartersOfTrend(reader, earlierOf) : null,
    entriesInError: await entriesInErrorOf(reader, teamId, period),
  };
}

/** Referrals of a team that a period touches and those that may wait at the cut, each read once. */
export async function factsOfReport(
  db: Executor,
  { teamId, period, asAt, settings }: EarlierOf,
): Promise<readonly ReferralFacts[]> {
  const ids = new Set(await idsTouchedInPeriod(db, teamId, period));
  for (const id of await idsWaitingOn(db, teamId, asAt)) ids.add(id);
  return loadReferralFacts(db, teamId, [...ids].sort(), settings);
}
