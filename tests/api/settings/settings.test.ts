import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { aPatient, aReferralBody, anAssessment, aShuttleWalk } from '../../support/entries.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

type Settings = Record<string, unknown> & { version: number };

describe("a team's settings", () => {
  let service: TestApp;
  beforeEach(async () => {
    service = await startApp();
  });
  afterEach(() => service.close());

  const read = async (): Promise<Settings> =>
    (await service.as('lead').get('/api/v1/settings')).body as Settings;
  const change = async (changes: Record<string, unknown>) => {
    const settings = Object.entries(await read()).filter(([name]) => name !== 'version');
    const body = { ...Object.fromEntries(settings), reason: 'Agreed by the team', ...changes };
    return service.as('lead').put('/api/v1/settings', body);
  };

  it('are the defaults, as version 0, until the team chooses', async () => {
    expect(await read()).toMatchObject({
      version: 0,
      completionReading: 'sessions-and-assessment',
      restingLimits: 'ats-2002',
      thresholds: {},
    });
  });

  it('are versioned: a change adds a version, and the trail tells what changed and why', async () => {
    expect((await change({ plannedSessions: 16 })).body).toMatchObject({ version: 1, plannedSessions: 16 });
    expect((await change({ plannedSessions: 14 })).body).toMatchObject({ version: 2 });
    expect(await read()).toMatchObject({ version: 2, plannedSessions: 14 });
    const trail = (await service.as('lead').get('/api/v1/audit-events')).body as { items: unknown[] };
    expect(trail.items[0]).toMatchObject({
      action: 'settings-changed',
      details: { version: 2, changes: { plannedSessions: [16, 14] }, reason: 'Agreed by the team' },
    });
  });

  it.each([
    [
      'an equation of another measure',
      { equations: { 'six-minute-walk-distance': 'probst-2012' } },
      '/equations/six-minute-walk-distance',
    ],
    ['an unknown measure', { thresholds: { 'no-such-measure': 'x' } }, '/thresholds/no-such-measure'],
    [
      'a threshold published as a range only',
      { thresholds: { 'cat-total': 'cat-smid-2017' } },
      '/thresholds/cat-total',
    ],
    [
      'an unknown diagnosis',
      { thresholdsByDiagnosis: { 'cat-total/gout': 'cat-kon-2014' } },
      '/thresholdsByDiagnosis/cat-total~1gout',
    ],
    ['a target of no indicator', { targets: { nothing: { percent: 50, source: 'Us' } } }, '/targets/nothing'],
    [
      'a target above 100 %',
      { targets: { uptake: { percent: 101, source: 'Us' } } },
      '/targets/uptake/percent',
    ],
    ['no sessions', { plannedSessions: 0 }, '/plannedSessions'],
    ['half a week', { plannedWeeks: 6.5 }, '/plannedWeeks'],
  ])('refuse %s and store nothing', async (_name, changes, pointer) => {
    const answer = await change(changes);
    expect(answer.status).toBe(422);
    expect((answer.body as { errors: { pointer: string }[] }).errors.map((error) => error.pointer)).toEqual([
      pointer,
    ]);
    expect(await read()).toMatchObject({ version: 0 });
  });

  it('decide by which threshold a change is judged, per measure and per diagnosis', async () => {
    // A gain of 40 m: little change by 47.5 m (Singh 2008), improved by 35 m (Evans 2019), both as published.
    const patient = await service.as('admin').post('/api/v1/patients', aPatient());
    const body = aReferralBody((patient.body as { id: string }).id, service.siteId);
    const referral = await service.as('admin').post('/api/v1/referrals', body);
    const { id } = referral.body as { id: string };
    const assess = (timepoint: string, assessedOn: string, distanceM: number) =>
      service.as('clinician').post(`/api/v1/referrals/${id}/assessments`, {
        ...anAssessment(service.siteId, { timepoint, assessedOn }),
        walkTests: [aShuttleWalk(distanceM, 1)],
      });
    await assess('baseline', '2026-04-20', 200);
    await assess('discharge', '2026-06-20', 240);
    const classOf = async (): Promise<unknown> => {
      const outcomes = await service.as('clinician').get(`/api/v1/referrals/${id}/outcomes`);
      const { measures } = outcomes.body as { measures: { measureId: string; class: string }[] };
      return measures.find((measure) => measure.measureId === 'incremental-shuttle-walk-distance')?.class;
    };
    expect(await classOf()).toBe('little-change');
    await change({ thresholds: { 'incremental-shuttle-walk-distance': 'iswd-evans-2019' } });
    expect(await classOf()).toBe('improved');
    await change({ thresholdsByDiagnosis: { 'incremental-shuttle-walk-distance/copd': 'iswd-singh-2008' } });
    expect(await classOf()).toBe('little-change');
  });
});
