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
import { periodsToCompare, quartersOfTrend } from './earlier-facts.js';
import type { EarlierOf } from './earlier-facts.js';
import type { TeamReportRequest } from './report-maker.js';

/** Everything that the report of a team is counted from. */
export async function reportInput(db: Executor, request: TeamReportRequest): Promise<QuarterlyReportInput> {
  const { teamId, period, asAt, narrowing = NOT_NARROWED, include = [] } = request;
  const team = await getTeam(db, teamId);
  const { version, settings } = await currentSettings(db, teamId);
  const sites = await sitesOfTeam(db, teamId);
  const earlierOf = { teamId, period, asAt, settings, sites, narrowing };
  return {
    facts: await factsOfReport(db, { teamId, period, asAt, settings }),
    period,
    asAt,
    settings,
    settingsVersion: version,
    teamName: team.name,
    sites,
    commissioners: await commissionersOfTeam(db, teamId),
    narrowing,
    compareWith: include.includes('comparisons') ? await periodsToCompare(db, earlierOf) : null,
    trendOver: include.includes('trend') ? await quartersOfTrend(db, earlierOf) : null,
    entriesInError: await entriesInErrorOf(db, teamId, period),
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
