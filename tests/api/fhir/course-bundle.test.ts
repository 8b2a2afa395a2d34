import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { anAssessment, aPatient, aReferralBody, aSixMinuteWalk } from '../../support/entries.js';
import { danglingIn, faultsOfFhir } from '../../support/fhir-validators.js';
import { asRecord, asRecords, expectProblem, textAt } from '../../support/response.js';
import { created, givenReferral, givenSession } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

type Json = Readonly<Record<string, unknown>>;

let app: TestApp;
let patientId: string;
let referralId: string;
let baselineId: string;
let bundle: Json;
let text: string;

const get = (id = referralId, who: 'clinician' | 'admin' | 'other-team' = 'clinician') =>
  app.as(who).get(`/api/v1/referrals/${id}/fhir`);

/** The resources of a type, in the order of the bundle. */
const resources = (type: string): readonly Json[] =>
  asRecords(bundle['entry'])
    .map((entry) => asRecord(entry['resource']))
    .filter((resource) => resource['resourceType'] === type);

const only = (type: string): Json => {
  const [first, ...others] = resources(type);
  expect(others).toEqual([]);
  return asRecord(first);
};

const named = (name: string): Json =>
  asRecord(resources('Observation').find(({ code }) => asRecord(code)['text'] === name));

const urn = (id: string) => ({ reference: `urn:uuid:${id}` });

beforeAll(async () => {
  app = await startApp();
  patientId = await created(
    app,
    '/api/v1/patients',
    aPatient({
      gender: 'non-binary',
      ethnicCategory: 'M',
      deprivationQuintile: 2,
      deprivationIndexYear: 2025,
      livesAlone: 'yes',
      gpPracticeCode: 'DEMO42',
    }),
  );
  const details = {
    commissionerId: app.commissionerId,
    source: 'hospital-ward',
    pathway: 'after-exacerbation',
    hospitalDischargedOn: '2026-04-01',
    otherConditions: 'Arthritis of the left knee',
    mrcGrade: 4,
    plannedStartOn: '2026-04-28',
  };
  referralId = await created(app, '/api/v1/referrals', aReferralBody(patientId, app.siteId, details));
  const at = `/api/v1/referrals/${referralId}`;
  await created(app, `${at}/triage`, { decision: 'accepted', decidedOn: '2026-04-03' });
  const baseline = anAssessment(app.siteId, {
    spirometry: { fev1L: 1.12, fev1PercentPredicted: 47, fev1FvcPercent: 52 },
    resting: { spo2Percent: 94, heartRateBpm: 82, systolicMmHg: 138, diastolicMmHg: 78 },
    walkTests: [
      aSixMinuteWalk(310, { startSpo2Percent: 94, lowestSpo2Percent: 88, endBreathlessness: 4 }),
      aSixMinuteWalk(335, { attempt: 2, walkingAid: 'stick' }),
    ],
    sitToStands: [{ test: 'one-minute-sit-to-stand', notDoneReason: 'declined' }],
    questionnaires: [
      { questionnaire: 'copd-assessment-test', items: [3, 3, 2, 4, 3, 2, 3, 2] },
      { questionnaire: 'patient-health-questionnaire-9', items: [1, 0, 2, 1, 0, 0, 1, 0, 0] },
    ],
  });
  baselineId = await created(app, `${at}/assessments`, baseline);
  const register = { attendances: [{ referralId, outcome: 'attended' }] };
  const sessionId = await givenSession(app);
  await app.as('lead').put(`/api/v1/sessions/${sessionId}/attendances`, register);
  const missed = await givenSession(app, { heldOn: '2026-05-07' });
  const absent = { attendances: [{ referralId, outcome: 'did-not-attend' }] };
  await app.as('lead').put(`/api/v1/sessions/${missed}/attendances`, absent);
  const closure = { closedOn: '2026-07-01', reason: 'chose-to-stop', exercisePlanGivenOn: '2026-06-30' };
  await created(app, `${at}/closure`, closure);
  const response = await get();
  expect(response.status, response.text).toBe(200);
  expect(response.headers['content-type']).toContain('application/fhir+json');
  ({ text } = response);
  bundle = asRecord(JSON.parse(text));
});
afterAll(() => app.close());

