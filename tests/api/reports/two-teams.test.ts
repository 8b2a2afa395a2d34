import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { givenDemo, reportOf, reportTextOf } from '../../support/report.js';
import { asRecord } from '../../support/response.js';
import { aPatient, aReferralBody } from '../../support/entries.js';
import { created, givenReferral } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp, TestClient } from '../../support/start-app.js';

const ALL = 'period=2023-11-25..2026-11-25';

describe('two teams in one record', () => {
  let service: TestApp;
  let leads: readonly TestClient[];
  beforeAll(async () => {
    service = await startApp();
    leads = await givenDemo(service);
  });
  afterAll(() => service.close());

  /** How many referrals the database holds of a team, counted without the service. */
  const stored = async (teamName: unknown): Promise<number> => {
    const rows = await service.record.connection.reader
      .selectFrom('referral')
      .innerJoin('team', 'team.id', 'referral.team_id')
      .select('referral.id')
      .where('team.name', '=', String(teamName))
      .where('referral.received_on', '>=', '2023-11-25')
      .where((eb) =>
        eb.or([
          eb('referral.closure_reason', 'is', null),
          eb('referral.closure_reason', '!=', 'registered-in-error'),
        ]),
      )
      .execute();
    return rows.length;
  };

  it('each read the report of their own, and together account for every referral', async () => {
    expect(leads).toHaveLength(2);
    const reports = await Promise.all(leads.map((lead) => reportOf(lead, ALL)));
    const names = reports.map((report) => report['teamName']);
    expect(new Set(names).size).toBe(2);
    for (const report of reports) {
      const { received } = asRecord(report['referrals']);
      expect(received).toBe(await stored(report['teamName']));
      expect(received).toBeGreaterThan(0);
    }
  });

  it('never see the name of the other', async () => {
    const [large, small] = await Promise.all(leads.map((lead) => reportTextOf(lead, ALL)));
    const [nameOfLarge, nameOfSmall] = [large, small].map((text) => (text ?? '').split(':')[0] ?? '');
    expect(large).not.toContain(nameOfSmall);
    expect(small).not.toContain(nameOfLarge);
  });

  it('do not change the figures of each other', async () => {
    const before = await reportOf(service.as('lead'), 'period=2026-27-Q1');
    const theirs = await created(service, '/api/v1/patients', aPatient(), 'other-team');
    const body = aReferralBody(theirs, service.otherTeam.siteId);
    await created(service, '/api/v1/referrals', body, 'other-team');
    expect(await reportOf(service.as('lead'), 'period=2026-27-Q1')).toEqual(before);
    await givenReferral(service);
    const after = await reportOf(service.as('lead'), 'period=2026-27-Q1');
    expect(after).toMatchObject({ referrals: { received: 1 } });
    const others = await reportOf(service.as('other-team'), 'period=2026-27-Q1');
    expect(others).toMatchObject({ teamName: 'Samphire Bay PR team', referrals: { received: 1 } });
  });

  it('cannot be asked for by name or id', async () => {
    const { teamId } = service.otherTeam;
    const response = await service.as('lead').get(`/api/v1/reports/quarterly?${ALL}&teamId=${teamId}`);
    expect(response.status).toBe(400);
  });
});
