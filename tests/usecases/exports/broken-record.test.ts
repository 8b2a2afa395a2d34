import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sql } from 'kysely';
import { createCommissioner, createTeam } from '../../../src/usecases/accounts/provision.js';
import { bringRecordIn } from '../../../src/usecases/exports/bring-record-in.js';
import { exportRecordByName } from '../../../src/usecases/exports/export-record.js';
import { verifyAuditTrail } from '../../../src/storage/audit/verify-trail.js';
import { startWorld } from '../../support/bad-input.js';
import type { World } from '../../support/bad-input.js';
import { emptyStore, inColumn, tampered } from '../../support/moved-record.js';
import type { EmptyStore, Tampering } from '../../support/moved-record.js';

const TEAM = 'Marram Coast PR team';

let world: World;
let file: Uint8Array;
let store: EmptyStore;
beforeAll(async () => {
  world = await startWorld();
  store = await emptyStore();
  file = await takenOut(world.app.record);
});
afterAll(async () => {
  await store.remove();
  await world.app.close();
});

async function takenOut(
  { context }: EmptyStore['record'],
  form: 'zip' | 'json' = 'zip',
): Promise<Uint8Array> {
  const exported = await exportRecordByName(context, TEAM, form);
  if (typeof exported === 'string') throw new Error(exported);
  return exported.content;
}

/** Rows of all tables together. */
async function countRows({ record }: EmptyStore): Promise<number> {
  let count = 0;
  for (const { name } of await record.connection.db.introspection.getTables()) {
    const { rows } = await sql<{ rows: number }>`select count(*) as rows from ${sql.table(name)}`.execute(
      record.connection.db,
    );
    count += rows[0]?.rows ?? 0;
  }
  return count;
}

async function faultsOf(bytes: Uint8Array): Promise<readonly string[]> {
  const before = await countRows(store);
  const brought = await bringRecordIn(store.record.context, bytes);
  expect(await countRows(store)).toBe(before);
  if (brought.kind === 'done') throw new Error('The file was taken.');
  return brought.faults.map(({ file: where, row, column, message }) =>
    [where ?? '', row ?? '', column ?? '', message].join('|'),
  );
}

describe('a file that is no record of a team', () => {
  it.each([
    ['nothing', new Uint8Array(), /no zip that can be read/],
    ['text', Buffer.from('dunes'), /no zip that can be read/],
  ])('is refused: %s', async (_name, bytes, words) => {
    expect(await faultsOf(bytes)).toEqual([expect.stringMatching(words)]);
  });

  it('is refused where it is cut off, damaged, or of another form', async () => {
    expect(await faultsOf(file.subarray(0, file.length / 2))).not.toEqual([]);
    const damaged = Buffer.from(file);
    damaged.fill(0, 5000, 5100);
    expect(await faultsOf(damaged)).not.toEqual([]);
    expect(await faultsOf(tampered(file, { 'about.json': () => '{"form":"dunes"}' }))).toEqual([
      'about.json|||It does not say that this is the record of a team.',
    ]);
    const newer = (text: string): string => text.replace('"version": 1', '"version": 2');
    expect(await faultsOf(tampered(file, { 'about.json': newer }))).toEqual([
      'about.json|||The record is of another form: this program reads version 1.',
    ]);
  });

  it('is refused where a table is missing, or not as it was', async () => {
    const about = { 'about.json': (text: string) => text };
    expect(await faultsOf(tampered(file, { ...about, 'offer.csv': () => null }))).toEqual([
      'offer.csv|||The table is missing.',
    ]);
    const changed = tampered(file, { ...about, 'site.csv': (text) => text.replace('Dune', 'Rock') });
    expect(await faultsOf(changed)).toEqual([
      'site.csv|||The table is not as it was when the record was taken out.',
    ]);
  });
});

