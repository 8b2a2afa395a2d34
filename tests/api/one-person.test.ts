import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { aPatient, aReferralBody, anAssessment, aShuttleWalk } from '../support/entries.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

/** One person from referral to report; every expected figure is worked by hand beside it. */
describe('the line of one person', () => {
  let service: TestApp;
  let referralId = '';
  const stages: unknown[] = [];

  const stage = async (): Promise<void> => {
    const answer = await service.as('admin').get(`/api/v1/referrals/${referralId}`);
    stages.push((answer.body as { stage: string }).stage);
  };
  const post = async (who: 'admin' | 'clinician', path: string, body: object): Promise<string> => {
    const answer = await service.as(who).post(`/api/v1${path}`, body);
    expect(answer.status, JSON.stringify(answer.body)).toBe(201);
    return (answer.body as { id: string }).id;
  };

  beforeAll(async () => {
    service = await startApp();
    const patientId = await post('admin', '/patients', aPatient());
    const body = aReferralBody(patientId, service.siteId, { receivedOn: '2026-04-02', plannedSessions: 4 });
    referralId = await post('admin', '/referrals', body);
    await stage();
    await post('clinician', `/referrals/${referralId}/triage`, {
      decision: 'accepted',
      decidedOn: '2026-04-03',
    });
    await stage();
    await post('admin', `/referrals/${referralId}/offers`, {
      kind: 'assessment',
      offeredOn: '2026-04-07',
      response: 'accepted',
    });
    await post('clinician', `/referrals/${referralId}/assessments`, anAssessment(service.siteId));
    await stage();
    const days = ['2026-05-04', '2026-05-07', '2026-05-11', '2026-05-14'];
    for (const [index, heldOn] of days.entries()) {
      const session = await post('admin', '/sessions', {
        siteId: service.siteId,
        heldOn,
        mode: 'centre',
        isSupervised: true,
      });
      const outcome = index === 1 ? 'did-not-attend' : 'attended';
      const register = { attendances: [{ referralId, outcome }] };
      await service.as('admin').put(`/api/v1/sessions/${session}/attendances`, register);
      if (index === 0) await stage();
    }
    const discharge = anAssessment(service.siteId, {
      timepoint: 'discharge',
      assessedOn: '2026-06-22',
      walkTests: [aShuttleWalk(240, 1), aShuttleWalk(250, 2)],
      sitToStands: [{ test: 'one-minute-sit-to-stand', repetitions: 20 }],
      questionnaires: [{ questionnaire: 'copd-assessment-test', items: [3, 3, 2, 3, 3, 2, 3, 2] }],
    });
    await post('clinician', `/referrals/${referralId}/assessments`, discharge);
    await stage();
    await post('clinician', `/referrals/${referralId}/closure`, {
      closedOn: '2026-06-24',
      reason: 'completed',
      exercisePlanGivenOn: '2026-06-22',
    });
    await stage();
  });
  afterAll(() => service.close());

  it('passes through every stage, each derived from what happened', () => {
    expect(stages).toEqual([
      'awaiting-triage',
      'awaiting-assessment',
      'awaiting-start',
      // As at 25 November: the six weeks since the start on 4 May have passed.
      'awaiting-discharge-assessment',
      'awaiting-closure',
      'closed',
    ]);
  });

  it('says how the person changed', async () => {
    const answer = await service.as('clinician').get(`/api/v1/referrals/${referralId}/outcomes`);
    // ISWT: better walks 200 and 250 m, +50 >= 47.5: improved. 1-min STS: 18 to 20, +2 < 3: little change.
    // CAT: 22 to 21, improvement 1 < 2: little change.
    expect((answer.body as { measures: unknown[] }).measures).toMatchObject([
      { measureId: 'incremental-shuttle-walk-distance', change: 50, class: 'improved', isLikeForLike: true },
      { measureId: 'one-minute-sit-to-stand', change: 2, class: 'little-change' },
      { measureId: 'cat-total', change: -1, improvement: 1, class: 'little-change' },
    ]);
    // Three of four planned sessions attended.
    expect(answer.body).toMatchObject({ sessions: { supervisedAttended: 3, supervisedExpected: 4 } });
  });

  it('says the share of the predicted walk by the equation of Probst 2012', async () => {
    const answer = await service.as('clinician').get(`/api/v1/referrals/${referralId}/outcomes`);
    const [walk] = (answer.body as { measures: { baseline: { predicted: Record<string, number> } }[] })
      .measures;
    // Woman born 9 March 1954, 72 years on 20 April 2026; 68.5 kg, 160 cm: 26.7578 kg/m2.
    // 1449.7 - 11.735 x 72 - 5.686 x 26.7578125 = 1449.7 - 844.92 - 152.1449 = 452.635 m; 200 / 452.635 = 44.19 %.
    expect(walk?.baseline.predicted['predicted']).toBeCloseTo(452.635, 2);
    expect(walk?.baseline.predicted['percentPredicted']).toBeCloseTo(44.19, 1);
  });

  it('counts the person in the quarter', async () => {
    const answer = await service.as('lead').get('/api/v1/reports/quarterly?period=2026-27-Q1');
    const report = answer.body as {
      indicators: { figure: { id: string; numerator: number; denominator: number } }[];
      waits: { to: string; from: string; daysOfThoseWhoReachedIt: { median: number } }[];
    };
    const figure = (id: string) => report.indicators.find((row) => row.figure.id === id)?.figure;
    for (const id of ['uptake', 'started-within-90-days', 'completed-of-started', 'exercise-plan-given']) {
      expect(figure(id), id).toMatchObject({ numerator: 1, denominator: 1 });
    }
    // 2 April to 4 May is 32 days, 2 April to 20 April 18.
    const medians = report.waits.filter((wait) => wait.from === 'receipt');
    expect(medians.map((wait) => wait.daysOfThoseWhoReachedIt.median).sort((a, b) => a - b)).toEqual([
      18, 32,
    ]);
  });

  it('reads the same on the terminal', async () => {
    const answer = await service.as('lead').get('/api/v1/reports/quarterly.txt?period=2026-27-Q1');
    expect(answer.headers['content-type']).toBe('text/plain; charset=utf-8');
    expect(answer.text).toMatch(/Started within 90 days of receipt +1 of 1 +100\.0 %/);
    expect(Math.max(...answer.text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
  });
});
