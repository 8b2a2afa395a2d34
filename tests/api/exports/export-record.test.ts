import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { RECORD_TABLES } from '../../../src/domain/exports/record-tables.js';
import { startWorld } from '../../support/bad-input.js';
import type { World } from '../../support/bad-input.js';
import { exported, rowsOfCsv, textsOf } from '../../support/export-file.js';
import { asRecord, asRecords, itemsOf } from '../../support/response.js';

const ZIP = '/api/v1/exports/record.zip';
const JSON_FORM = '/api/v1/exports/record.json';

let world: World;
beforeAll(async () => {
  world = await startWorld();
  // What a spreadsheet would carry out, beside a number that must stay one, and an empty text.
  const note = { reason: 'As dictated', changes: { otherConditions: '=HYPERLINK("dune")' } };
  await world.app.as('lead').patch(`/api/v1/referrals/${world.referralId}`, note);
});
afterAll(() => world.app.close());

describe('the record of a team as tables', () => {
  it('holds every row of the team and none of another', async () => {
    const { content, headers } = await exported(world.app, ZIP);
    expect(headers['content-type']).toBe('application/zip');
    expect(headers['content-disposition']).toBe('attachment; filename="record-2026-11-25.zip"');
    const files = textsOf(content);
    const { db } = world.app.record.connection;
    for (const { name } of RECORD_TABLES) expect(Object.keys(files), name).toContain(`${name}.csv`);
    for (const table of ['patient', 'referral', 'session', 'assessment', 'account', 'site'] as const) {
      const stored = await db.selectFrom(table).selectAll().where('team_id', '=', world.app.teamId).execute();
      expect(stored.length, table).toBeGreaterThan(0);
      expect(rowsOfCsv(files[`${table}.csv`]).length, table).toBe(stored.length);
    }
    const text = Object.values(files).join('\n');
    const { patientId, referralId, assessmentId, sessionId, accountId } = world.theirs;
    for (const theirs of [
      patientId,
      referralId,
      assessmentId,
      sessionId,
      accountId,
      world.app.otherTeam.teamId,
    ]) {
      expect(text).not.toContain(theirs);
    }
    expect(text).not.toContain('Samphire Bay');
  });

  it('guards text against formulas, and leaves numbers as they are', async () => {
    const files = textsOf((await exported(world.app, ZIP)).content);
    const referral = rowsOfCsv(files['referral.csv']).find(({ id }) => id === world.referralId);
    expect(referral?.['other_conditions']).toBe(`'=HYPERLINK("dune")`);
    expect(rowsOfCsv(files['walk_test.csv'])[0]?.['distance_m']).toMatch(/^\d+$/);
  });

  it('says of every column what it holds', async () => {
    const files = textsOf((await exported(world.app, ZIP)).content);
    const told = rowsOfCsv(files['data-dictionary.csv']);
    for (const { name } of RECORD_TABLES) {
      const [heading = ''] = (files[`${name}.csv`] ?? '').replace('\uFEFF', '').split('\r\n');
      expect(told.filter(({ table }) => table === name).map(({ column }) => column)).toEqual(
        heading.split(','),
      );
    }
    expect(told.find(({ column }) => column === 'weight_g')).toMatchObject({
      type: 'whole number, 25000 to 300000',
      unit: 'g',
      may_be_empty: 'yes',
    });
    expect(told.find(({ column }) => column === 'pathway')?.['codes']).toBe('stable; after-exacerbation');
    expect(told.every(({ meaning }) => meaning !== '')).toBe(true);
    expect(files['read-me.txt']).toContain('walk_test.csv');
  });

  it('holds nothing by which anybody signs in', async () => {
    const text = Object.values(textsOf((await exported(world.app, ZIP)).content)).join('\n');
    const { db } = world.app.record.connection;
    const tokens = await db.selectFrom('api_token').select('token_hash').execute();
    const invitations = await db.selectFrom('invitation').select('token_hash').execute();
    expect(tokens.length + invitations.length).toBeGreaterThan(4);
    for (const { token_hash } of [...tokens, ...invitations]) expect(text).not.toContain(token_hash);
    expect(text).not.toContain('lead.clinician');
  });

  it('is the same bytes for the same record, at the same instant', async () => {
    const one = await exported(world.app, ZIP);
    const other = await exported(world.app, ZIP);
    expect(one.content.equals(other.content)).toBe(true);
  });
});

describe('the record of a team as JSON', () => {
  it('holds the same rows', async () => {
    const files = textsOf((await exported(world.app, ZIP)).content);
    const sent = asRecord((await world.app.as('lead').get(JSON_FORM)).body);
    const tables = asRecord(sent['tables']);
    for (const { name, columns } of RECORD_TABLES) {
      const rows = asRecords(tables[name]);
      const asTable = rowsOfCsv(files[`${name}.csv`]);
      expect(rows.length, name).toBe(asTable.length);
      for (const [index, row] of rows.entries()) {
        for (const column of columns) {
          if (column.kind.type === 'file') continue;
          const value = row[column.name];
          const cell = (asTable[index]?.[column.name] ?? '').replace(/^'=/, '=');
          expect(cell, `${name}.${column.name}`).toBe(value === null ? '' : String(value as string | number));
        }
      }
    }
    expect(asRecords(sent['dictionary']).length).toBeGreaterThan(200);
  });
});

it('stands in the audit trail with its form, and nobody else is let through', async () => {
  await exported(world.app, ZIP);
  const [latest] = itemsOf(await world.app.as('lead').get('/api/v1/audit-events?limit=1'));
  expect(latest).toMatchObject({ action: 'record-exported', details: { form: 'zip' } });
  for (const role of ['admin', 'clinician', 'commissioner'] as const) {
    expect((await world.app.as(role).get(ZIP)).status).toBe(403);
  }
});
