import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { aPatient, aReferralBody, anAssessment } from '../../support/entries.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

interface Caution {
  id: string;
  measureId: string | null;
  mustBeAcknowledged: boolean;
  isFromFormerVersion: boolean;
  acknowledgement: { by: string; actionTaken: string } | null;
}

const PHQ_9 = { questionnaire: 'patient-health-questionnaire-9', items: [1, 1, 0, 0, 0, 0, 0, 0, 1] };

describe('cautions of an assessment', () => {
  let service: TestApp;
  let referralId = '';
  beforeEach(async () => {
    service = await startApp();
    const patient = await service.as('admin').post('/api/v1/patients', aPatient());
    const body = aReferralBody((patient.body as { id: string }).id, service.siteId);
    referralId = ((await service.as('admin').post('/api/v1/referrals', body)).body as { id: string }).id;
  });
  afterEach(() => service.close());

  const record = async (changes: Record<string, unknown>): Promise<string> => {
    const path = `/api/v1/referrals/${referralId}/assessments`;
    const answer = await service.as('clinician').post(path, anAssessment(service.siteId, changes));
    expect(answer.status, JSON.stringify(answer.body)).toBe(201);
    return (answer.body as { id: string }).id;
  };
  const cautions = async (id: string): Promise<Caution[]> =>
    ((await service.as('clinician').get(`/api/v1/assessments/${id}/cautions`)).body as { items: Caution[] })
      .items;
  const acknowledge = (id: string, cautionId: string, measureId: string | null) =>
    service.as('clinician').post(`/api/v1/assessments/${id}/acknowledgements`, {
      cautionId,
      measureId,
      actionTaken: 'Spoke with the person and rang the practice.',
    });

  it('ask for an acknowledgement by name when item 9 of the PHQ-9 is above zero, and keep it', async () => {
    const id = await record({ questionnaires: [PHQ_9] });
    const [caution] = (await cautions(id)).filter((each) => each.id === 'phq-9-item-9-above-zero');
    expect(caution).toMatchObject({ mustBeAcknowledged: true, acknowledgement: null });
    const answer = await acknowledge(id, 'phq-9-item-9-above-zero', caution?.measureId ?? null);
    expect(answer.status).toBe(201);
    expect(answer.body).toMatchObject({ acknowledgement: { by: 'Test clinician' } });
    expect((await acknowledge(id, 'phq-9-item-9-above-zero', caution?.measureId ?? null)).status).toBe(409);
  });

  it('are raised by an unanswered item 9, such as a typed total', async () => {
    const typed = { questionnaire: PHQ_9.questionnaire, typedScores: [{ measure: 'phq-9', value: 2 }] };
    const id = await record({ questionnaires: [typed] });
    expect((await cautions(id)).map((each) => each.id)).toContain('phq-9-item-9-unanswered');
  });

  it('are not taken away by a correction of the score before they are acknowledged', async () => {
    const id = await record({ questionnaires: [PHQ_9] });
    const corrected = anAssessment(service.siteId, {
      questionnaires: [{ ...PHQ_9, items: [1, 1, 0, 0, 0, 0, 0, 0, 0] }],
      reason: 'Read from the form again',
    });
    expect((await service.as('clinician').put(`/api/v1/assessments/${id}`, corrected)).status).toBe(200);
    const standing = (await cautions(id)).find((each) => each.id === 'phq-9-item-9-above-zero');
    expect(standing).toMatchObject({ isFromFormerVersion: true, acknowledgement: null });
  });

  it('are raised by resting pressure by the stricter limits, and not by the wider ones once the team chose them', async () => {
    const resting = { systolicMmHg: 185, diastolicMmHg: 90 };
    const id = await record({ resting, confirmed: ['/resting/systolicMmHg'] });
    const found = async (): Promise<boolean> =>
      (await cautions(id)).some((each) => each.id.startsWith('resting-systolic'));
    expect(await found()).toBe(true);
    const settings = (await service.as('lead').get('/api/v1/settings')).body as Record<string, unknown>;
    const { version, ...choices } = settings;
    expect(version).toBe(0);
    const chosen = { ...choices, restingLimits: 'ers-ats-2014', reason: 'Local policy' };
    expect((await service.as('lead').put('/api/v1/settings', chosen)).status).toBe(200);
    expect(await found()).toBe(false);
  });

  it('stand with the outcomes of the referral, by a stable id', async () => {
    await record({ questionnaires: [PHQ_9] });
    const outcomes = await service.as('clinician').get(`/api/v1/referrals/${referralId}/outcomes`);
    const ids = (outcomes.body as { cautions: { id: string; isAcknowledged: boolean }[] }).cautions;
    expect(ids).toContainEqual(
      expect.objectContaining({
        id: 'phq-9-item-9-above-zero',
        mustBeAcknowledged: true,
        isAcknowledged: false,
      }),
    );
  });

  it('refuse a finding that is not on the checklist, and keep those that are', async () => {
    const path = `/api/v1/referrals/${referralId}/assessments`;
    const refusal = await service
      .as('clinician')
      .post(path, anAssessment(service.siteId, { safetyFindings: ['no-such-item'] }));
    expect(refusal.status).toBe(422);
    expect(refusal.body).toMatchObject({
      errors: [{ pointer: '/safetyFindings/0', code: 'unknown-finding' }],
    });
    const id = await record({ safetyFindings: ['unstable-angina'], safetyScreen: 'concern' });
    expect(
      (await cautions(id)).some((each) => each.id.includes('unstable-angina') && each.mustBeAcknowledged),
    ).toBe(true);
  });

  it('cannot be acknowledged where none stands', async () => {
    const id = await record({});
    expect((await acknowledge(id, 'phq-9-item-9-above-zero', null)).status).toBe(422);
  });

  it('keep reported and supervised sessions apart', async () => {
    const path = `/api/v1/referrals/${referralId}/diary-weeks`;
    const week = { weekStartingOn: '2026-05-04', sessionsReported: 3 };
    expect((await service.as('clinician').post(path, week)).status).toBe(201);
    expect((await service.as('clinician').post(path, { ...week, sessionsReported: 4 })).status).toBe(201);
    expect(
      (await service.as('clinician').post(path, { ...week, weekStartingOn: '2026-05-05' })).body,
    ).toMatchObject({
      errors: [{ pointer: '/weekStartingOn', code: 'not-a-monday' }],
    });
    expect((await service.as('clinician').post(path, { ...week, sessionsReported: 22 })).status).toBe(422);
    await record({});
    const outcomes = await service.as('clinician').get(`/api/v1/referrals/${referralId}/outcomes`);
    expect(outcomes.body).toMatchObject({
      sessions: { supervisedAttended: 0, diaryWeeks: 1, diarySessionsReported: 4 },
    });
  });
});