// Written by hand from the entries above and the R4 definitions of each resource.
describe('the course of one person as a bundle', () => {
  it('is valid by the R4 definitions, and every reference leads to its resource', () => {
    expect(bundle).toMatchObject({ type: 'collection', timestamp: '2026-11-25T10:00:00.000Z' });
    expect(faultsOfFhir(text)).toEqual([]);
    expect(danglingIn(bundle)).toEqual([]);
  });

  it('has the person', () => {
    expect(only('Patient')).toEqual({
      resourceType: 'Patient',
      id: patientId,
      extension: [
        {
          url: 'https://fhir.hl7.org.uk/StructureDefinition/Extension-UKCore-EthnicCategory',
          valueCodeableConcept: {
            coding: [
              { system: 'https://fhir.hl7.org.uk/CodeSystem/UKCore-EthnicCategoryEngland', code: 'M' },
            ],
            text: 'Black: Caribbean',
          },
        },
        { url: 'urn:tidemark:extension:sex-at-birth', valueCode: 'female' },
        { url: 'urn:tidemark:extension:gender', valueCode: 'non-binary' },
        { url: 'urn:tidemark:extension:deprivation-quintile', valueInteger: 2 },
        { url: 'urn:tidemark:extension:deprivation-index-year', valueInteger: 2025 },
        { url: 'urn:tidemark:extension:smoking-status', valueCode: 'not-known' },
        { url: 'urn:tidemark:extension:interpreter-need', valueCode: 'not-known' },
        { url: 'urn:tidemark:extension:lives-alone', valueCode: 'yes' },
        { url: 'urn:tidemark:extension:home-oxygen', valueCode: 'not-known' },
      ],
      identifier: [{ system: 'https://fhir.nhs.uk/Id/nhs-number', value: '9990000018' }],
      name: [{ use: 'official', family: 'Sandwort', given: ['Mavis'] }],
      gender: 'other',
      birthDate: '1954-03-09',
      generalPractitioner: [
        {
          type: 'Organization',
          identifier: { system: 'https://fhir.nhs.uk/Id/ods-organization-code', value: 'DEMO42' },
        },
      ],
      managingOrganization: { display: 'Marram Coast PR team' },
    });
  });

  it('has the referral, closed before the programme was finished', () => {
    const request = only('ServiceRequest');
    expect(request).toMatchObject({
      id: referralId,
      status: 'revoked',
      intent: 'order',
      code: { text: 'Pulmonary rehabilitation' },
      subject: urn(patientId),
      occurrenceDateTime: '2026-04-28',
      requester: { display: 'hospital ward' },
      reasonCode: [{ coding: [{ system: 'urn:tidemark:code:diagnosis', code: 'copd' }], text: 'COPD' }],
      locationReference: [
        { identifier: { system: 'urn:tidemark:site', value: app.siteId }, display: 'Dune Hall' },
      ],
      note: [{ text: 'Arthritis of the left knee' }],
    });
    expect(request['extension']).toEqual([
      { url: 'urn:tidemark:extension:received-on', valueDate: '2026-04-02' },
      { url: 'urn:tidemark:extension:source', valueCode: 'hospital-ward' },
      { url: 'urn:tidemark:extension:pathway', valueCode: 'after-exacerbation' },
      { url: 'urn:tidemark:extension:hospital-discharged-on', valueDate: '2026-04-01' },
      { url: 'urn:tidemark:extension:mrc-grade', valueInteger: 4 },
      { url: 'urn:tidemark:extension:exercise-plan-given-on', valueDate: '2026-06-30' },
      {
        url: 'urn:tidemark:extension:commissioner',
        valueReference: {
          identifier: { system: 'urn:tidemark:commissioner', value: app.commissionerId },
          display: 'Marram and Samphire Commissioning',
        },
      },
      {
        url: 'urn:tidemark:extension:triage',
        extension: [
          { url: 'decision', valueCode: 'accepted' },
          { url: 'words', valueString: 'accepted' },
          { url: 'decided-on', valueDate: '2026-04-03' },
        ],
      },
    ]);
  });

  it('has the episode from receipt to closure, and the plan that was given', () => {
    const episode = only('EpisodeOfCare');
    expect(episode).toMatchObject({
      status: 'finished',
      patient: urn(patientId),
      period: { start: '2026-04-02', end: '2026-07-01' },
      referralRequest: [urn(referralId)],
      extension: [{ valueCodeableConcept: { coding: [{ code: 'chose-to-stop' }] } }],
    });
    expect(only('CarePlan')).toMatchObject({
      status: 'active',
      intent: 'plan',
      subject: urn(patientId),
      created: '2026-06-30',
      supportingInfo: [urn(textAt(episode, 'id'))],
    });
  });

  it('has the assessment and the one session that was attended', () => {
    const [assessment, session, ...others] = resources('Encounter');
    expect(others).toEqual([]);
    expect(assessment).toMatchObject({
      id: baselineId,
      status: 'finished',
      class: { code: 'AMB' },
      type: [{ text: 'Baseline assessment' }],
      period: { start: '2026-04-20', end: '2026-04-20' },
      basedOn: [urn(referralId)],
    });
    expect(session).toMatchObject({
      type: [{ text: 'Supervised session' }],
      period: { start: '2026-05-05', end: '2026-05-05' },
      location: [{ location: { display: 'Dune Hall' } }],
    });
    expect(named('Supervised sessions attended')).toMatchObject({
      valueInteger: 1,
      component: [
        { code: { text: 'Supervised sessions planned' }, valueInteger: 12 },
        { valueInteger: 0 },
        { valueInteger: 0 },
        { code: { text: 'Did not attend' }, valueInteger: 1 },
      ],
    });
  });

  it('has both walks with their conditions, and says which counts', () => {
    const walks = resources('Observation').filter(({ code }) =>
      JSON.stringify(code).includes('{"system":"http://loinc.org","code":"64098-7"}'),
    );
    const metres = { unit: 'm', system: 'http://unitsofmeasure.org', code: 'm' };
    expect(walks.map(({ valueQuantity }) => valueQuantity)).toEqual([
      { value: 310, ...metres },
      { value: 335, ...metres },
    ]);
    const components = (index: number) =>
      Object.fromEntries(
        asRecords(walks[index]?.['component']).map(({ code, ...value }): readonly [string, Json] => [
          textAt(asRecord(code), 'text'),
          value,
        ]),
      );
    expect(components(0)).toMatchObject({
      'Counts: better of its attempts': { valueBoolean: false },
      'Course length': { valueQuantity: { value: 30, code: 'm' } },
      'Walking aid': { valueCodeableConcept: { text: 'none' } },
      'Oxygen flow': { valueQuantity: { value: 0, code: 'L/min' } },
      'SpO2 at the start': { valueQuantity: { value: 94, code: '%' } },
      'Lowest SpO2': { valueQuantity: { value: 88, code: '%' } },
      'Borg CR10 breathlessness at the end': { valueQuantity: { value: 4 } },
    });
    expect(components(1)).toMatchObject({
      Attempt: { valueInteger: 2 },
      'Counts: better of its attempts': { valueBoolean: true },
      'Walking aid': { valueCodeableConcept: { text: 'stick' } },
    });
  });

  it.each([
    ['Height', 160, 'cm', '8302-2'],
    ['Weight', 68.5, 'kg', '29463-7'],
    ['FEV1', 1.12, 'L', '20150-9'],
    ['FEV1/FVC', 52, '%', '19926-5'],
    ['SpO2 at rest', 94, '%', '59408-5'],
    ['Heart rate at rest', 82, '/min', '8867-4'],
    ['FEV1 in percent of predicted', 47, '%', null],
    ['Systolic pressure at rest', 138, 'mm[Hg]', null],
    ['Diastolic pressure at rest', 78, 'mm[Hg]', null],
  ])('has %s with its unit, and a code only where it is confirmed', (name, value, unit, loinc) => {
    const { code, ...found } = named(name);
    expect(found).toMatchObject({
      encounter: urn(baselineId),
      effectiveDateTime: '2026-04-20',
      valueQuantity: { value, system: 'http://unitsofmeasure.org', code: unit },
    });
    const coding = loinc === null ? {} : { coding: [{ system: 'http://loinc.org', code: loinc }] };
    expect(code).toEqual({ ...coding, text: name });
  });

  it('has questionnaires by item numbers, without wording, and scores that lead to them', () => {
    const [cat, phq] = resources('QuestionnaireResponse');
    expect(cat).toMatchObject({ status: 'completed', authored: '2026-04-20' });
    // 3 + 3 + 2 + 4 + 3 + 2 + 3 + 2 = 22
    expect(cat?.['item']).toEqual([
      ...[3, 3, 2, 4, 3, 2, 3, 2].map((valueInteger, index) => ({
        linkId: String(index + 1),
        answer: [{ valueInteger }],
      })),
      { linkId: 'cat-total', answer: [{ valueDecimal: 22 }] },
    ]);
    expect(asRecords(phq?.['item'])).toHaveLength(10);
    expect(text).not.toContain('"linkId":"1","text"');
    const total = resources('Observation').find(({ code }) => JSON.stringify(code).includes('44261-6'));
    // 1 + 0 + 2 + 1 + 0 + 0 + 1 + 0 + 0 = 5
    expect(total).toMatchObject({
      valueQuantity: { value: 5 },
      derivedFrom: [urn(textAt(asRecord(phq), 'id'))],
    });
  });

  it('says that a test was not done, and why', () => {
    const declined = resources('Observation').filter(
      ({ dataAbsentReason }) => dataAbsentReason !== undefined,
    );
    expect(declined).toHaveLength(1);
    expect(declined[0]).toMatchObject({
      dataAbsentReason: { coding: [{ code: 'asked-declined' }], text: 'not done: declined' },
    });
    expect(declined[0]?.['valueQuantity']).toBeUndefined();
  });
});

describe('asking for a bundle', () => {
  it('is told to the trail, which repeats nothing of it', async () => {
    const response = await app.as('lead').get('/api/v1/audit-events?limit=200');
    const told = asRecords(asRecord(response.body)['items']).filter(
      ({ action }) => action === 'course-exported',
    );
    expect(told).toHaveLength(1);
    expect(told[0]).toMatchObject({ patientId, referralId });
    expect(JSON.stringify(told)).not.toContain('Sandwort');
  });

  it('is refused to administrators, who see no scores', async () => {
    expectProblem(await get(referralId, 'admin'), { status: 403, type: 'not-allowed' });
  });

  it('of a referral of another team finds none', async () => {
    expectProblem(await get(referralId, 'other-team'), { status: 404, type: 'not-found' });
  });

  it('of a referral that was entered in error is refused', async () => {
    const wrong = await givenReferral(app);
    await app.as('lead').post(`/api/v1/referrals/${wrong}/entered-in-error`, { reason: 'Another person' });
    expectProblem(await get(wrong), { status: 409, type: 'entered-in-error' });
  });
});