describe('the JSON form of a record', () => {
  const changed = async (change: (record: JsonRecord) => void): Promise<readonly string[]> => {
    const text = Buffer.from(await takenOut(world.app.record, 'json')).toString('utf8');
    const record = JSON.parse(text) as JsonRecord;
    change(record);
    return faultsOf(Buffer.from(JSON.stringify(record)));
  };

  it('is refused where it is cut off, of another form, or of another version', async () => {
    const whole = await takenOut(world.app.record, 'json');
    const notWhole = '|||The file cannot be used: it is no whole JSON document.';
    expect(await faultsOf(whole.subarray(0, whole.length / 2))).toEqual([notWhole]);
    expect(await faultsOf(Buffer.from('{"form":"dunes"}'))).toEqual([
      '|||It does not say that this is the record of a team.',
    ]);
    expect(await changed((record) => (record.version = 2))).toEqual([
      '|||The record is of another form: this program reads version 1.',
    ]);
  });

  it('is refused with the table, the place in it and the column', async () => {
    expect(await changed(({ tables }) => delete tables['offer'])).toEqual(['offer|||The table is missing.']);
    const first = (record: JsonRecord, table: string) => record.tables[table]?.[0] ?? {};
    expect(await changed((record) => (first(record, 'patient')['born_on'] = '1950-02-30'))).toContain(
      'patient|1|born_on|must be a date such as 2026-03-31',
    );
    expect(await changed((record) => (first(record, 'patient')['born_on'] = ['1950-02-03']))).toEqual([
      'patient|1||must have the columns of the table, each a text, a number or null',
    ]);
    expect(await changed((record) => (first(record, 'site')['dune'] = 'more'))).toEqual([
      'site|1||must have the columns of the table, each a text, a number or null',
    ]);
    expect(await changed((record) => (first(record, 'referral')['patient_id'] = NO_ONE))).toEqual([
      'referral|1|patient_id|must lead to a row of patient',
    ]);
  });
});

interface JsonRecord {
  version: number;
  readonly tables: Record<string, Record<string, unknown>[]>;
}

const NO_ONE = '00000000-0000-7000-8000-000000000000';

