import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createAccount } from '../../src/usecases/accounts/provision.js';
import { rowsOfCsv } from '../support/export-file.js';
import { pagesAs } from '../support/page-client.js';
import { asRecord, asRecords } from '../support/response.js';
import { givenReferral } from '../support/scenario.js';
import { clientOf, startApp } from '../support/start-app.js';
import type { TestApp, TestClient } from '../support/start-app.js';

/** Today is Wednesday 25 November 2026. */
let service: TestApp;
/** Accepted people who wait for an assessment, by site, clinician and diagnosis: a different number of each. */
const CELLS = [
  { at: 'Dune Hall', by: 'Avocet, Sea', diagnosis: 'copd', people: 1 },
  { at: 'Dune Hall', by: 'Avocet, Sea', diagnosis: 'asthma', people: 2 },
  { at: 'Dune Hall', by: 'Brent, Tern', diagnosis: 'copd', people: 3 },
  { at: 'Saltmarsh Centre', by: 'Avocet, Sea', diagnosis: 'copd', people: 1 },
  { at: 'Saltmarsh Centre', by: 'Avocet, Sea', diagnosis: 'asthma', people: 3 },
  { at: 'Saltmarsh Centre', by: 'Brent, Tern', diagnosis: 'copd', people: 4 },
] as const;
type Cell = (typeof CELLS)[number];

const referralsOf = new Map<Cell, readonly string[]>();
const clinicianIds = new Map<string, string>();

beforeAll(async () => {
  service = await startApp();
  const clients = new Map<string, TestClient>();
  for (const name of ['Avocet, Sea', 'Brent, Tern']) {
    const { accountId, token } = await createAccount(service.record.context, {
      displayName: name,
      belonging: { role: 'clinician', teamId: service.teamId },
      tokenName: 'tests',
      expiresAt: '2100-01-01T00:00:00.000Z',
    });
    clinicianIds.set(name, accountId);
    clients.set(name, clientOf(service.app, token, service.etagOf));
  }
  for (const cell of CELLS) {
    const ids: string[] = [];
    for (let each = 0; each < cell.people; each += 1) {
      const siteId = siteIdOf(cell.at);
      const id = await givenReferral(service, {
        receivedOn: '2026-11-02',
        siteId,
        diagnosis: cell.diagnosis,
      });
      const triage = { decision: 'accepted', decidedOn: '2026-11-03' };
      const answer = await clients.get(cell.by)?.post(`/api/v1/referrals/${id}/triage`, triage);
      expect(answer?.status, answer?.text).toBe(201);
      ids.push(id);
    }
    referralsOf.set(cell, ids);
  }
});
afterAll(() => service.close());

const siteIdOf = (name: string) => (name === 'Dune Hall' ? service.siteId : service.secondSiteId);

interface Narrowing {
  readonly at?: Cell['at'];
  readonly by?: Cell['by'];
  readonly diagnosis?: Cell['diagnosis'];
}

const NARROWINGS: readonly Narrowing[] = [
  {},
  { at: 'Dune Hall' },
  { by: 'Avocet, Sea' },
  { by: 'Brent, Tern' },
  { diagnosis: 'asthma' },
  { at: 'Saltmarsh Centre', by: 'Brent, Tern' },
  { at: 'Saltmarsh Centre', diagnosis: 'asthma' },
  { by: 'Avocet, Sea', diagnosis: 'copd' },
  { by: 'Brent, Tern', diagnosis: 'asthma' },
  { at: 'Dune Hall', by: 'Avocet, Sea', diagnosis: 'asthma' },
];

function wantedOf({ at, by, diagnosis }: Narrowing): readonly string[] {
  return CELLS.filter(
    (cell) =>
      (at === undefined || cell.at === at) &&
      (by === undefined || cell.by === by) &&
      (diagnosis === undefined || cell.diagnosis === diagnosis),
  ).flatMap((cell) => referralsOf.get(cell) ?? []);
}

/** The parameters of an address, by what the door calls them. */
function queryOf({ at, by, diagnosis }: Narrowing, names: readonly [string, string]): string {
  const query = new URLSearchParams({ group: 'booking' });
  if (at !== undefined) query.set(names[0], siteIdOf(at));
  if (by !== undefined) query.set(names[1], clinicianIds.get(by) ?? '');
  if (diagnosis !== undefined) query.set('diagnosis', diagnosis);
  return query.toString();
}

describe.each(NARROWINGS.map((narrowing) => ({ narrowing, name: JSON.stringify(narrowing) })))(
  'the work list narrowed to $name',
  ({ narrowing }) => {
    it('has the people of it and their count through the API', async () => {
      const query = queryOf(narrowing, ['siteId', 'clinicianId']);
      const body = asRecord((await service.as('lead').get(`/api/v1/work-list?${query}`)).body);
      const wanted = wantedOf(narrowing);
      const [booking] = asRecords(body['groups']);
      expect(booking).toMatchObject({ group: 'booking', count: wanted.length, more: 0 });
      const entries = asRecords(booking?.['entries']);
      expect(entries.map((entry) => entry['referralId']).sort()).toEqual([...wanted].sort());
      expect(body['openReferrals']).toBe(wanted.length);
      if (narrowing.by !== undefined) {
        const names = entries.map((entry) => asRecord(entry['clinician'])['name']);
        expect(new Set(names)).toEqual(new Set(wanted.length === 0 ? [] : [narrowing.by]));
      }
    });

    it('has them on the page, keeps the narrowing in its fields and addresses, and in the file', async () => {
      const query = queryOf(narrowing, ['site', 'clinician']);
      const pages = await pagesAs(service, 'lead');
      const { text, status } = await pages.get(`/work-list?${query}`);
      expect(status).toBe(200);
      const wanted = wantedOf(narrowing);
      const shown = [...text.matchAll(/<th scope="row">\s*<a href="\/referrals\/([^"]+)"/g)].map(
        ([, id = '']) => id,
      );
      expect(shown.sort()).toEqual([...wanted].sort());
      expect(/<tbody id="booking">[\s\S]*?class="count">(\d+)</.exec(text)?.[1]).toBe(String(wanted.length));
      expect(chosenIn(text, 'site')).toBe(narrowing.at === undefined ? '' : siteIdOf(narrowing.at));
      expect(chosenIn(text, 'clinician')).toBe(
        narrowing.by === undefined ? '' : clinicianIds.get(narrowing.by),
      );
      expect(chosenIn(text, 'diagnosis')).toBe(narrowing.diagnosis ?? '');
      const file = /href="(\/work-list\.csv\?[^"]*)"/.exec(text)?.[1]?.replaceAll('&amp;', '&') ?? '';
      expect(rowsOfCsv((await pages.get(file)).text)).toHaveLength(wanted.length);
    });
  },
);

it('offers every clinician, whatever else narrows the list', async () => {
  const pages = await pagesAs(service, 'lead');
  const { text } = await pages.get('/work-list?diagnosis=asthma');
  for (const [name, id] of clinicianIds) expect(text).toContain(`<option value="${id}">${name}</option>`);
});

/** The value that a choice of a page holds; an empty text for the first, which stands for everything. */
function chosenIn(html: string, name: string): string {
  const select = new RegExp(`<select[^>]*name="${name}"[^>]*>([\\s\\S]*?)</select>`).exec(html)?.[1];
  expect(select, `the choice of ${name}`).toBeDefined();
  return /<option value="([^"]*)" selected/.exec(select ?? '')?.[1] ?? '';
}
