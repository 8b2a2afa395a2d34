import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { cautionNamed, cautionsAt, inShort } from '../../support/cautions-api.js';
import { aShuttleWalk } from '../../support/entries.js';
import type { Body } from '../../support/entries.js';
import { asRecord } from '../../support/response.js';
import { givenAssessment, givenReferral } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

/** Resting limits: ATS 2002 is above 180/100 mmHg and 120 beats/min, ERS/ATS 2014 is 200/120 mmHg, reached at the figure. */
describe('resting values beyond the limits', () => {
  let service: TestApp;
  beforeEach(async () => {
    service = await startApp();
  });
  afterEach(() => service.close());

  const raisedBy = async (resting: Body, more: Body = {}): Promise<readonly string[]> => {
    const changes = { resting, walkTests: [], sitToStands: [], questionnaires: [], ...more };
    const confirmed = Object.keys(resting).map((field) => `/resting/${field}`);
    const assessmentId = await givenAssessment(service, await givenReferral(service), {
      confirmed,
      ...changes,
    });
    return inShort(await cautionsAt(service, assessmentId));
  };
  const choose = async (restingLimits: string): Promise<void> => {
    const { version, ...choices } = asRecord((await service.as('lead').get('/api/v1/settings')).body);
    const body = { ...choices, restingLimits, reason: 'Local policy' };
    const response = await service.as('lead').put('/api/v1/settings', body);
    expect([typeof version, response.status], response.text).toEqual(['number', 200]);
  };
  const pressure = (systolicMmHg: number, diastolicMmHg: number): Body => ({ systolicMmHg, diastolicMmHg });

  it.each<[Body, readonly string[]]>([
    [pressure(180, 100), []],
    [pressure(181, 100), ['resting-systolic-above-180 !']],
    [pressure(180, 101), ['resting-diastolic-above-100 !']],
    [{ heartRateBpm: 120 }, []],
    [{ heartRateBpm: 121 }, ['resting-heart-rate-above-120 !']],
    [{ heartRateBpm: 50 }, []],
    [{ heartRateBpm: 49 }, ['resting-heart-rate-below-50 !']],
    [{ spo2Percent: 91 }, []],
    [{ spo2Percent: 90 }, ['resting-saturation-below-91 !']],
    [{ spo2Percent: 85 }, ['resting-saturation-at-or-below-85 !']],
    // What is not recorded raises nothing.
    [{}, []],
  ])('are judged by the stricter set unless the team chose otherwise: %o', async (resting, raised) => {
    expect(await raisedBy(resting)).toEqual(raised);
  });

  it.each<[Body, readonly string[]]>([
    [pressure(199, 119), []],
    [pressure(200, 119), ['resting-systolic-at-200 !']],
    [pressure(199, 120), ['resting-diastolic-at-120 !']],
    [{ heartRateBpm: 125 }, []],
    [{ heartRateBpm: 126 }, ['resting-heart-rate-above-125 !']],
  ])('are judged by the wider set once the team chose it: %o', async (resting, raised) => {
    await choose('ers-ats-2014');
    expect(await raisedBy(resting)).toEqual(raised);
  });

  it('are judged anew by the setting of the day on which they are read', async () => {
    const resting = pressure(185, 90);
    const confirmed = ['/resting/systolicMmHg'];
    const assessmentId = await givenAssessment(service, await givenReferral(service), { resting, confirmed });
    expect(inShort(await cautionsAt(service, assessmentId))).toContain('resting-systolic-above-180 !');
    await choose('ers-ats-2014');
    expect(inShort(await cautionsAt(service, assessmentId))).toEqual([]);
    await choose('ats-2002');
    expect(inShort(await cautionsAt(service, assessmentId))).toContain('resting-systolic-above-180 !');
  });

  it('are judged by each team by its own setting', async () => {
    await choose('ers-ats-2014');
    expect((await service.as('other-team').get('/api/v1/settings')).body).toMatchObject({
      version: 0,
      restingLimits: 'ats-2002',
    });
  });

  it('refuse a set that is not published', async () => {
    const settings = asRecord((await service.as('lead').get('/api/v1/settings')).body);
    const { version, ...choices } = settings;
    const body = { ...choices, restingLimits: 'none', reason: 'Local policy' };
    const response = await service.as('lead').put('/api/v1/settings', body);
    expect([version, response.status]).toEqual([0, 400]);
  });

  it('raise a caution with its source, for a registered clinician, and say the value and the limit', async () => {
    const referralId = await givenReferral(service);
    const confirmed = ['/resting/systolicMmHg'];
    const assessmentId = await givenAssessment(service, referralId, {
      resting: pressure(190, 95),
      confirmed,
    });
    const caution = cautionNamed(await cautionsAt(service, assessmentId), 'resting-systolic-above-180');
    expect(caution).toMatchObject({
      measureId: null,
      by: 'registered-clinician',
      isFromFormerVersion: false,
      acknowledgement: null,
      source: { id: 'ats-2002-resting-limits', mark: 'quoted in another paper' },
    });
    expect(caution['text']).toMatch(/190 mmHg.*above 180 mmHg/);
  });

  it('count an SpO2 of 85 % or less on room air only: with oxygen the test may be done', async () => {
    const on = (oxygenLPerMin: number): Body => ({
      walkTests: [aShuttleWalk(100, 1, { oxygenLPerMin }), aShuttleWalk(100, 2, { oxygenLPerMin })],
    });
    const absolute = 'resting-saturation-at-or-below-85 !';
    expect(await raisedBy({ spo2Percent: 85 }, on(0))).toContain(absolute);
    expect(await raisedBy({ spo2Percent: 85 }, on(2))).not.toContain(absolute);
  });
});
