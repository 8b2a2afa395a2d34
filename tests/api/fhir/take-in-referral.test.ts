import { readFileSync } from 'node:fs';
import supertest from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Body } from '../../support/entries.js';
import { aPatient, aReferralBody, TEST_NHS_NUMBERS } from '../../support/entries.js';
import { aPatientResource, aSentReferral, aServiceRequest, extensions } from '../../support/fhir-referral.js';
import { faultsOfFhir } from '../../support/fhir-validators.js';
import { asRecord, asRecords, expectProblem, itemsOf, textAt } from '../../support/response.js';
import { created } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp, TestRole } from '../../support/start-app.js';

const PATH = '/api/v1/referrals/fhir';
const NHS = 'https://fhir.nhs.uk/Id/nhs-number';

let app: TestApp;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

/** Another person: the number is that of a list, or none. */
const numbered = (nhsNumber: string | null): Body =>
  nhsNumber === null
    ? {
        identifier: undefined,
        extension: extensions({
          'sex-at-birth': { valueCode: 'female' },
          'nhs-number-missing-reason': { valueCode: 'not-yet-traced' },
        }),
      }
    : { identifier: [{ system: NHS, value: nhsNumber }] };

const send = (body: Body, who: TestRole | 'other-team' = 'lead') => app.as(who).post(PATH, body);

/** What was made: the referral with its person, as the API shows them. */
const takenIn = async (body: Body, who: TestRole | 'other-team' = 'lead') => {
  const response = await send(body, who);
  expect(response.status, response.text).toBe(201);
  const answer = asRecord(response.body);
  const referral = asRecord(answer['referral']);
  expect(response.headers['location']).toBe(`/api/v1/referrals/${textAt(referral, 'id')}`);
  const patient = asRecord((await app.as(who).get(`/api/v1/patients/${textAt(referral, 'patientId')}`)).body);
  return { referral, patient, notKept: asRecords(answer['notKept']).map(({ pointer }) => pointer) };
};

describe('a referral that is sent', () => {
  it('is taken in as if it were registered by hand', async () => {
    const sent = await takenIn(aSentReferral(app.siteId, { patient: numbered(null) }));
    const typed = await created(
      app,
      '/api/v1/patients',
      aPatient({ nhsNumber: null, nhsNumberMissingReason: 'not-yet-traced' }),
    );
    const byHand = await created(app, '/api/v1/referrals', aReferralBody(typed, app.siteId));
    const referral = asRecord((await app.as('lead').get(`/api/v1/referrals/${byHand}`)).body);
    const patient = asRecord((await app.as('lead').get(`/api/v1/patients/${typed}`)).body);
    expect(sent.referral).toEqual({ ...referral, id: sent.referral['id'], patientId: sent.patient['id'] });
    expect(sent.patient).toEqual({ ...patient, id: sent.patient['id'] });
    expect(sent.notKept).toEqual([]);
  });

  it('may contain its person, and come as application/fhir+json', async () => {
    const body = aServiceRequest(app.siteId, {
      contained: [aPatientResource({ ...numbered(null), id: 'her' })],
      subject: { reference: '#her' },
    });
    const response = await supertest(app.app.server)
      .post(PATH)
      .set('authorization', `Bearer ${app.tokens.admin}`)
      .set('content-type', 'application/fhir+json')
      .send(JSON.stringify(body));
    expect(response.status, response.text).toBe(201);
    expect(asRecord(asRecord(response.body)['referral'])).toMatchObject({ diagnosis: 'copd' });
    // A grade of breathlessness is a score: it is taken in by anybody and shown to those who may see it.
    expect(response.text).not.toContain('mrcGrade');
  });

  it('is the example that comes with the service, which is valid', async () => {
    const text = readFileSync('openapi/examples/referral.fhir.json', 'utf8');
    expect(faultsOfFhir(text)).toEqual([]);
    const body = JSON.parse(text.replace('00000000-0000-4000-8000-000000000001', app.siteId)) as Body;
    const { patient, referral, notKept } = await takenIn(body, 'clinician');
    expect(patient).toMatchObject({
      nhsNumber: '9990000042',
      familyName: 'Oystercatcher',
      givenName: 'Edmund',
      bornOn: '1951-11-30',
      sexAtBirth: 'male',
      gender: 'male',
      ethnicCategory: 'A',
      smokingStatus: 'former',
      livesAlone: 'yes',
      gpPracticeCode: 'DEMO10',
    });
    expect(referral).toMatchObject({
      receivedOn: '2026-11-20',
      source: 'hospital-ward',
      pathway: 'after-exacerbation',
      hospitalDischargedOn: '2026-11-19',
      mrcGrade: 4,
      otherConditions: 'Osteoarthritis of both hips. Uses a stick outdoors.',
      stage: 'awaiting-triage',
    });
    expect(notKept).toEqual(['/entry/0/resource/telecom', '/entry/1/resource/authoredOn']);
  });

  it('is told to the trail as any other registration', async () => {
    const { referral, patient } = await takenIn(aSentReferral(app.siteId, { patient: numbered(null) }));
    const events = itemsOf(await app.as('lead').get('/api/v1/audit-events?limit=200'));
    const told = events.filter(
      ({ action, patientId }) => String(action).endsWith('-registered') && patientId === patient['id'],
    );
    expect(told.map(({ action }) => action).sort()).toEqual(['patient-registered', 'referral-registered']);
    expect(told.some(({ referralId }) => referralId === referral['id'])).toBe(true);
  });

  it('is carried out once under one key', async () => {
    const body = aSentReferral(app.siteId, { patient: numbered(null) });
    const once = () => send(body).set('idempotency-key', 'ward-20261125-1');
    const [first, again] = [await once(), await once()];
    expect(first.status).toBe(201);
    expect(again.body).toEqual(first.body);
  });

  it('of a person who is registered already is refused, naming the record', async () => {
    const body = aSentReferral(app.siteId, { patient: numbered(TEST_NHS_NUMBERS[4]) });
    const { patient } = await takenIn(body);
    const before = await app.countRows();
    const again = await send(body);
    expectProblem(again, { status: 409, type: 'patient-already-registered' });
    expect(asRecord(again.body)['existingId']).toBe(patient['id']);
    // Says what to do: the record that there is takes the referral.
    expect(asRecord(again.body)['detail']).toContain('register the referral for the record that there is');
    expect(await app.countRows()).toEqual(before);
  });
});

