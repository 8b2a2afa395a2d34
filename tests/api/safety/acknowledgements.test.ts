import { randomUUID } from 'node:crypto';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { acknowledge, cautionNamed, cautionsAt, inShort } from '../../support/cautions-api.js';
import { anAssessment } from '../../support/entries.js';
import type { Body } from '../../support/entries.js';
import { asRecord, asRecords, expectProblem, itemsOf, walkPages } from '../../support/response.js';
import { givenAssessment, givenReferral } from '../../support/scenario.js';
import { startApp, TEST_INSTANT } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

const RISK = { cautionId: 'phq-9-item-9-above-zero', measureId: 'phq-9' };

/** The PHQ-9 with an answer to item 9. */
const phq9 = (answer: number): Body => ({
  walkTests: [],
  sitToStands: [],
  questionnaires: [
    { questionnaire: 'patient-health-questionnaire-9', items: [1, 1, 0, 0, 0, 0, 0, 0, answer] },
  ],
});

describe('acknowledging a caution', () => {
  let service: TestApp;
  let referralId = '';
  let assessmentId = '';
  beforeEach(async () => {
    service = await startApp();
    referralId = await givenReferral(service);
    assessmentId = await givenAssessment(service, referralId, phq9(1));
  });
  afterEach(() => service.close());

  const risk = async () => cautionNamed(await cautionsAt(service, assessmentId), RISK.cautionId);
  const correctTo = async (answer: number): Promise<void> => {
    const body = { ...anAssessment(service.siteId, phq9(answer)), reason: 'Read from the form again' };
    const response = await service.as('clinician').put(`/api/v1/assessments/${assessmentId}`, body);
    expect(response.status, response.text).toBe(200);
  };

  it('keeps the name, the time and what was done', async () => {
    expect(await risk()).toMatchObject({ mustBeAcknowledged: true, acknowledgement: null });
    const response = await acknowledge(service, assessmentId, {
      ...RISK,
      actionTaken: ' Rang the practice. ',
    });
    expect(response.status, response.text).toBe(201);
    const kept = { by: 'Test clinician', at: TEST_INSTANT, actionTaken: 'Rang the practice.' };
    expect(asRecord(response.body)['acknowledgement']).toEqual(kept);
    expect((await risk())['acknowledgement']).toEqual(kept);
  });

  it('shows in the outcomes of the referral', async () => {
    const inOutcomes = async () => {
      const response = await service.as('lead').get(`/api/v1/referrals/${referralId}/outcomes`);
      return asRecords(asRecord(response.body)['cautions']).find(({ id }) => id === RISK.cautionId);
    };
    expect(await inOutcomes()).toMatchObject({ assessmentId, isAcknowledged: false });
    await acknowledge(service, assessmentId, RISK);
    expect(await inOutcomes()).toMatchObject({ assessmentId, isAcknowledged: true });
  });

  it('is done once: whoever comes second is told so, and changes nothing', async () => {
    await acknowledge(service, assessmentId, RISK);
    const before = await service.countRows();
    const second = await acknowledge(service, assessmentId, { ...RISK, actionTaken: 'Nothing.' }, 'lead');
    expectProblem(second, { status: 409, type: 'already-acknowledged' });
    expect(await service.countRows()).toEqual(before);
    expect(asRecord((await risk())['acknowledgement'])['by']).toBe('Test clinician');
  });

  it('is done once even when two people do it at the same moment', async () => {
    const both = await Promise.all([
      acknowledge(service, assessmentId, RISK),
      acknowledge(service, assessmentId, RISK, 'lead'),
    ]);
    expect(both.map(({ status }) => status).sort()).toEqual([201, 409]);
    expect((await service.countRows())['acknowledgement']).toBe(1);
  });

  it.each<[string, Body]>([
    ['there is not', { cautionId: 'no-such-caution', measureId: null }],
    ['belongs to a measure, without it', { ...RISK, measureId: null }],
    ['belongs to another measure', { ...RISK, measureId: 'gad-7' }],
    ['this assessment did not raise', { cautionId: 'phq-9-case-range', measureId: 'phq-9' }],
  ])('is refused for a caution that %s', async (_name, request) => {
    const before = await service.countRows();
    expectProblem(await acknowledge(service, assessmentId, request), {
      status: 422,
      type: 'rules-broken',
      pointers: ['/cautionId'],
      codes: ['no-such-caution'],
    });
    expect(await service.countRows()).toEqual(before);
  });

  it('is refused for a caution that only shows something', async () => {
    const single = await givenAssessment(service, await givenReferral(service), {
      walkTests: [{ test: 'six-minute-walk', attempt: 1, distanceM: 300, courseLengthM: 30 }],
    });
    const shown = 'no-practice-walk';
    const { measureId } = cautionNamed(await cautionsAt(service, single), shown);
    expectProblem(await acknowledge(service, single, { cautionId: shown, measureId }), {
      status: 422,
      type: 'rules-broken',
      codes: ['no-such-caution'],
    });
  });

  it.each<[string, Body, string]>([
    ['nothing that was done', { actionTaken: '   ' }, '/actionTaken'],
    ['too much', { actionTaken: 'x'.repeat(2001) }, '/actionTaken'],
    ['a name of its own', { by: 'Somebody else' }, '/by'],
  ])('is refused with %s', async (_name, changes, pointer) => {
    expectProblem(await acknowledge(service, assessmentId, { ...RISK, ...changes }), {
      status: 400,
      type: 'malformed-request',
      pointers: [pointer],
    });
  });

  it('is for clinicians and leads of the team: to all others there is nothing', async () => {
    const path = `/api/v1/assessments/${assessmentId}/cautions`;
    for (const who of ['admin', 'commissioner'] as const) {
      expectProblem(await acknowledge(service, assessmentId, RISK, who), {
        status: 403,
        type: 'not-allowed',
      });
      expectProblem(await service.as(who).get(path), { status: 403, type: 'not-allowed' });
    }
    for (const id of [assessmentId, randomUUID()]) {
      const elsewhere = await acknowledge(service, id, RISK, 'other-team');
      expectProblem(elsewhere, { status: 404, type: 'not-found' });
    }
    expectProblem(await service.as('other-team').get(path), { status: 404, type: 'not-found' });
    expect((await risk())['acknowledgement']).toBeNull();
  });

  it('is still asked for after a correction that would no longer raise the caution', async () => {
    await correctTo(0);
    expect(await risk()).toMatchObject({
      isFromFormerVersion: true,
      mustBeAcknowledged: true,
      acknowledgement: null,
    });
    expect((await acknowledge(service, assessmentId, RISK)).status).toBe(201);
    expect(await risk()).toMatchObject({
      isFromFormerVersion: true,
      acknowledgement: { by: 'Test clinician' },
    });
  });

  it('is not taken back by a correction', async () => {
    await acknowledge(service, assessmentId, RISK);
    await correctTo(0);
    expect(await risk()).toMatchObject({
      isFromFormerVersion: true,
      acknowledgement: { by: 'Test clinician' },
    });
    await correctTo(2);
    expect(await risk()).toMatchObject({ isFromFormerVersion: false });
  });

  it('names each caution once, however many versions raised it', async () => {
    await correctTo(2);
    await correctTo(3);
    expect(inShort(await cautionsAt(service, assessmentId))).toEqual(['phq-9-item-9-above-zero phq-9 !']);
  });

  it('is told to the audit trail, without what was done', async () => {
    await acknowledge(service, assessmentId, RISK);
    const [told] = itemsOf(await service.as('lead').get('/api/v1/audit-events'));
    expect(told).toMatchObject({ action: 'caution-acknowledged', subjectId: assessmentId });
    expect(JSON.stringify(told)).not.toContain('rang the practice');
  });

  it('is asked for page by page, in an order that does not change', async () => {
    const all = await givenAssessment(service, await givenReferral(service), {
      safetyScreen: 'concern',
      safetyFindings: ['unstable-angina', 'leg-thrombosis', 'moderate-valve-stenosis'],
    });
    const { rows, pages } = await walkPages((cursor) =>
      service
        .as('clinician')
        .get(`/api/v1/assessments/${all}/cautions?limit=2${cursor === null ? '' : `&cursor=${cursor}`}`),
    );
    expect(pages).toBe(2);
    expect(rows).toEqual(await cautionsAt(service, all));
  });
});
