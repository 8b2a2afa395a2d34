import type supertest from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readSearch } from '../../src/domain/patient/read-search.js';
import { aPatient, aReferralBody, TEST_NHS_NUMBERS } from '../support/entries.js';
import { pagesAs } from '../support/page-client.js';
import type { PageClient } from '../support/page-client.js';
import { asRecord, itemsOf } from '../support/response.js';
import { created } from '../support/scenario.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

let app: TestApp;
let admin: PageClient;
let referralId: string;

beforeAll(async () => {
  app = await startApp();
  admin = await pagesAs(app, 'admin');
  const patientId = await created(app, '/api/v1/patients', aPatient());
  referralId = await created(app, '/api/v1/referrals', aReferralBody(patientId, app.siteId));
  const other = {
    nhsNumber: null,
    nhsNumberMissingReason: 'declined',
    familyName: 'Sandwort',
    givenName: 'Aled',
  };
  await created(app, '/api/v1/patients', aPatient({ ...other, bornOn: '1949-12-01' }));
});
afterAll(() => app.close());

/** The page to which a search leads. */
async function found(
  typed: string,
): Promise<{ readonly address: string; readonly page: supertest.Response }> {
  const answer = await admin.submit('/search', { q: typed });
  expect(answer.status, answer.text).toBe(303);
  const address = String(answer.headers['location']);
  return { address, page: await admin.get(address) };
}

describe('the search', () => {
  it.each([
    '999 000 0018',
    TEST_NHS_NUMBERS[0],
    'Sandwort, Mavis',
    'mavis sand',
    '9 3 1954',
    '09/03/1954',
    '1954-03-09',
  ])('finds one person by %s', async (typed) => {
    const { page } = await found(typed);
    expect(page.text).toContain('1 person found');
    expect(page.text).toContain(`/referrals/${referralId}"`);
  });

  it('finds everybody whose family name begins so, whatever the case and the accents', async () => {
    expect((await found('S\u00c1NDW')).page.text).toContain('2 people found');
    expect((await found('andwort')).page.text).toContain('Nobody of your team fits');
  });

  it('holds nothing about a person in an address, and is shown again to the same person only', async () => {
    const { address } = await found('Sandwort');
    expect(address).toMatch(/^\/search\/[0-9a-f-]{36}$/);
    expect((await admin.get(address)).text).toContain('value="Sandwort"');
    const other = await (await pagesAs(app, 'clinician')).get(address);
    expect([other.status, other.headers['location']]).toEqual([303, '/search']);
  });

  it('tells the trail by what was searched and who was shown, and not what was typed', async () => {
    await found('Sandwort, Mavis');
    const events = itemsOf(await app.as('lead').get('/api/v1/audit-events?limit=3'));
    const told = events.find((event) => event['action'] === 'patients-searched');
    expect(asRecord(told?.['details'])).toMatchObject({
      searchedBy: ['familyName', 'givenName'],
      referralIds: [referralId],
    });
    expect(JSON.stringify(told)).not.toContain('Sandwort');
  });

  it.each(['', '   ', ', Mavis'])('asks for more than "%s"', async (typed) => {
    const answer = await admin.submit('/search', { q: typed });
    expect(answer.status).toBe(422);
    expect(answer.text).toContain('href="#field-q"');
  });

  it('finds nobody of another team', async () => {
    const person = aPatient({ familyName: 'Sandpiper', nhsNumber: TEST_NHS_NUMBERS[1] });
    await created(app, '/api/v1/patients', person, 'other-team');
    expect((await found(TEST_NHS_NUMBERS[1])).page.text).toContain('Nobody of your team fits');
  });
});

describe('a line that was typed to find somebody', () => {
  it.each([
    ['999 000 0018', [{ nhsNumber: '999 000 0018' }]],
    ['999-000-0018', [{ nhsNumber: '999-000-0018' }]],
    ['9.3.1954', [{ bornOn: '1954-03-09' }]],
    ['Sand', [{ familyName: 'Sand' }]],
    ['Sand, M', [{ familyName: 'Sand', givenName: 'M' }]],
    ['van der Sand', [{ familyName: 'van der Sand' }, { familyName: 'Sand', givenName: 'van der' }]],
    ['31 2 1954', [{ familyName: '31 2 1954' }, { familyName: '1954', givenName: '31 2' }]],
    ['', []],
  ])('%s is read as the likeliest first', (typed, expected) => {
    expect(readSearch(typed)).toMatchObject(expected);
    expect(readSearch(typed)).toHaveLength(expected.length);
  });
});