describe('the round trip', () => {
  it('of a course gives another team the same person and the same referral', async () => {
    const person = aPatient({
      nhsNumber: TEST_NHS_NUMBERS[2],
      gender: 'not-stated',
      ethnicCategory: 'Z',
      deprivationQuintile: 1,
      deprivationIndexYear: 2025,
      smokingStatus: 'current',
      interpreterNeed: 'yes',
      livesAlone: 'no',
      homeOxygen: 'yes',
      gpPracticeCode: 'DEMO7',
    });
    const patientId = await created(app, '/api/v1/patients', person);
    const details = {
      source: 'respiratory-clinic',
      diagnosis: 'idiopathic-pulmonary-fibrosis',
      otherConditions: 'Type 2 diabetes\nHearing aid',
      pathway: 'after-exacerbation',
      hospitalDischargedOn: '2026-03-30',
      mrcGrade: 3,
      deliveryMode: 'hybrid',
      plannedStartOn: '2026-05-04',
      plannedSessions: 16,
      plannedWeeks: 8,
      exercisePlanGivenOn: '2026-06-22',
    };
    const referralId = await created(app, '/api/v1/referrals', aReferralBody(patientId, app.siteId, details));
    const at = `/api/v1/referrals/${referralId}`;
    const { text } = await app.as('clinician').get(`${at}/fhir`);
    const sent = JSON.parse(text.replaceAll(app.siteId, app.otherTeam.siteId)) as Body;
    const taken = await takenIn(sent, 'other-team');
    const own = {
      referral: asRecord((await app.as('lead').get(at)).body),
      patient: asRecord((await app.as('lead').get(`/api/v1/patients/${patientId}`)).body),
    };
    const { id, patientId: person2, siteId } = taken.referral;
    expect(siteId).toBe(app.otherTeam.siteId);
    expect(taken.referral).toEqual({ ...own.referral, id, patientId: person2, siteId });
    expect(taken.patient).toEqual({ ...own.patient, id: taken.patient['id'] });
    // What the team did, and the ids that it gave, are its own.
    expect(taken.notKept).toEqual([
      '/identifier',
      '/timestamp',
      '/entry/0/resource/managingOrganization',
      '/entry/1/resource/identifier',
      '/entry/2/resource',
      '/entry/3/resource',
      '/entry/4/resource',
    ]);
  });

  it('keeps the commissioner within a team', async () => {
    const patientId = await created(
      app,
      '/api/v1/patients',
      aPatient({ nhsNumber: null, nhsNumberMissingReason: 'declined' }),
    );
    const { commissionerId } = app;
    const id = await created(
      app,
      '/api/v1/referrals',
      aReferralBody(patientId, app.siteId, { commissionerId }),
    );
    const sent = asRecord((await app.as('lead').get(`/api/v1/referrals/${id}/fhir`)).body);
    expect((await takenIn(sent)).referral).toMatchObject({ commissionerId });
  });
});

