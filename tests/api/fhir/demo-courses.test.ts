import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { danglingIn, faultsOfFhir } from '../../support/fhir-validators.js';
import { givenDemo } from '../../support/report.js';
import { asRecord, asRecords, itemsOf } from '../../support/response.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
const bundles: string[] = [];

beforeAll(async () => {
  app = await startApp();
  const [lead] = await givenDemo(app, 0.04);
  if (lead === undefined) throw new Error('The scenario has no lead.');
  for (const { id } of itemsOf(await lead.get('/api/v1/referrals?limit=200'))) {
    bundles.push((await lead.get(`/api/v1/referrals/${String(id)}/fhir`)).text);
  }
});
afterAll(() => app.close());

describe('the courses of the invented scenario as bundles', () => {
  it('are valid by the R4 definitions, each reference leading to its resource', () => {
    for (const text of bundles) {
      expect(faultsOfFhir(text)).toEqual([]);
      expect(danglingIn(JSON.parse(text))).toEqual([]);
    }
  });

  it('are many and have every kind of resource, so that the check is worth something', () => {
    const types = bundles.flatMap((text) =>
      asRecords(asRecord(JSON.parse(text))['entry']).map(
        ({ resource }) => asRecord(resource)['resourceType'],
      ),
    );
    expect(bundles.length).toBeGreaterThan(30);
    expect([...new Set(types)].sort()).toEqual([
      'CarePlan',
      'Encounter',
      'EpisodeOfCare',
      'Observation',
      'Patient',
      'QuestionnaireResponse',
      'ServiceRequest',
    ]);
    expect(types.filter((type) => type === 'QuestionnaireResponse').length).toBeGreaterThan(50);
  });
});

describe('the validators', () => {
  const broken: readonly (readonly [string, (text: string) => string])[] = [
    ['a date in British order', (text) => text.replace(/"birthDate":"[^"]*"/, '"birthDate":"01/02/1950"')],
    ['a gender outside the set', (text) => text.replace(/"gender":"[a-z]+"/, '"gender":"m"')],
    ['a request without a status', (text) => text.replace(/"status":"[a-z]+","intent"/, '"intent"')],
    ['an element that there is not', (text) => text.replace('"intent"', '"invented":1,"intent"')],
  ];
  it.each(broken)('find %s', (_name, breakIt) => {
    const text = bundles[0] ?? '';
    expect(breakIt(text)).not.toBe(text);
    expect(faultsOfFhir(breakIt(text))).not.toEqual([]);
  });

  it('find a reference that leads nowhere', () => {
    const text = (bundles[0] ?? '').replace(/"subject":\{"reference":"urn:uuid:/, '$&0');
    expect(danglingIn(JSON.parse(text))).not.toEqual([]);
  });
});
