import type supertest from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { aPatient, aReferralBody, TEST_NHS_NUMBERS } from '../support/entries.js';
import { pagesAs } from '../support/page-client.js';
import type { PageClient } from '../support/page-client.js';
import { asRecord } from '../support/response.js';
import { created, givenClosedReferral } from '../support/scenario.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

/** Today is Wednesday 25 November 2026. */
let app: TestApp;
let admin: PageClient;

beforeAll(async () => {
  app = await startApp();
  admin = await pagesAs(app, 'admin');
});
afterAll(() => app.close());

/** Everything that the form asks, as somebody fills it in. */
function filledIn(changes: Readonly<Record<string, string>> = {}): Record<string, string> {
  return {
    nhsNumber: '',
    nhsNumberMissingReason: 'not-yet-traced',
    familyName: 'Sandwort',
    givenName: 'Mavis',
    'bornOn-day': '9',
    'bornOn-month': '3',
    'bornOn-year': '1954',
    sexAtBirth: 'female',
    gender: 'not-stated',
    ethnicCategory: 'Z',
    smokingStatus: 'former',
    interpreterNeed: 'no',
    livesAlone: 'not-known',
    homeOxygen: 'no',
    deprivationQuintile: '2',
    deprivationIndexYear: '2019',
    gpPracticeCode: 'z99001',
    'receivedOn-day': '24',
    'receivedOn-month': '11',
    'receivedOn-year': '2026',
    source: 'general-practice',
    diagnosis: 'copd',
    otherConditions: 'Two lines\r\nof conditions',
    pathway: 'stable',
    mrcGrade: '4',
    siteId: app.siteId,
    commissionerId: app.commissionerId,
    deliveryMode: 'centre',
    plannedSessions: '',
    plannedWeeks: '',
    ...changes,
  };
}

async function register(changes: Readonly<Record<string, string>>): Promise<supertest.Response> {
  return admin.submit(
    '/referrals/new',
    filledIn({ givenName: `Mavis ${changes['familyName'] ?? ''}`, ...changes }),
  );
}

/** The referral that a form made, as the API gives it, with its person. */
async function made(response: supertest.Response) {
  expect(response.status, response.text.replaceAll(/<[^>]+>/g, ' ')).toBe(303);
  const address = String(response.headers['location']);
  const referral = asRecord((await app.as('lead').get(`/api/v1${address}`)).body);
  const patient = asRecord(
    (await app.as('lead').get(`/api/v1/patients/${String(referral['patientId'])}`)).body,
  );
  return { address, referral, patient };
}

describe('registering a referral of a new person', () => {
  it('stores the person and the referral with everything that was asked', async () => {
    const { referral, patient } = await made(await register({ familyName: 'Whole' }));
    expect(patient).toMatchObject({
      nhsNumber: null,
      nhsNumberMissingReason: 'not-yet-traced',
      familyName: 'Whole',
      givenName: 'Mavis Whole',
      bornOn: '1954-03-09',
      sexAtBirth: 'female',
      gender: 'not-stated',
      ethnicCategory: 'Z',
      smokingStatus: 'former',
      interpreterNeed: 'no',
      livesAlone: 'not-known',
      homeOxygen: 'no',
      deprivationQuintile: 2,
      deprivationIndexYear: 2019,
      gpPracticeCode: 'Z99001',
    });
    expect(referral).toMatchObject({
      receivedOn: '2026-11-24',
      source: 'general-practice',
      diagnosis: 'copd',
      otherConditions: 'Two lines\nof conditions',
      pathway: 'stable',
      hospitalDischargedOn: null,
      mrcGrade: 4,
      siteId: app.siteId,
      commissionerId: app.commissionerId,
      deliveryMode: 'centre',
      plannedSessions: null,
    });
  });

  it('begins with not known, which is told apart from not stated', async () => {
    const { text } = await admin.get('/referrals/new');
    expect(text).toContain('<option value="not-known" selected');
    expect(text).toContain('<option value="99" selected');
    expect(text).toContain('value="not-stated"');
  });

  it('says everything that is wrong at its field and in the summary, and keeps what was typed', async () => {
    const before = await app.countRows();
    const answer = await register({
      nhsNumber: '9990000019',
      nhsNumberMissingReason: '',
      familyName: '',
      'bornOn-day': '31',
      'bornOn-month': '2',
      source: '',
      mrcGrade: '7',
      gpPracticeCode: 'no code!',
    });
    expect(answer.status).toBe(422);
    for (const field of ['familyName', 'bornOn', 'source', 'mrcGrade', 'gpPracticeCode']) {
      expect(answer.text).toContain(`href="#field-${field}"`);
      expect(answer.text).toContain(`id="field-${field}-error"`);
    }
    expect(answer.text).toContain('value="9990000019"');
    expect(answer.text).toContain('Two lines\nof conditions');
    expect(answer.text).toContain('value="no code!"');
    expect(await app.countRows()).toEqual(before);
  });

  it('tells faults of the person and of the referral together, and stores neither', async () => {
    const before = await app.countRows();
    const answer = await register({
      familyName: 'Faulty',
      nhsNumber: '9990000019',
      nhsNumberMissingReason: '',
      'receivedOn-year': '2027',
    });
    expect(answer.status).toBe(422);
    expect(answer.text).toContain('The last digit does not agree with the others');
    expect(answer.text).toContain('The date cannot be in the future');
    expect(await app.countRows()).toEqual(before);
  });

  it('asks for the discharge from hospital after an exacerbation, or that it is not known', async () => {
    const asked = await register({ familyName: 'Discharged', pathway: 'after-exacerbation' });
    expect(asked.status).toBe(422);
    expect(asked.text).toContain('href="#field-hospitalDischargedOn"');
    const unknown = {
      familyName: 'Inhospital',
      pathway: 'after-exacerbation',
      hospitalDischargeNotKnown: 'yes',
    };
    expect((await made(await register(unknown))).referral).toMatchObject({ hospitalDischargedOn: null });
    const known = {
      familyName: 'Discharged',
      pathway: 'after-exacerbation',
      'hospitalDischargedOn-day': '20',
      'hospitalDischargedOn-month': '11',
      'hospitalDischargedOn-year': '2026',
    };
    expect((await made(await register(known))).referral).toMatchObject({
      hospitalDischargedOn: '2026-11-20',
    });
  });

  it('makes one record, however often the form is sent', async () => {
    const { text } = await admin.get('/referrals/new');
    const hidden = (name: string): string =>
      new RegExp(`name="${name}" value="([^"]+)"`).exec(text)?.[1] ?? '';
    const fields = {
      _csrf: hidden('_csrf'),
      _key: hidden('_key'),
      ...filledIn({ familyName: 'Twice', givenName: 'Twyla' }),
    };
    const before = await app.countRows();
    const answers = await Promise.all([
      admin.post('/referrals/new', fields),
      admin.post('/referrals/new', fields),
    ]);
    expect(answers.map(({ status }) => status)).toEqual([303, 303]);
    expect(answers[0]?.headers['location']).toBe(answers[1]?.headers['location']);
    const after = await app.countRows();
    expect([after['patient'], after['referral']]).toEqual([
      Number(before['patient']) + 1,
      Number(before['referral']) + 1,
    ]);
  });
});

