import type { Period } from '../../domain/calendar/period.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import { NOT_NARROWED } from '../../domain/cohort/narrowing.js';
import type { ContactFacts, ReferralFacts, Result } from '../../domain/cohort/referral-facts.js';
import { coursesOf } from '../../domain/pathway/course.js';
import type { Course } from '../../domain/pathway/course.js';
import type { EntriesInError } from '../../domain/history/entered-in-error.js';
import { DEFAULT_TEAM_SETTINGS } from '../../domain/settings/team-settings.js';
import { reportOf } from '../../reports/quarterly/build-quarterly-report.js';
import type { QuarterlyReport } from '../../reports/quarterly/report-model.js';
import { quarterOf } from '../../reports/quarterly/quarter.js';
import type { QuarterTerms } from '../../reports/quarterly/quarter.js';
import { entriesInErrorOf } from '../../storage/facts/entries-in-error.js';
import { letOthersWork } from '../../storage/let-others-work.js';
import { listTeams } from '../../storage/providers/providers.js';
import type { Context } from '../context.js';
import { factsOfReport } from './report-input.js';
import { CONTACTS, RESULTS, shareAlike } from './share-alike.js';

/** What report of all teams is asked for. */
export interface NationRequest {
  readonly period: Period;
  readonly asAt: PlainDate;
  /** Told after each team, for whoever waits. */
  readonly onProgress?: (teamsRead: number, teams: number) => void;
}

/**
 * The report over every team of a record, for the operator of the service; behind no address.
 *
 * All are counted by the settings that a team starts with, since a share over teams that read completion differently would
 * mean nothing. Teams stand where sites stand in a team's own report. Counting many thousand referrals takes the process for
 * itself: run it in one that serves nobody.
 */
export async function reportNation(context: Context, request: NationRequest): Promise<QuarterlyReport> {
  const { period, asAt, onProgress } = request;
  const { reader } = context;
  const settings = DEFAULT_TEAM_SETTINGS;
  const teams = await listTeams(reader);
  const terms = { period, asAt, settings, sites: teams.map(({ id, name }) => ({ id, name })) };
  const courses: Course[] = [];
  const shared = { contact: shareAlike(CONTACTS), result: shareAlike(RESULTS) };
  let entriesInError: EntriesInError = { referrals: 0, offers: 0, sessions: 0, assessments: 0 };
  for (const [index, { id: teamId }] of teams.entries()) {
    const ofTeam = coursesOf(await factsOfReport(reader, { teamId, period, asAt, settings }), asAt);
    for (const course of counted(ofTeam, terms)) {
      courses.push({ ...course, facts: sharing(course.facts, teamId, shared) });
    }
    entriesInError = sumOf(entriesInError, await entriesInErrorOf(reader, teamId, period));
    onProgress?.(index + 1, teams.length);
    await letOthersWork();
  }
  return reportOf(quarterOf(courses, terms), {
    ...terms,
    settingsVersion: 0,
    teamName: 'All teams',
    commissioners: [],
    narrowing: NOT_NARROWED,
    entriesInError,
  });
}

/** Those that some figure counts: of a national quarter the others would fill the memory. */
function counted(courses: readonly Course[], terms: QuarterTerms): readonly Course[] {
  const { cohorts } = quarterOf(courses, { ...terms, sites: [] });
  const inCohorts = new Set(Object.values(cohorts).flatMap((cohort) => cohort.courses));
  return courses.filter((course) => inCohorts.has(course));
}

interface Shared {
  readonly contact: (contact: ContactFacts) => ContactFacts;
  readonly result: (result: Result) => Result;
}

/** The same facts, with the team in the place of the site, and with contacts and results that others have too. */
function sharing(facts: ReferralFacts, teamId: string, { contact, result }: Shared): ReferralFacts {
  return {
    ...facts,
    siteId: teamId,
    contacts: facts.contacts.map(contact),
    assessments: facts.assessments.map((each) => ({ ...each, results: each.results.map(result) })),
  };
}

function sumOf(a: EntriesInError, b: EntriesInError): EntriesInError {
  return {
    referrals: a.referrals + b.referrals,
    offers: a.offers + b.offers,
    sessions: a.sessions + b.sessions,
    assessments: a.assessments + b.assessments,
  };
}
