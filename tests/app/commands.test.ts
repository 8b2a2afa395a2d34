import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import BetterSqlite from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openRecord } from '../../src/app/open-record.js';
import { SYSTEM_CLOCK } from '../../src/app/system-clock.js';
import { MIGRATIONS } from '../../migrations/index.js';
import { expectRefused, expectUsage, runCommandFile, runProgram } from '../support/command.js';
import type { Ended } from '../support/command.js';
import { aSmallQuarter, released } from '../support/release-service.js';
import { asRecord } from '../support/response.js';
import { givenPatient } from '../support/scenario.js';
import { startApp } from '../support/start-app.js';

/** The files of the npm scripts, each in a process of its own, on a record in a folder that is thrown away. */
describe('commands of the operator', () => {
  let folder = '';
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'tidemark-commands-'));
  });
  afterAll(() => {
    rmSync(folder, { recursive: true });
  });

  const at = (...names: readonly string[]): string => join(folder, ...names);
  const run = (file: string, args: readonly string[], databaseFile: string): Promise<Ended> =>
    runCommandFile(file, args, { TIDEMARK_DB: databaseFile });
  const countIn = (file: string, table: string): number => {
    const database = new BetterSqlite(file, { readonly: true });
    const row = database.prepare(`select count(*) as n from ${table}`).get() as { n: number };
    database.close();
    return row.n;
  };

  it('db:migrate makes a record where there is none, folder and all, and leaves it as it is the next time', async () => {
    const file = at('a', 'folder', 'record.sqlite');
    const first = await run('migrate.ts', [], file);
    expect(first).toMatchObject({ code: 0, stderr: '' });
    expect(first.stdout).toBe(`${file}: applied ${Object.keys(MIGRATIONS).join(', ')}.\n`);
    const before = readFileSync(file);
    const second = await run('migrate.ts', [], file);
    expect(second).toEqual({ code: 0, stdout: `${file} is up to date.\n`, stderr: '' });
    expect(countIn(file, 'kysely_migration')).toBe(Object.keys(MIGRATIONS).length);
    expect(readFileSync(file).length).toBe(before.length);
  });

  it('db:migrate refuses a record of a newer program, and what is no record, and changes neither', async () => {
    const newer = at('newer.sqlite');
    await (await openRecord(newer, SYSTEM_CLOCK)).connection.close();
    const database = new BetterSqlite(newer);
    database.exec("insert into kysely_migration values ('9999_from_the_future', '2030-01-01')");
    database.close();
    const text = at('letter.sqlite');
    writeFileSync(text, 'This is a letter and no record. '.repeat(200));
    const [ofNewer, ofText] = await Promise.all([run('migrate.ts', [], newer), run('migrate.ts', [], text)]);
    expectRefused(ofNewer, /newer\.sqlite cannot be brought to the schema.*9999_from_the_future/);
    expectRefused(ofText, /letter\.sqlite cannot be opened as a record/);
    expect(countIn(newer, 'kysely_migration')).toBe(Object.keys(MIGRATIONS).length + 1);
    expect(readFileSync(text, 'utf8')).toMatch(/^This is a letter/);
  });

  it('db:backup copies one moment of a record that is being written, and removes the oldest by --keep', async () => {
    const service = await startApp();
    const databaseFile = service.databaseFile;
    const backups = join(databaseFile, '..', 'backups');
    mkdirSync(backups);
    for (const day of ['01', '02', '03']) {
      for (const suffix of ['', '.sha256'])
        writeFileSync(join(backups, `tidemark-2026-01-${day}.sqlite${suffix}`), day);
    }
    for (let index = 0; index < 20; index += 1) await givenPatient(service);
    let isOver = false;
    const backingUp = run('backup.ts', ['--keep', '2'], databaseFile).finally(() => {
      isOver = true;
    });
    let written = 20;
    while (!isOver) {
      await givenPatient(service);
      written += 1;
    }
    const ended = await backingUp;
    expect(ended, ended.stderr).toMatchObject({ code: 0, stderr: '' });
    const [backup = ''] = readdirSync(backups).filter((name) => !name.startsWith('tidemark-2026-01'));
    // Only the latest of the older backups is left, and of the new one nothing but itself and its checksum.
    expect(readdirSync(backups).sort()).toEqual(
      ['tidemark-2026-01-03.sqlite', 'tidemark-2026-01-03.sqlite.sha256', backup, `${backup}.sha256`].sort(),
    );
    expect(ended.stdout).toContain(
      'Removed tidemark-2026-01-01.sqlite.\nRemoved tidemark-2026-01-02.sqlite.\n',
    );
    const digest = /SHA-256 ([0-9a-f]{64})/.exec(ended.stdout)?.[1];
    expect(readFileSync(join(backups, `${backup}.sha256`), 'utf8')).toBe(`${digest}  ${backup}\n`);
    const copy = join(backups, backup);
    const patients = countIn(copy, 'patient');
    expect(patients).toBeGreaterThanOrEqual(20);
    expect(patients).toBeLessThanOrEqual(written);
    // Whatever moment it caught: each patient and what the trail tells of it were written in one transaction.
    expect(countIn(copy, "audit_event where action = 'patient-registered'")).toBe(patients);
    await service.close();
  });

  it('db:backup refuses to copy what is not there, or by arguments that it does not know', async () => {
    const [missing, badNumber] = await Promise.all([
      run('backup.ts', [], at('absent.sqlite')),
      run('backup.ts', ['--keep', '0'], at('absent.sqlite')),
    ]);
    expectRefused(missing, /There is no record at .*absent\.sqlite/);
    expectUsage(badNumber, 'db:backup');
    expect(existsSync(at('absent.sqlite'))).toBe(false);
  });

  it('db:restore puts a backup in the place of the record and says where the former is', async () => {
    const service = await startApp();
    await givenPatient(service);
    const copy = at('copy.sqlite');
    const backedUp = await run('backup.ts', [copy], service.databaseFile);
    expect(backedUp.code, backedUp.stderr).toBe(0);
    await givenPatient(service);
    const inUse = await run('restore.ts', [copy], service.databaseFile);
    expectRefused(inUse, /is in use: stop the service first/);
    expect(countIn(service.databaseFile, 'patient')).toBe(2);
    await service.app.close();
    await service.record.connection.close();
    const restored = await run('restore.ts', [copy], service.databaseFile);
    const kept = `${service.databaseFile}.before-restore`;
    expect(restored).toEqual({
      code: 0,
      stdout: `Restored ${service.databaseFile} from ${copy}.\nThe former record is ${kept}.\n`,
      stderr: '',
    });
    expect([countIn(service.databaseFile, 'patient'), countIn(kept, 'patient')]).toEqual([1, 2]);
    await service.close();
  });

  it('db:restore refuses in one line what it cannot verify', async () => {
    const damaged = at('damaged.sqlite');
    await (await openRecord(damaged, SYSTEM_CLOCK)).connection.close();
    writeFileSync(`${damaged}.sha256`, `${'0'.repeat(64)}  damaged.sqlite\n`);
    const [changed, none] = await Promise.all([
      run('restore.ts', [damaged], at('live.sqlite')),
      run('restore.ts', [], at('live.sqlite')),
    ]);
    expectRefused(changed, /The checksum differs/);
    expectUsage(none, 'db:restore');
    expect(existsSync(at('live.sqlite'))).toBe(false);
  });

  it('say how they are called where they are asked for help, and do nothing', async () => {
    const asked = await run('backup.ts', ['--help'], at('never.sqlite'));
    expect([asked.code, asked.stderr]).toEqual([0, '']);
    expect(asked.stdout).toContain('npm run db:backup');
    expect(existsSync(at('never.sqlite'))).toBe(false);
  });

  it('audit:verify tells an intact trail, and does not take a missing record for one', async () => {
    const file = at('trail.sqlite');
    await (await openRecord(file, SYSTEM_CLOCK)).connection.close();
    const [intact, missing] = await Promise.all([
      run('verify-audit.ts', [], file),
      run('verify-audit.ts', [], at('absent.sqlite')),
    ]);
    expect(intact).toEqual({ code: 0, stdout: 'The audit trail is intact: 0 entries.\n', stderr: '' });
    expectRefused(missing, /There is no record/);
  });

  it('release:verify tells releases that hold, names one that was changed, and does not take a missing record for one', async () => {
    const service = await startApp();
    await aSmallQuarter(service);
    await released(service);
    const holds = await run('verify-releases.ts', [], service.databaseFile);
    const database = new BetterSqlite(service.databaseFile);
    database.exec('drop trigger release_file_no_update');
    database.exec("update release_file set content = x'00' where form = 'pdf'");
    database.close();
    const [changed, missing] = await Promise.all([
      run('verify-releases.ts', [], service.databaseFile),
      run('verify-releases.ts', [], at('absent.sqlite')),
    ]);
    await service.close();
    expect(holds).toEqual({ code: 0, stdout: 'All releases hold: 1.\n', stderr: '' });
    expectRefused(changed, /1 of 1 do not hold: release 1: the pdf file does not have its digest/);
    expectRefused(missing, /There is no record/);
  });

  it('openapi:check finds the committed document to be what is served', async () => {
    // As the script runs it, by the loader: compiled, it would look for the document beside itself.
    const ended = await runProgram('node_modules/.bin/tsx', ['src/app/write-openapi.ts', '--check'], {});
    expect(ended).toMatchObject({ code: 0, stderr: '' });
    expect(existsSync(at('unused.sqlite'))).toBe(false);
    const committed = asRecord(JSON.parse(readFileSync('openapi/openapi.json', 'utf8')));
    expect(committed['openapi']).toBe('3.1.0');
  });

  it('the service does not start by settings that it cannot use', async () => {
    const [badPort, noFile] = await Promise.all([
      runCommandFile('main.ts', [], { TIDEMARK_DB: at('unused.sqlite'), TIDEMARK_PORT: '70000' }),
      runCommandFile('main.ts', [], { TIDEMARK_DB: '', TIDEMARK_PORT: '0' }),
    ]);
    expectRefused(badPort, /TIDEMARK_PORT must be a whole number from 0 to 65535/);
    expectRefused(noFile, /TIDEMARK_DB must name a file/);
    expect(existsSync(at('unused.sqlite'))).toBe(false);
  });
});
