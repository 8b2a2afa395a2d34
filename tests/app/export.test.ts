import { existsSync, mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectRefused, expectUsage, runCommandFile } from '../support/command.js';
import type { Ended } from '../support/command.js';
import { rowsOfCsv, textsOf } from '../support/export-file.js';
import { makeRecordFile } from '../support/record-file.js';

const TEAM = ['--team', 'Marram Coast PR team'] as const;

let folder = '';
let environment: Readonly<Record<string, string>>;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'tidemark-export-'));
  const databaseFile = join(folder, 'record.sqlite');
  environment = { TIDEMARK_DB: databaseFile };
  await makeRecordFile(databaseFile);
});
afterAll(() => {
  rmSync(folder, { recursive: true });
});

const run = (...args: readonly string[]): Promise<Ended> => runCommandFile('export.ts', args, environment);

describe('the command that takes a record out', () => {
  it('writes a new file that only its owner may read, and overwrites none', async () => {
    const file = join(folder, 'record.zip');
    const ended = await run(...TEAM, '--to', file);
    expect([ended.code, ended.stderr]).toEqual([0, '']);
    expect(ended.stdout).toContain('It names people: keep it safe.');
    expect(statSync(file).mode & 0o777).toBe(0o600);
    const content = readFileSync(file);
    expect(rowsOfCsv(textsOf(content)['team.csv'])).toMatchObject([{ name: 'Marram Coast PR team' }]);
    expectRefused(await run(...TEAM, '--to', file), /is there already/);
    expect(readFileSync(file).equals(content)).toBe(true);
  });

  it('refuses what it does not know, in a line', async () => {
    const file = join(folder, 'none.json');
    expectRefused(
      await run('--team', 'Samphire Bay PR team', '--to', file),
      /no team "Samphire Bay PR team"/,
    );
    expectUsage(await run(...TEAM, '--to', join(folder, 'record.pdf')), 'export');
    expect(existsSync(file)).toBe(false);
  });
});

it('what it wrote is brought in where there is no store yet, once', async () => {
  const file = join(folder, 'moved.zip');
  await run(...TEAM, '--to', file);
  const elsewhere = { TIDEMARK_DB: join(folder, 'elsewhere', 'record.sqlite') };
  const brought = await runCommandFile('import.ts', ['--record', file], elsewhere);
  expect([brought.code, brought.stderr]).toEqual([0, '']);
  expect(brought.stdout).toContain('Brought in: the record of Marram Coast PR team as it stood on ');
  const again = await runCommandFile('import.ts', ['--record', file], elsewhere);
  expect([again.code, again.stderr]).toEqual([1, 'Nothing was brought in.\n']);
  expect(again.stdout).toContain('The store has a team "Marram Coast PR team" already.');
});
