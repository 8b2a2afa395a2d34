import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openRecord } from '../../src/app/open-record.js';
import type { OpenRecord } from '../../src/app/open-record.js';
import { clockAt } from '../../src/app/system-clock.js';
import { LEFT_BEHIND, RECORD_TABLES } from '../../src/domain/exports/record-tables.js';
import type { RecordColumn } from '../../src/domain/exports/record-table.js';
import { TEST_INSTANT } from '../support/start-app.js';

/** Columns that stay behind though their table leaves: everything by which somebody signs in, or is no member of the team. */
const SECRETS: Readonly<Record<string, readonly string[]>> = {
  account: [
    'commissioner_id',
    'sign_in_name',
    'passphrase_hash',
    'passphrase_set_at',
    'second_factor_secret',
    'second_factor_confirmed_at',
    'second_factor_last_step',
    'oidc_subject',
  ],
};

const folder = mkdtempSync(join(tmpdir(), 'tidemark-tables-'));
let record: OpenRecord;
let statements: ReadonlyMap<string, string>;
beforeAll(async () => {
  record = await openRecord(join(folder, 'record.sqlite'), clockAt(TEST_INSTANT));
  const { rows } = await sql<{ name: string; sql: string }>`
    select name, sql from sqlite_schema where type = 'table'
  `.execute(record.connection.db);
  statements = new Map(rows.map((row) => [row.name, row.sql]));
});
afterAll(async () => {
  await record.connection.close();
  rmSync(folder, { recursive: true });
});

describe('the tables that leave with the record of a team', () => {
  it('are every table of the store but those that are said to stay behind', async () => {
    const tables = await record.connection.db.introspection.getTables();
    const told = [...RECORD_TABLES.map(({ name }) => name), ...Object.keys(LEFT_BEHIND)];
    expect(told.sort()).toEqual(tables.map(({ name }) => name).sort());
  });

  it('have every column of the store, each as empty as it may be there', async () => {
    const tables = await record.connection.db.introspection.getTables();
    const nullable = new Map(
      tables.map(({ name, columns }) => [
        name,
        columns.map((column) => [column.name, column.isNullable] as const),
      ]),
    );
    for (const { name, columns } of RECORD_TABLES) {
      const left = SECRETS[name] ?? [];
      const stored = nullable.get(name)?.filter(([column]) => !left.includes(column)) ?? [];
      // That an account has no team is so for commissioners only.
      const told = columns.map((column) => [
        column.name,
        column.isOptional || (name === 'account' && column.name === 'team_id'),
      ]);
      expect(told.sort(), name).toEqual(stored.map((each) => [...each]).sort());
    }
  });

  it('stand after the tables that they lead to', () => {
    const seen = new Set<string>();
    for (const table of RECORD_TABLES) {
      seen.add(table.name);
      for (const { kind } of table.columns)
        if (kind.type === 'reference') expect([...seen], table.name).toContain(kind.table);
    }
  });

  it('tell of codes and limits what the store checks', () => {
    let compared = 0;
    for (const { name, columns } of RECORD_TABLES) {
      const statement = statements.get(name) ?? '';
      for (const column of columns) {
        const checked = checkOf(statement, column.name);
        if (checked === null || !['code', 'number'].includes(column.kind.type)) continue;
        compared += 1;
        // Commissioners belong to no team.
        const ofTeams = checked.filter((code) => code !== 'commissioner').sort();
        expect([...(toldCheck(column) ?? [])].sort(), `${name}.${column.name}`).toEqual(ofTeams);
      }
    }
    expect(compared).toBeGreaterThan(60);
  });

  it('tell of every reference that the store checks', () => {
    for (const { name, columns } of RECORD_TABLES) {
      const statement = statements.get(name) ?? '';
      for (const column of columns) {
        const led = new RegExp(`"${column.name}" \\w+[^,]* references "(\\w+)" \\("(\\w+)"\\)`, 'i').exec(
          statement,
        );
        if (led === null) continue;
        expect(column.kind, `${name}.${column.name}`).toEqual({
          type: 'reference',
          table: led[1],
          column: led[2],
        });
      }
    }
  });
});

/** What the store checks of a column: its codes, or its limits; null where it checks neither. */
function checkOf(statement: string, column: string): readonly (string | number)[] | null {
  const codes = new RegExp(`check \\("?${column}"? in \\(('[^)]*')\\)`, 'i').exec(statement);
  if (codes !== null) return [...(codes[1] ?? '').matchAll(/'([^']*)'/g)].map(([, code]) => code ?? '');
  const limits = new RegExp(`check \\("?${column}"? between (-?\\d+) and (-?\\d+)`, 'i').exec(statement);
  return limits === null ? null : [Number(limits[1]), Number(limits[2])];
}

function toldCheck({ kind }: RecordColumn): readonly (string | number)[] | null {
  if (kind.type === 'code') return kind.codes;
  return kind.type === 'number' ? [kind.min, kind.max] : null;
}