describe('registering a referral of somebody who may be known', () => {
  let patientId: string;
  let openId: string;
  beforeAll(async () => {
    patientId = await created(
      app,
      '/api/v1/patients',
      aPatient({ familyName: 'Known', nhsNumber: TEST_NHS_NUMBERS[2] }),
    );
    openId = await created(app, '/api/v1/referrals', aReferralBody(patientId, app.siteId));
  });

  it('shows who it may be before anything is stored', async () => {
    const before = await app.countRows();
    const answer = await register({ familyName: 'K\u00d1OWN'.replace('\u00d1', 'n'), givenName: 'Maisie' });
    expect(answer.status).toBe(422);
    expect(answer.text).toContain('Your team may know this person already');
    expect(answer.text).toContain(`value="${patientId}"`);
    expect(answer.text).toContain(`/referrals/${openId}"`);
    expect(await app.countRows()).toEqual(before);
  });

  it('takes the word of whoever says that it is somebody else', async () => {
    const { patient } = await made(
      await register({ familyName: 'Known', givenName: 'Maisie', person: 'new' }),
    );
    expect(patient).toMatchObject({ givenName: 'Maisie' });
  });

  it('never makes a second record of one NHS number', async () => {
    const number = { nhsNumber: TEST_NHS_NUMBERS[2], nhsNumberMissingReason: '' };
    const answer = await register({ ...number, familyName: 'Other', person: 'new' });
    expect(answer.status).toBe(422);
    expect(answer.text).toContain('The person is already registered');
  });

  it('says that there is an open referral, and makes no second one', async () => {
    const answer = await register({ familyName: 'Known', person: patientId });
    expect(answer.status).toBe(422);
    expect(answer.text).toContain('A referral is already open');
  });

  it('registers a new referral of a known person, whose record stays as it is', async () => {
    const closed = await givenClosedReferral(app);
    const known = String(
      asRecord((await app.as('lead').get(`/api/v1/referrals/${closed}`)).body)['patientId'],
    );
    const page = await admin.get(`/referrals/new?person=${known}`);
    expect(page.text).toContain('A referral of a person whom your team knows');
    expect(page.text).not.toContain('name="familyName"');
    const { text } = page;
    const hidden = (name: string): string =>
      new RegExp(`name="${name}" value="([^"]+)"`).exec(text)?.[1] ?? '';
    const fields = filledIn({ person: known });
    delete fields['familyName'];
    const keys = { _csrf: hidden('_csrf'), _key: hidden('_key') };
    const { referral, patient } = await made(await admin.post('/referrals/new', { ...keys, ...fields }));
    expect(referral['patientId']).toBe(known);
    expect(patient).toMatchObject({ version: 1, ethnicCategory: '99' });
  });

  it('looks a person up on request, and stores nothing', async () => {
    const lookUp = (changes: Readonly<Record<string, string>>) =>
      admin.submit('/referrals/new', filledIn(changes), '/referrals/new/person');
    const found = await lookUp({ nhsNumber: '999 000 0034', familyName: '', 'bornOn-year': '' });
    expect(found.status).toBe(200);
    expect(found.text).toContain(`value="${patientId}"`);
    const nobody = await lookUp({ familyName: 'Nobody', 'bornOn-day': '1' });
    expect(nobody.text).toContain('Not known to your team yet');
    const nothing = await lookUp({ familyName: '', 'bornOn-year': '' });
    expect(nothing.status).toBe(422);
  });
});