const PERSON = '/entry/0/resource';
const REQUEST = '/entry/1/resource';
const own = (name: string, value: Body) => [{ url: `urn:tidemark:extension:${name}`, ...value }];
const needs = aServiceRequest('')['extension'] as readonly Body[];
const sexes = aPatientResource()['extension'] as readonly Body[];

interface Refused {
  readonly name: string;
  readonly patient?: Body;
  readonly request?: Body;
  readonly pointer: string;
  readonly code: string;
}

const REFUSED: readonly Refused[] = [
  { name: 'no name', patient: { name: undefined }, pointer: `${PERSON}/name`, code: 'needed' },
  {
    name: 'a former name only',
    patient: { name: [{ use: 'old', family: 'Dunlin', given: ['May'] }] },
    pointer: `${PERSON}/name`,
    code: 'needed',
  },
  {
    name: 'a name with a control character',
    patient: { name: [{ family: 'Sand\u0007wort', given: ['Mavis'] }] },
    pointer: `${PERSON}/name/0/family`,
    code: 'invalid-value',
  },
  {
    name: 'a given name that is no list',
    patient: { name: [{ family: 'Sandwort', given: 'Mavis' }] },
    pointer: `${PERSON}/name/0/given`,
    code: 'invalid-type',
  },
  {
    name: 'a year of birth only',
    patient: { birthDate: '1954' },
    pointer: `${PERSON}/birthDate`,
    code: 'invalid-type',
  },
  {
    name: 'no date of birth',
    patient: { birthDate: undefined },
    pointer: `${PERSON}/birthDate`,
    code: 'needed',
  },
  {
    name: 'a birth more than 120 years ago',
    patient: { birthDate: '1899-12-31' },
    pointer: `${PERSON}/birthDate`,
    code: 'out-of-range',
  },
  {
    name: 'an NHS number with a wrong check digit',
    patient: numbered('9990000017'),
    pointer: `${PERSON}/identifier/0/value`,
    code: 'wrong-check-digit',
  },
  {
    name: 'no sex at birth, which is not taken from the gender',
    patient: { extension: undefined, gender: 'female' },
    pointer: `${PERSON}/extension`,
    code: 'needed',
  },
  {
    name: 'a gender outside the set',
    patient: { gender: 'f' },
    pointer: `${PERSON}/gender`,
    code: 'invalid-value',
  },
  {
    name: 'a gender that contradicts its extension',
    patient: { gender: 'male', extension: [...sexes, ...own('gender', { valueCode: 'female' })] },
    pointer: `${PERSON}/gender`,
    code: 'invalid-value',
  },
  {
    name: 'a deprivation fifth of 6',
    patient: {
      extension: [
        ...sexes,
        ...own('deprivation-quintile', { valueInteger: 6 }),
        ...own('deprivation-index-year', { valueInteger: 2025 }),
      ],
    },
    pointer: `${PERSON}/extension/1/valueInteger`,
    code: 'invalid-value',
  },
  {
    name: 'a person who has died',
    patient: { deceasedDateTime: '2026-03-01' },
    pointer: `${PERSON}/deceasedDateTime`,
    code: 'invalid-value',
  },
  {
    name: 'a person whose record is linked to another',
    patient: { link: [{ type: 'replaced-by', other: { reference: 'Patient/p2' } }] },
    pointer: `${PERSON}/link`,
    code: 'invalid-value',
  },
  {
    name: 'an extension that changes the meaning',
    patient: { modifierExtension: [{ url: 'urn:example:unknown', valueBoolean: true }] },
    pointer: `${PERSON}/modifierExtension`,
    code: 'not-understood',
  },
  { name: 'a draft', request: { status: 'draft' }, pointer: `${REQUEST}/status`, code: 'invalid-value' },
  {
    name: 'a proposal',
    request: { intent: 'proposal' },
    pointer: `${REQUEST}/intent`,
    code: 'invalid-value',
  },
  {
    name: 'a request not to do it',
    request: { doNotPerform: true },
    pointer: `${REQUEST}/doNotPerform`,
    code: 'invalid-value',
  },
  {
    name: 'a request for something else',
    request: { code: { text: 'Chest X-ray' } },
    pointer: `${REQUEST}/code`,
    code: 'invalid-value',
  },
  {
    name: 'a request about somebody else',
    request: { subject: { reference: 'Patient/p2' } },
    pointer: `${REQUEST}/subject/reference`,
    code: 'invalid-value',
  },
  {
    name: 'no diagnosis in our codes',
    request: { reasonCode: [{ text: 'breathless' }] },
    pointer: `${REQUEST}/reasonCode`,
    code: 'needed',
  },
  {
    name: 'a diagnosis that there is not',
    request: { reasonCode: [{ coding: [{ system: 'urn:tidemark:code:diagnosis', code: 'cough' }] }] },
    pointer: `${REQUEST}/reasonCode/0/coding/0/code`,
    code: 'invalid-value',
  },
  {
    name: 'no day of receipt: it is not the day of writing',
    request: { extension: needs.slice(1), authoredOn: '2026-04-01' },
    pointer: `${REQUEST}/extension`,
    code: 'needed',
  },
  {
    name: 'a receipt in the future',
    request: { extension: [...own('received-on', { valueDate: '2026-12-01' }), ...needs.slice(1)] },
    pointer: `${REQUEST}/extension/0/valueDate`,
    code: 'in-the-future',
  },
  {
    name: 'a receipt with a time',
    request: {
      extension: [...own('received-on', { valueDate: '2026-04-02T09:00:00Z' }), ...needs.slice(1)],
    },
    pointer: `${REQUEST}/extension/0/valueDate`,
    code: 'invalid-type',
  },
  {
    name: 'a receipt given as another type',
    request: { extension: [...own('received-on', { valueString: '2 April' }), ...needs.slice(1)] },
    pointer: `${REQUEST}/extension/0/valueDate`,
    code: 'needed',
  },
  {
    name: 'an extension that stands twice',
    request: { extension: [...needs, ...own('pathway', { valueCode: 'after-exacerbation' })] },
    pointer: `${REQUEST}/extension/3`,
    code: 'invalid-value',
  },
  {
    name: 'a hospital discharge of somebody stable',
    request: { extension: [...needs, ...own('hospital-discharged-on', { valueDate: '2026-03-30' })] },
    pointer: `${REQUEST}/extension/3/valueDate`,
    code: 'not-for-this-pathway',
  },
  {
    name: 'mMRC 0 in the place of MRC',
    request: { extension: [...needs, ...own('mrc-grade', { valueInteger: 0 })] },
    pointer: `${REQUEST}/extension/3/valueInteger`,
    code: 'invalid-value',
  },
  {
    name: 'a planned start before the receipt',
    request: { occurrenceDateTime: '2026-04-01' },
    pointer: `${REQUEST}/occurrenceDateTime`,
    code: 'before-receipt',
  },
  {
    name: 'no site',
    request: { locationReference: undefined },
    pointer: `${REQUEST}/locationReference`,
    code: 'needed',
  },
  {
    name: 'a site of nobody',
    request: { locationReference: [{ identifier: { system: 'urn:tidemark:site', value: 'here' } }] },
    pointer: `${REQUEST}/locationReference/0/identifier/value`,
    code: 'unknown-site',
  },
  {
    name: 'a commissioner who does not pay',
    request: {
      extension: [
        ...needs,
        ...own('commissioner', {
          valueReference: { identifier: { system: 'urn:tidemark:commissioner', value: 'who' } },
        }),
      ],
    },
    pointer: `${REQUEST}/extension/3/valueReference/identifier/value`,
    code: 'unknown-commissioner',
  },
];

