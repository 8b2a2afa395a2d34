import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cautionNamed, cautionsAt, inShort } from '../../support/cautions-api.js';
import { anAssessment } from '../../support/entries.js';
import type { Body } from '../../support/entries.js';
import { asRecord, asRecords, expectProblem, itemsOf } from '../../support/response.js';
import { givenAssessment, givenReferral } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

const NO_WALK: Body = {
  walkTests: [{ test: 'incremental-shuttle-walk', attempt: 1, notDoneReason: 'not-safe' }],
};

describe('findings of the safety checklist', () => {
  let service: TestApp;
  beforeAll(async () => {
    service = await startApp();
  });
  afterAll(() => service.close());

  const raisedBy = async (changes: Body) => {
    const assessmentId = await givenAssessment(service, await givenReferral(service), changes);
    return cautionsAt(service, assessmentId);
  };
  const send = async (safetyFindings: readonly string[]) => {
    const path = `/api/v1/referrals/${await givenReferral(service)}/assessments`;
    return service.as('clinician').post(path, anAssessment(service.siteId, { safetyFindings }));
  };

  it('raise one caution each, and another where a walk was done despite an absolute contraindication', async () => {
    const found = { safetyScreen: 'concern', safetyFindings: ['unstable-angina'] };
    const walked = await raisedBy(found);
    expect(inShort(walked)).toEqual([
      'found-unstable-angina !',
      'walked-despite-absolute-contraindication !',
    ]);
    expect(cautionNamed(walked, 'found-unstable-angina')).toMatchObject({
      text: 'Found: Unstable angina. An absolute contraindication to a walk test.',
      source: { id: 'holland-2014-table-4', status: 'retrieved', mark: null },
    });
    expect(cautionNamed(walked, 'walked-despite-absolute-contraindication')['text']).toMatch(
      /^ISWT recorded as done .* Unstable angina\.$/,
    );
    expect(inShort(await raisedBy({ ...found, ...NO_WALK }))).toEqual(['found-unstable-angina !']);
  });

  it('weigh a relative contraindication less, and never leave a concern unsaid where a walk was done', async () => {
    const relative = { safetyFindings: ['moderate-valve-stenosis'] };
    expect(inShort(await raisedBy({ ...relative, safetyScreen: 'concern' }))).toEqual([
      'found-moderate-valve-stenosis !',
      'walked-despite-concern !',
    ]);
    expect(inShort(await raisedBy({ ...relative, safetyScreen: 'no-concern' }))).toEqual([
      'found-moderate-valve-stenosis !',
      'safety-screen-disagrees',
    ]);
    expect(inShort(await raisedBy({ safetyScreen: 'concern' }))).toEqual(['walked-despite-concern !']);
  });

  it('are missed where a walk was done and nobody wrote down that they were looked for', async () => {
    expect(inShort(await raisedBy({ safetyScreen: 'not-recorded' }))).toEqual(['safety-screen-not-recorded']);
    expect(inShort(await raisedBy({ safetyScreen: 'not-recorded', ...NO_WALK }))).toEqual([]);
    expect(inShort(await raisedBy({ safetyScreen: 'no-concern' }))).toEqual([]);
  });

  it.each([
    ['an item that is not on the list', ['unstable-angina', 'no-such-item'], 1, 'unknown-finding'],
    ['an item in other letters', ['Unstable-Angina'], 0, 'unknown-finding'],
    ['a rule of conduct, which nobody can find in a person', ['hold-course'], 0, 'not-a-finding'],
    ['the same item twice', ['leg-thrombosis', 'leg-thrombosis'], 1, 'listed-twice'],
  ])('are refused at the place of %s', async (_name, findings, index, code) => {
    const before = await service.countRows();
    const response = await send(findings);
    expectProblem(response, {
      status: 422,
      type: 'rules-broken',
      pointers: [`/safetyFindings/${index}`],
      codes: [code],
    });
    const { referral, patient, ...after } = await service.countRows();
    const { referral: referrals, patient: patients, ...others } = before;
    // The referral that the entry was for was made on purpose; nothing else was written.
    expect([referral, patient]).toEqual([Number(referrals) + 1, Number(patients) + 1]);
    expect(after).toEqual(others);
  });

  it('are read back with the assessment, and are no business of an administrator', async () => {
    const referralId = await givenReferral(service);
    const safetyFindings = ['leg-thrombosis', 'stop-chest-pain', 'community-nausea'];
    const body = { safetyScreen: 'concern', safetyFindings, safetyNote: 'Calf swollen.', ...NO_WALK };
    await givenAssessment(service, referralId, body);
    const path = `/api/v1/referrals/${referralId}/assessments`;
    const [shown] = itemsOf(await service.as('clinician').get(path));
    expect(asRecord(shown?.['entry'])).toMatchObject({
      safetyScreen: 'concern',
      safetyFindings,
      safetyNote: 'Calf swollen.',
    });
    expectProblem(await service.as('admin').get(path), { status: 403, type: 'not-allowed' });
  });

  it('can be named by every id that the checklist offers for it, and by no other', async () => {
    const checklist = await service.as('clinician').get('/api/v1/safety-checklist');
    const items = asRecords(asRecord(checklist.body)['lists']).flatMap((list) => asRecords(list['items']));
    const idsWhere = (canBeFound: boolean): readonly string[] =>
      items.filter((item) => item['canBeFound'] === canBeFound).map((item) => String(item['id']));
    const all = await send(idsWhere(true));
    expect(all.status, all.text).toBe(201);
    const none = await send(idsWhere(false));
    expect(none.status).toBe(422);
    expect(asRecords(asRecord(none.body)['errors']).map(({ code }) => code)).toEqual(
      idsWhere(false).map(() => 'not-a-finding'),
    );
  });
});
