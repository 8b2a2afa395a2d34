import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildApp } from '../../../src/app/build-app.js';
import { RECORD_TABLES } from '../../../src/domain/exports/record-tables.js';
import { anAssessment, aPatient, aReferralBody, aSession, aShuttleWalk } from '../../support/entries.js';
import { exported, rowsOfCsv, textsOf } from '../../support/export-file.js';
import { expectProblem, itemsOf } from '../../support/response.js';
import { created } from '../../support/scenario.js';
import { clientOf, startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

const PATH = '/api/v1/exports/analysis.zip';
const KEY = Buffer.alloc(32, 7);

let service: TestApp;
let referralId = '';
beforeAll(async () => {
  service = await startApp(undefined, { pseudonymKey: KEY });
  const lead = service.as('lead');
  const person = {
    nhsNumber: '9990001006',
    nhsNumberMissingReason: null,
    familyName: 'Whimbrelton',
    givenName: 'Samphirella',
    bornOn: '1934-03-09',
    gpPracticeCode: 'Z99123',
    ethnicCategory: 'H',
  };
  const patientId = await created(service, '/api/v1/patients', aPatient(person));
  const second = { familyName: 'Ploverstone', givenName: 'Thriftina', bornOn: '1955-07-30' };
  const secondId = await created(service, '/api/v1/patients', aPatient(second));
  const typed = { otherConditions: 'typed-conditions', receivedOn: '2026-04-02' };
  referralId = await created(service, '/api/v1/referrals', aReferralBody(patientId, service.siteId, typed));
  await created(
    service,
    '/api/v1/referrals',
    aReferralBody(secondId, service.siteId, { receivedOn: '2026-07-14' }),
  );
  const path = `/api/v1/referrals/${referralId}`;
  await lead.post(`${path}/triage`, {
    decision: 'accepted',
    decidedOn: '2026-04-07',
    reason: 'typed-triage',
    mrcGrade: 4,
  });
  await created(
    service,
    `${path}/assessments`,
    anAssessment(service.siteId, {
      assessedOn: '2026-04-20',
      notes: 'typed-notes',
      safetyNote: 'typed-safety',
      walkTests: [aShuttleWalk(180, 1), aShuttleWalk(200, 2)],
    }),
  );
  const sessionId = await created(
    service,
    '/api/v1/sessions',
    aSession(service.siteId, { heldOn: '2026-05-04' }),
  );
  const register = { attendances: [{ referralId, outcome: 'attended' }] };
  await lead.put(`/api/v1/sessions/${sessionId}/attendances`, register);
  await lead.post(`${path}/closure`, { closedOn: '2026-07-01', reason: 'moved-away', note: 'typed-closure' });
  await lead.patch(`/api/v1/patients/${patientId}`, {
    reason: 'typed-correction',
    changes: { livesAlone: 'no' },
  });
});
afterAll(() => service.close());

/** The tables of the file, without its dictionary. */
async function tablesOf(query = ''): Promise<Readonly<Record<string, string>>> {
  const files = textsOf((await exported(service, PATH + query)).content);
  return Object.fromEntries(
    Object.entries(files).filter(([name]) => name !== 'read-me.txt' && name !== 'data-dictionary.csv'),
  );
}

/** Every value of the record that says who somebody is, was typed as text, names staff, or is an id. */
async function secretsOfRecord(): Promise<ReadonlyMap<string, string>> {
  const secrets = new Map<string, string>();
  for (const { name, columns } of RECORD_TABLES) {
    const hidden = columns.filter(
      ({ sensitivity, kind }) => sensitivity !== 'none' || kind.type === 'id' || kind.type === 'reference',
    );
    if (hidden.length === 0) continue;
    const { rows } = await sql<Record<string, unknown>>`
      select ${sql.join(hidden.map((column) => sql.ref(column.name)))} from ${sql.table(name)}
    `.execute(service.record.connection.db);
    for (const row of rows) {
      for (const column of hidden) {
        const value = row[column.name];
        if (typeof value === 'string' && value !== '') secrets.set(value, `${name}.${column.name}`);
      }
    }
  }
  return secrets;
}

describe('referrals for analysis', () => {
  it.each(['', '?dates=month&ages=band'])(
    'hold nothing that says who anybody is, and nothing that was typed: %j',
    async (query) => {
      const text = Object.values(await tablesOf(query)).join('\n');
      const secrets = await secretsOfRecord();
      for (const typed of ['conditions', 'triage', 'notes', 'safety', 'closure', 'correction'])
        expect([...secrets.keys()]).toContain(`typed-${typed}`);
      for (const known of ['9990001006', 'Whimbrelton', 'Samphirella', '1934-03-09', 'Z99123', 'Ploverstone'])
        expect([...secrets.keys()]).toContain(known);
      for (const [secret, where] of secrets) expect(text.includes(secret), where).toBe(false);
      expect(text).not.toMatch(/Dune Hall|Marram/);
      expect(text).not.toContain('typed');
    },
  );

  it('hold what was measured, by closed sets, numbers and days', async () => {
    const tables = await tablesOf();
    const referral = rowsOfCsv(tables['referral.csv']).find(({ received }) => received === '2026-04-02');
    expect(referral).toMatchObject({
      // Born on 9 March 1934: 92 on 2 April 2026.
      age_at_receipt: '90',
      ethnic_group: 'asian',
      triaged: '2026-04-07',
      started: '2026-05-04',
      sessions_attended: '1',
      closed: '2026-07-01',
      closure_reason: 'moved-away',
    });
    const walk = rowsOfCsv(tables['result.csv']).find(
      ({ measure }) => measure === 'incremental-shuttle-walk-distance',
    );
    expect(walk).toMatchObject({
      referral: referral?.['referral'],
      timepoint: 'baseline',
      assessed: '2026-04-20',
      value: '200',
      unit: 'm',
      had_practice_walk: '1',
    });
    expect(rowsOfCsv(tables['session.csv'])).toEqual([
      {
        referral: referral?.['referral'],
        held: '2026-05-04',
        mode: 'centre',
        is_supervised: '1',
        outcome: 'attended',
      },
    ]);
  });

  it('hold months and bands where they are asked for, and no day anywhere', async () => {
    const tables = await tablesOf('?dates=month&ages=band');
    const text = Object.values(tables).join('\n');
    expect(text).not.toMatch(/\d{4}-\d\d-\d\d/);
    expect(
      rowsOfCsv(tables['referral.csv'])
        .map((row) => [row['received'], row['age_at_receipt']])
        .sort(),
    ).toEqual([
      ['2026-04', '80-and-over'],
      ['2026-07', '70-79'],
    ]);
    const dictionary = textsOf((await exported(service, `${PATH}?dates=month`)).content)[
      'data-dictionary.csv'
    ];
    expect(rowsOfCsv(dictionary).find(({ column }) => column === 'received')).toMatchObject({
      type: 'month, YYYY-MM',
    });
  });

  it('are those of a period where one is asked for', async () => {
    const { 'referral.csv': referrals } = await tablesOf('?received=2026-27-Q2');
    expect(rowsOfCsv(referrals).map(({ received }) => received)).toEqual(['2026-07-14']);
    const lead = service.as('lead');
    expectProblem(await lead.get(`${PATH}?received=soon`), {
      status: 422,
      type: 'rules-broken',
      pointers: ['received'],
    });
    expectProblem(await lead.get(`${PATH}?dates=week`), {
      status: 400,
      type: 'malformed-request',
      pointers: ['dates'],
    });
  });

  it('have the same pseudonyms in every file of the key, and others without it', async () => {
    const pseudonymsIn = async (of: TestApp): Promise<readonly string[]> => {
      const { content } = await exported(of, PATH);
      return rowsOfCsv(textsOf(content)['referral.csv']).map(({ person = '' }) => person);
    };
    const first = await pseudonymsIn(service);
    expect(first).toEqual(await pseudonymsIn(service));
    expect(first.every((pseudonym) => /^[0-9a-f]{32}$/.test(pseudonym))).toBe(true);
    expect(new Set(first).size).toBe(2);
    const keyless = await buildApp(service.record.context, 'silent');
    await keyless.ready();
    const without: TestApp = { ...service, as: () => clientOf(keyless, service.tokens.lead) };
    const [one, other] = [await pseudonymsIn(without), await pseudonymsIn(without)];
    expect(one.filter((pseudonym) => [...first, ...other].includes(pseudonym))).toEqual([]);
    await keyless.close();
  });

  it('are told to the trail with what was asked, and open to leads only', async () => {
    await exported(service, `${PATH}?dates=month&ages=band&received=2026-27-Q2`);
    const [latest] = itemsOf(await service.as('lead').get('/api/v1/audit-events?limit=1'));
    expect(latest).toMatchObject({
      action: 'analysis-exported',
      details: { dates: 'month', ages: 'band', received: '2026-27-Q2', pseudonyms: 'of-the-service' },
    });
    for (const role of ['admin', 'clinician', 'commissioner'] as const)
      expect((await service.as(role).get(PATH)).status).toBe(403);
  });
});