describe('what cannot be used', () => {
  it.each(REFUSED.map((refused) => [refused.name, refused] as const))(
    'is refused with its pointer: %s',
    async (_name, { patient = {}, request = {}, pointer, code }) => {
      const before = await app.countRows();
      const body = aSentReferral(app.siteId, { patient: { ...numberless(patient) }, request });
      expectProblem(await send(body), {
        status: 422,
        type: 'rules-broken',
        pointers: [pointer],
        codes: [code],
      });
      expect(await app.countRows()).toEqual(before);
    },
  );

  it.each([
    ['a bundle that is no collection', { ...aSentReferral(''), type: 'transaction' }, ['/type']],
    ['a bundle of nothing', { resourceType: 'Bundle', type: 'collection' }, ['/entry', '/entry']],
    [
      'entries that are no list',
      { resourceType: 'Bundle', type: 'collection', entry: {} },
      ['/entry', '/entry', '/entry'],
    ],
    ['a request without its person', aServiceRequest(''), ['/contained']],
  ])('is refused: %s', async (_name, body, pointers) => {
    const response = await send(body);
    expectProblem(response, { status: 422, type: 'rules-broken' });
    const errors = asRecords(asRecord(response.body)['errors']).map(({ pointer }) => pointer);
    expect(errors).toEqual(expect.arrayContaining(pointers));
  });

  it('is refused: two people', async () => {
    const sent = aSentReferral(app.siteId);
    const entry = [...(sent['entry'] as readonly Body[]), { resource: aPatientResource({ id: 'p2' }) }];
    expectProblem(await send({ ...sent, entry }), {
      status: 422,
      type: 'rules-broken',
      pointers: ['/entry/2/resource'],
    });
  });

  it('is named all at once', async () => {
    const body = aSentReferral(app.siteId, {
      patient: { birthDate: 'long ago' },
      request: { status: 'draft' },
    });
    expectProblem(await send(body), {
      status: 422,
      type: 'rules-broken',
      pointers: [`${PERSON}/birthDate`, `${REQUEST}/status`],
    });
  });

  it.each([
    ['another resource', { resourceType: 'Observation' }],
    ['a list', []],
  ])('is no referral at all: %s', async (_name, body) => {
    expectProblem(await app.as('lead').post(PATH, body), { status: 400, type: 'malformed-request' });
  });
});

