import { execFile } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import BetterSqlite from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { backUp, removeOldBackups } from '../../src/app/backup.js';
import { restore } from '../../src/app/restore.js';
import { aPatient, TEST_NHS_NUMBERS } from '../support/entries.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

const run = promisify(execFile);
const ROOT = new URL('../..', import.meta.url).pathname;

describe('keeping the record', () => {
  let folder = '';
  let service: TestApp;
  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'tidemark-keeping-'));
    service = await startApp();
  });
  afterEach(async () => {
    await service.close();
    rmSync(folder, { recursive: true });
  });

  const register = (index: number) =>
    service.as('admin').post('/api/v1/patients', aPatient({ nhsNumber: TEST_NHS_NUMBERS[index] }));

  it('a backup made while writes go on is whole, and carries its checksum', async () => {
    const target = join(folder, 'copy.sqlite');
    const [digest] = await Promise.all([
      backUp(service.databaseFile, target),
      register(0),
      register(1),
      register(2),
    ]);
    expect(readFileSync(`${target}.sha256`, 'utf8')).toBe(`${digest}  copy.sqlite\n`);
    const copy = new BetterSqlite(target, { readonly: true });
    const patients = copy.prepare('select count(*) as n from patient').get() as { n: number };
    const told = copy
      .prepare("select count(*) as n from audit_event where action = 'patient-registered'")
      .get();
    // Whatever moment the copy caught, what was written and what was told of it belong to one transaction.
    expect(told).toEqual(patients);
    copy.close();
  });

  it('a restored backup is the record as it was, and the former record is kept', async () => {
    await register(0);
    const target = join(folder, 'copy.sqlite');
    await backUp(service.databaseFile, target);
    const live = join(folder, 'live.sqlite');
    writeFileSync(live, 'what stood there before');
    restore(target, live);
    expect(readFileSync(live)).toEqual(readFileSync(target));
    expect(readFileSync(`${live}.before-restore`, 'utf8')).toBe('what stood there before');
  });

  it.each([
    ['changed', (file: string) => writeFileSync(file, 'x', { flag: 'a' }), /checksum/],
    ['truncated', (file: string) => truncateSync(file, 4096), /checksum/],
  ])('a %s backup is refused, and the record stays untouched', async (_name, damage, reason) => {
    const target = join(folder, 'copy.sqlite');
    await backUp(service.databaseFile, target);
    damage(target);
    const live = join(folder, 'live.sqlite');
    writeFileSync(live, 'as before');
    expect(() => restore(target, live)).toThrow(reason);
    expect(readFileSync(live, 'utf8')).toBe('as before');
  });

  it('a backup of a newer schema is refused', async () => {
    await service.record.connection.db
      .insertInto('kysely_migration' as 'team')
      .values({ name: '9999_from_the_future', timestamp: 'now' } as never)
      .execute();
    const target = join(folder, 'copy.sqlite');
    await backUp(service.databaseFile, target);
    expect(() => restore(target, join(folder, 'live.sqlite'))).toThrow(/newer schema.*9999_from_the_future/);
  });

  it('old backups are removed, the latest are kept', () => {
    for (const day of ['01', '02', '03']) writeFileSync(join(folder, `tidemark-2026-11-${day}.sqlite`), day);
    expect(removeOldBackups(folder, 2)).toEqual(['tidemark-2026-11-01.sqlite']);
    expect(readdirSync(folder)).toEqual(['tidemark-2026-11-02.sqlite', 'tidemark-2026-11-03.sqlite']);
  });

  it('db:migrate makes an empty record and leaves a new one as it is; account:create prints a token once', async () => {
    const env = { ...process.env, TIDEMARK_DB: join(folder, 'new', 'record.sqlite') };
    const command = async (file: string, ...rest: string[]): Promise<string> =>
      (await run('npx', ['tsx', `src/app/${file}`, ...rest], { cwd: ROOT, env })).stdout;
    expect(await command('migrate.ts')).toMatch(/applied 0001_record, 0002_physical_tests_and_safety/);
    expect(await command('migrate.ts')).toMatch(/up to date/);
    const account = [
      '--team',
      'Marram Coast PR team',
      '--site',
      'Dune Hall',
      '--role',
      'lead',
      '--name',
      'A Lead',
    ];
    expect(await command('create-account.ts', ...account)).toMatch(/^tdm_[\w-]{43}$/m);
    await expect(command('create-account.ts', '--team', 'No such team')).rejects.toMatchObject({ code: 2 });
    expect(await command('verify-audit.ts')).toMatch(/intact/);
  });
});
