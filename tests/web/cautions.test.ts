import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { acknowledge, cautionNamed, cautionsAt } from '../support/cautions-api.js';
import { pagesAs } from '../support/page-client.js';
import type { PageClient } from '../support/page-client.js';
import { givenAssessment, givenTriagedReferral } from '../support/scenario.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

const RISK = { cautionId: 'phq-9-item-9-above-zero', measureId: 'phq-9' };
const KEY = `${RISK.cautionId}.${RISK.measureId}`;
const FIELD = `actionTaken.${KEY}`;
const DONE = 'Spoke with the person, rang the practice & wrote to it.';

let app: TestApp;
let clinician: PageClient;
beforeAll(async () => {
  app = await startApp();
  clinician = await pagesAs(app, 'clinician');
});
afterAll(() => app.close());

/** An assessment with an answer above zero to item 9 of the PHQ-9. */
async function givenRisk() {
  const referralId = await givenTriagedReferral(app);
  const questionnaire = {
    questionnaire: 'patient-health-questionnaire-9',
    items: [1, 1, 0, 0, 0, 0, 0, 0, 1],
  };
  const id = await givenAssessment(app, referralId, {
    walkTests: [],
    sitToStands: [],
    questionnaires: [questionnaire],
  });
  const recorded = `/referrals/${referralId}/assessments/baseline/recorded/${id}`;
  return { id, path: `/assessments/${id}/cautions`, referral: `/referrals/${referralId}`, recorded };
}
const riskOf = async (id: string) => cautionNamed(await cautionsAt(app, id), RISK.cautionId);

describe('the cautions of an assessment', () => {
  it('are reached from the referral and from what was recorded, each with its source', async () => {
    const { id, path, referral, recorded } = await givenRisk();
    const onReferral = (await clinician.get(referral)).text;
    expect(onReferral).toContain(`href="${path}"`);
    expect(onReferral).toMatch(/Baseline assessment of \d+ [A-Z][a-z]+ 2026: /);
    expect((await clinician.get(recorded)).text).toContain(`href="${path}"`);
    const { text } = await clinician.get(path);
    for (const caution of await cautionsAt(app, id)) {
      expect(text).toContain(String(caution['text']));
      const source = caution['source'] as { readonly text: string };
      expect(text).toContain(source.text);
    }
  });

  it('are acknowledged by name, with what was done; who and when stand there afterwards', async () => {
    const { id, path, referral, recorded } = await givenRisk();
    const answer = await clinician.submit(path, { caution: KEY, [FIELD]: DONE });
    expect([answer.status, answer.headers['location']]).toEqual([303, path]);
    expect(await riskOf(id)).toMatchObject({
      acknowledgement: { by: 'Test clinician', actionTaken: DONE },
    });
    const words = 'Acknowledged by Test clinician, 25 November 2026, 10:00. What was done: Spoke with';
    for (const page of [path, referral, recorded]) {
      expect((await clinician.get(page)).text, page).toContain(words);
    }
    expect((await clinician.get(path)).text).not.toContain(`name="${FIELD}"`);
    expect((await clinician.get(referral)).text).not.toContain('Cautions that nobody has acknowledged');
  });

  it('are not acknowledged without a word of what was done, and long words stay to be cut', async () => {
    const { id, path } = await givenRisk();
    const nothing = await clinician.submit(path, { caution: KEY, [FIELD]: '  ' });
    expect(nothing.status).toBe(422);
    expect(nothing.text).toContain(`href="#field-${FIELD.replaceAll('.', '_')}"`);
    const long = await clinician.submit(path, { caution: KEY, [FIELD]: 'x'.repeat(2001) });
    expect(long.status).toBe(422);
    expect(long.text).toContain('x'.repeat(2001));
    expect(await riskOf(id)).toMatchObject({ acknowledgement: null });
  });

  it('are acknowledged once: the second is told, and what they typed is not stored', async () => {
    const { id, path } = await givenRisk();
    const { text } = await clinician.get(path);
    const csrf = /name="_csrf" value="([^"]*)"/.exec(text)?.[1] ?? '';
    await acknowledge(app, id, RISK, 'lead');
    const late = await clinician.post(path, { _csrf: csrf, caution: KEY, [FIELD]: DONE });
    expect(late.status).toBe(409);
    expect(late.text).toContain('Already acknowledged');
    expect(await riskOf(id)).toMatchObject({ acknowledgement: { by: 'Test lead' } });
  });

  it('have one form at a time: the others are led to, and keep nothing typed waiting', async () => {
    const referralId = await givenTriagedReferral(app);
    const hads = Array.from({ length: 14 }, () => 2);
    const questionnaires = [
      { questionnaire: 'patient-health-questionnaire-9', items: [1, 1, 0, 0, 0, 0, 0, 0, 1] },
      { questionnaire: 'hospital-anxiety-and-depression-scale', items: hads },
    ];
    const id = await givenAssessment(app, referralId, { walkTests: [], sitToStands: [], questionnaires });
    const path = `/assessments/${id}/cautions`;
    const open = (await cautionsAt(app, id)).filter((caution) => caution['mustBeAcknowledged'] === true);
    expect(open.length).toBeGreaterThan(1);
    for (const { id: cautionId, measureId } of open) {
      const key = typeof measureId === 'string' ? `${String(cautionId)}.${measureId}` : String(cautionId);
      const { text } = await clinician.get(`${path}?caution=${key}`);
      expect(text.match(/<textarea/g)).toHaveLength(1);
      expect(text).toContain(`name="actionTaken.${key}"`);
      expect((await clinician.submit(path, { caution: key, [`actionTaken.${key}`]: DONE })).status).toBe(303);
    }
    expect((await clinician.get(path)).text).not.toContain('<textarea');
  });

  it('take no caution that the assessment does not have', async () => {
    const { path } = await givenRisk();
    for (const key of ['', 'no-such-caution', RISK.cautionId]) {
      const answer = await clinician.submit(path, { caution: key, [`actionTaken.${key}`]: DONE });
      expect(answer.status, key).toBe(422);
    }
  });

  it('are nothing that an administrator or another team sees', async () => {
    const { path, referral } = await givenRisk();
    const admin = await pagesAs(app, 'admin');
    expect((await admin.get(path)).status).toBe(403);
    expect((await admin.get(referral)).text).not.toContain('/cautions');
    expect((await clinician.get('/assessments/01a2183c-f333-7460-94ca-962303c36fcd/cautions')).status).toBe(
      404,
    );
  });
});
