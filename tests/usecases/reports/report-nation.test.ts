import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { financialQuarter } from '../../../src/domain/calendar/period.js';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import { DEFAULT_TEAM_SETTINGS } from '../../../src/domain/settings/team-settings.js';
import type { QuarterlyReport } from '../../../src/reports/quarterly/report-model.js';
import { currentSettings } from '../../../src/storage/settings/settings.js';
import { reportNation } from '../../../src/usecases/reports/report-nation.js';
import { givenDemo } from '../../support/report.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

const REQUEST = { period: financialQuarter(2026, 2), asAt: plainDate('2026-11-25') };

describe('the report over all teams', () => {
  let service: TestApp;
  let nation: QuarterlyReport;
  let teams: readonly { readonly id: string; readonly name: string }[];
  let reports: readonly QuarterlyReport[];
  const progress: (readonly [number, number])[] = [];
  beforeAll(async () => {
    service = await startApp();
    await givenDemo(service);
    const { context } = service.record;
    teams = await context.db.selectFrom('team').select(['id', 'name']).orderBy('name').execute();
    for (const { id } of teams) {
      // Else the parts would be counted otherwise than the whole.
      expect((await currentSettings(context.db, id)).settings).toEqual(DEFAULT_TEAM_SETTINGS);
    }
    const ofTeams: QuarterlyReport[] = [];
    for (const { id } of teams) ofTeams.push(await context.reports.report({ ...REQUEST, teamId: id }));
    reports = ofTeams;
    nation = await reportNation(context, {
      ...REQUEST,
      onProgress: (read, all) => progress.push([read, all]),
    });
  });
  afterAll(() => service.close());

  it('counts what its teams count together', () => {
    const sumOf = (id: string, part: 'numerator' | 'denominator' | 'open'): number =>
      reports
        .flatMap(({ indicators }) => indicators.map(({ figure }) => figure))
        .filter((figure) => figure.id === id)
        .reduce((sum, figure) => sum + figure[part], 0);
    expect(nation.cohorts.referral.referrals).toBeGreaterThan(5);
    for (const { figure } of nation.indicators) {
      expect([figure.id, figure.numerator, figure.denominator, figure.open]).toEqual([
        figure.id,
        sumOf(figure.id, 'numerator'),
        sumOf(figure.id, 'denominator'),
        sumOf(figure.id, 'open'),
      ]);
    }
    const waiting = reports.reduce((sum, report) => sum + report.waiting.now.waiting.numerator, 0);
    expect(nation.waiting.now.waiting.numerator).toBe(waiting);
  });

  it('sets team beside team where a report of a team has its sites', () => {
    const [received] = nation.breakdowns;
    const byTeam = received?.dimensions.find(({ dimension }) => dimension === 'site')?.rows ?? [];
    const counted = reports.filter(({ referrals }) => referrals.received > 0);
    expect(byTeam.map(({ words, figure }) => [words, figure.denominator])).toEqual(
      counted.map(({ teamName, referrals }) => [teamName, referrals.received]),
    );
  });

  it('tells how far it is', () => {
    expect(progress).toEqual(teams.map((_, index) => [index + 1, teams.length]));
  });
});