/** Every table says that it is as it was: what is found is found by its rows. */
const CHANGED: readonly (readonly [string, Tampering, RegExp])[] = [
  [
    'a date that does not exist',
    { 'patient.csv': inColumn('born_on', () => '1950-02-30') },
    /^patient\.csv\|2\|born_on\|must be a date/,
  ],
  [
    'an NHS number that is none',
    { 'patient.csv': inColumn('nhs_number', () => '9990000000') },
    /^patient\.csv\|\d+\|nhs_number\|must be an NHS number/,
  ],
  ['a live NHS number', { 'patient.csv': inColumn('nhs_number', () => '9434765919') }, /range for tests$/],
  [
    'an unknown code',
    { 'referral.csv': inColumn('pathway', () => 'scenic') },
    /^referral\.csv\|2\|pathway\|must be one of: stable, after-exacerbation$/,
  ],
  [
    'a number out of range',
    { 'walk_test.csv': inColumn('distance_m', () => '1501') },
    /^walk_test\.csv\|2\|distance_m\|must be a whole number from 0 to 1500$/,
  ],
  [
    'a number with a comma',
    { 'assessment.csv': inColumn('height_mm', () => '1,6') },
    /^assessment\.csv\|2\|height_mm\|must be a whole number/,
  ],
  [
    'an empty cell',
    { 'session.csv': inColumn('held_on', () => '') },
    /^session\.csv\|2\|held_on\|must not be empty$/,
  ],
  [
    'a person who is not there',
    { 'referral.csv': inColumn('patient_id', () => NO_ONE) },
    /^referral\.csv\|2\|patient_id\|must lead to a row of patient\.csv$/,
  ],
  [
    'another team',
    { 'site.csv': inColumn('team_id', () => NO_ONE) },
    /^site\.csv\|2\|team_id\|must lead to a row of team\.csv$/,
  ],
  [
    'a column too few',
    { 'site.csv': (text) => text.replace(',name', '') },
    /^site\.csv\|1\|\|must be the names of the columns, in order$/,
  ],
  ['a row that breaks off', { 'site.csv': (text) => `${text}"dune` }, /^site\.csv\|\d+\|\|/],
  [
    'settings that are none',
    {
      'settings.csv': (text) =>
        `${text}${world.app.teamId},1,"{""completionReading"":""often""}",2026-11-25T10:00:00.000Z,,\r\n`,
    },
    /^settings\.csv\|\|\|The latest settings are none/,
  ],
  [
    'JSON of another form',
    { 'assessment.csv': inColumn('safety_findings', () => '{}') },
    /^assessment\.csv\|2\|safety_findings\|must be JSON: a list of texts$/,
  ],
  [
    'a former state that is none',
    { 'referral_version.csv': inColumn('document', () => '{}') },
    /The referral [0-9a-f-]+ cannot be read as it stands there/,
  ],
  [
    'a rule of the store',
    {
      'assessment.csv': (text) =>
        inColumn('systolic_mmhg', () => '90')(inColumn('diastolic_mmhg', () => '95')(text)),
    },
    /^assessment\.csv\|2\|\|breaks a rule of the record \(CHECK constraint failed: systolic_above_diastolic\)$/,
  ],
  [
    'a row twice',
    { 'site.csv': (text) => text + (text.split('\r\n')[1] ?? '') + '\r\n' },
    /^site\.csv\|4\|\|breaks a rule of the record \(UNIQUE constraint failed: site\./,
  ],
  [
    'a person who leads to themselves',
    {
      'patient.csv': (text) => {
        const id = /\r\n([0-9a-f-]{36}),/.exec(text)?.[1] ?? '';
        return inColumn('merged_into', (own) => own || id)(text);
      },
    },
    /^patient\.csv\|2\|\|leads to itself in a circle$/,
  ],
  [
    'a release that was changed',
    { 'release.csv': inColumn('period', () => '2026-27-Q1'), 'release_file/1-csv': () => 'other' },
    /^release\.csv\|\|\|Of release 1 the csv file does not have its digest\.$/,
  ],
  [
    'a file that is not there',
    { 'release_file/1-pdf': () => null },
    /^release_file\.csv\|\d\|content\|must name a file beside the tables$/,
  ],
];

describe('a record that was changed with care', () => {
  it.each(CHANGED)(
    'is refused with where and why, and nothing is written: %s',
    async (_name, changes, words) => {
      const faults = await faultsOf(tampered(file, changes));
      expect(faults[0]).toMatch(words);
    },
  );

  it('tells of many faults at once, and not of all', async () => {
    const faults = await faultsOf(
      tampered(file, {
        'patient.csv': inColumn('gender', () => 'x'),
        'referral.csv': inColumn('source', () => 'x'),
      }),
    );
    expect(faults.some((fault) => fault.startsWith('patient.csv|2|gender'))).toBe(true);
    expect(faults.some((fault) => fault.startsWith('referral.csv|2|source'))).toBe(true);
    expect(faults.length).toBeLessThanOrEqual(50);
  });
});

describe('a store', () => {
  it('takes the record of a team once, with merges, releases and former states, and tells the trail', async () => {
    const fresh = await emptyStore();
    try {
      expect(await bringRecordIn(fresh.record.context, file)).toMatchObject({ kind: 'done', teamName: TEAM });
      expect(Buffer.from(await takenOut(fresh.record)).equals(Buffer.from(file))).toBe(true);
      const again = await bringRecordIn(fresh.record.context, file);
      expect(again).toMatchObject({
        kind: 'refused',
        faults: [{ message: expect.stringContaining('already') as string }],
      });
      const { db } = fresh.record.connection;
      expect(await verifyAuditTrail(db)).toMatchObject({ kind: 'intact' });
      const events = await db.selectFrom('audit_event').select(['action', 'details']).execute();
      expect(events[0]).toMatchObject({ action: 'record-brought-in' });
      expect(events[0]?.details).toMatch(/"fileDigest":"[0-9a-f]{64}"/);
      const accounts = await db.selectFrom('account').selectAll().execute();
      expect(accounts.every((account) => account.passphrase_hash === null)).toBe(true);
      expect(await db.selectFrom('api_token').selectAll().execute()).toEqual([]);
    } finally {
      await fresh.remove();
    }
  });

  it('that has other teams keeps them, and is asked to have commissioners by the same name', async () => {
    const other = await emptyStore();
    try {
      const { context, connection } = other.record;
      const team = await createTeam(context, {
        name: 'Eelgrass Lagoon PR team',
        kind: 'demo',
        siteNames: ['Cordgrass Rooms'],
      });
      await createCommissioner(context, { name: 'Lagoon Commissioning', teamIds: [team.teamId] });
      expect((await bringRecordIn(context, file)).kind).toBe('done');
      expect(await connection.db.selectFrom('team').select('id').execute()).toHaveLength(2);
    } finally {
      await other.remove();
    }
    await store.record.connection.db
      .insertInto('commissioner')
      .values({ id: world.app.commissionerId, name: 'Rock Commissioning' })
      .execute();
    expect(await faultsOf(file)).toEqual([
      'commissioner.csv|2|name|must be the name that this commissioner has in the store',
    ]);
  });
});
