import type { Period } from '../../src/domain/calendar/period.js';
import type { PlainDate } from '../../src/domain/calendar/plain-date.js';
import { NOT_NARROWED } from '../../src/domain/cohort/narrowing.js';
import type { ReferralFacts } from '../../src/domain/cohort/referral-facts.js';
import { DEFAULT_TEAM_SETTINGS } from '../../src/domain/settings/team-settings.js';
import type { QuarterlyReportInput } from '../../src/reports/quarterly/build-quarterly-report.js';
import { SITES } from './arbitrary-facts.js';

/** What a report of some facts is made from, by the settings of a new team and without narrowing. */
export function reportInputOf(
  facts: readonly ReferralFacts[],
  period: Period,
  asAt: PlainDate,
): QuarterlyReportInput {
  return {
    facts,
    period,
    asAt,
    settings: DEFAULT_TEAM_SETTINGS,
    settingsVersion: 1,
    teamName: 'Marram Coast',
    sites: SITES,
    commissioners: [],
    narrowing: NOT_NARROWED,
    entriesInError: { referrals: 0, offers: 0, sessions: 0, assessments: 0 },
  };
}
