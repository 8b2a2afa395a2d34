import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectRefused, expectUsage, runCommandFile } from '../support/command.js';
import type { Ended } from '../support/command.js';
import { PASSPHRASE } from '../support/people.js';

const TEAM = ['--team', 'Marram Coast PR team'] as const;

let folder = '';
let environment: Readonly<Record<string, string>>;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'tidemark-import-'));
  environment = { TIDEMARK_DB: join(folder, 'record.sqlite') };
  const lead = [
    '--site',
    'Dune Hall',
    '--role',
    'lead',
    '--name',
    'Heather Turnstone',
    '--sign-in',
    'h.turnstone',
  ];
  await runCommandFile('create-account.ts', [...TEAM, ...lead], environment, `${PASSPHRASE}\n`);
});
afterAll(() => {
  rmSync(folder, { recursive: true });
});

const run = (...args: readonly string[]): Promise<Ended> => runCommandFile('import.ts', args, environment);

/** A sheet of two people without NHS numbers, which a live team may not take from the range of tests. */
function sheet(name: string): string {
  const rows = [
    'NHS number,No NHS number reason,Surname,Forename,DOB,Received,Diagnosis',
    ',to be traced,Whimbrel,Samphire,31/03/1950,13/04/2026,COPD',
    ',to be traced,Plover,Sandy,30/02/1955,20/04/2026,COPD',
  ];
  const file = join(folder, name);
  writeFileSync(file, rows.join('\r\n'));
  return file;
}

describe('the command that brings a sheet in', () => {
  it('asks what it cannot know, and writes nothing', async () => {
    const ended = await run(sheet('a.csv'), ...TEAM, '--commit', 'good-rows');
    expect(ended.code).toBe(1);
    expect(ended.stdout).toContain('Open: No column names the site.');
    expect(ended.stderr).toContain('Nothing was brought in');
  });

  it('judges every row, brings the good ones in with its progress, and changes nothing the second time', async () => {
    const file = sheet('b.csv');
    const judged = await run(file, ...TEAM, '--site', 'Dune Hall');
    expect(judged.stderr).toBe('100 % judged (1 of 1 referrals)\n');
    expect(judged.stdout).toContain('Row 3, DOB: There is no such date.');
    expect(judged.stdout).toContain(
      'Judged, nothing written:\n1 new, 0 added to, 0 in the record already, 0 unusual, 1 refused',
    );
    const done = await run(file, ...TEAM, '--site', 'Dune Hall', '--commit', 'good-rows');
    expect(done.stdout).toContain('Brought in:\n1 new');
    expect(done.stderr).toContain('100 % brought in (1 of 1 referrals)');
    const again = await run(file, ...TEAM, '--site', 'Dune Hall', '--commit', 'good-rows');
    expect(again.stdout).toContain('Brought in:\n0 new, 0 added to, 1 in the record already');
    const none = await run(file, ...TEAM, '--site', 'Dune Hall', '--commit', 'all-or-none');
    expect(none.code).toBe(1);
    expect(none.stderr).toContain('Nothing was brought in: 1 rows cannot be taken');
  });

  it('refuses what it does not know, in a line', async () => {
    expectRefused(
      await run(sheet('c.csv'), '--team', 'Samphire Bay PR team'),
      /no team "Samphire Bay PR team"/,
    );
    expectRefused(await run(sheet('c.csv'), ...TEAM, '--site', 'Pier'), /no site "Pier"/);
    expectRefused(await run(join(folder, 'none.csv'), ...TEAM), /cannot be read/);
    expectUsage(await run(), 'import');
    expectUsage(await run(sheet('c.csv'), ...TEAM, '--commit', 'some'), 'import');
  });
});