describe('what the record has no place for', () => {
  it('is taken in without, and named', async () => {
    const sent = aSentReferral(app.siteId, {
      patient: {
        ...numberless({}),
        text: { status: 'generated', div: '<div xmlns="http://www.w3.org/1999/xhtml">Mavis</div>' },
        telecom: [{ system: 'phone', value: '01632 960002' }],
        name: [
          { use: 'usual', family: 'Sandwort', given: ['Mavis', 'Rose'], prefix: ['Mrs'] },
          { use: 'maiden', family: 'Dunlin' },
        ],
        _birthDate: { extension: [{ url: 'urn:example:time', valueTime: '04:00:00' }] },
      },
      request: {
        priority: 'urgent',
        reasonCode: [
          {
            coding: [
              { system: 'urn:tidemark:code:diagnosis', code: 'copd' },
              { system: 'urn:example:codes', code: '42' },
            ],
            text: 'COPD, severe',
          },
          { text: 'wants to walk to the shop' },
        ],
        occurrenceTiming: { code: { text: 'soon' } },
      },
    });
    const entry = [...(sent['entry'] as readonly Body[]), { resource: { resourceType: 'Observation' } }];
    const { patient, notKept } = await takenIn({ ...sent, entry });
    expect(patient).toMatchObject({ familyName: 'Sandwort', givenName: 'Mavis Rose' });
    expect([...notKept].sort()).toEqual([
      `${PERSON}/_birthDate`,
      `${PERSON}/name/0/prefix`,
      `${PERSON}/name/1`,
      `${PERSON}/telecom`,
      `${PERSON}/text`,
      `${REQUEST}/occurrenceTiming`,
      `${REQUEST}/priority`,
      `${REQUEST}/reasonCode/0/coding/1`,
      `${REQUEST}/reasonCode/0/text`,
      `${REQUEST}/reasonCode/1`,
      '/entry/2/resource',
    ]);
  });

  it('is refused where it is more than anybody reads', async () => {
    const many = Object.fromEntries(Array.from({ length: 1001 }, (_, index) => [`own${index}`, index]));
    const body = { ...aSentReferral(app.siteId, { patient: numberless({}) }), ...many };
    expectProblem(await send(body), { status: 422, type: 'rules-broken', codes: ['too-much-not-kept'] });
  });
});

/** A person without a number where the case does not give one, so that any number of them can be sent. */
function numberless(patient: Body): Body {
  if ('identifier' in patient) return patient;
  const given = 'extension' in patient ? (patient['extension'] as readonly Body[] | undefined) : sexes;
  const reason = own('nhs-number-missing-reason', { valueCode: 'declined' });
  return { ...patient, identifier: undefined, extension: [...(given ?? []), ...reason] };
}
