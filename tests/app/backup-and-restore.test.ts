import { createHash } from 'node:crypto';
import {
  copyFileSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import BetterSqlite from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { backUp, removeOldBackups } from '../../src/app/backup.js';
import { restore } from '../../src/app/restore.js';
import { sha256OfFile } from '../../src/app/sha256-of-file.js';
import { givenPatient } from '../support/scenario.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

/** A service with one patient, a backup of it, and a place for another record. */
describe('keeping the record', () => {
  let folder = '';
  let backup = '';
  let live = '';
  let service: TestApp;
  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'tidemark-keeping-'));
    backup = join(folder, 'copy.sqlite');
    live = join(folder, 'live.sqlite');
    service = await startApp();
    await givenPatient(service);
    await backUp(service.databaseFile, backup);
  });
  afterEach(async () => {
    await service.close();
    rmSync(folder, { recursive: true });
  });

  const patientsIn = (file: string): number => {
    const database = new BetterSqlite(file, { readonly: true });
    const row = database.prepare('select count(*) as n from patient').get() as { n: number };
    database.close();
    return row.n;
  };
  const sign = (file: string): void => {
    const digest = createHash('sha256').update(readFileSync(file)).digest('hex');
    writeFileSync(`${file}.sha256`, `${digest}  copy.sqlite\n`);
  };

  describe('by a backup', () => {
    it('is one file that needs nothing beside it, with its checksum', () => {
      expect(readdirSync(folder).sort()).toEqual(['copy.sqlite', 'copy.sqlite.sha256']);
      const digest = createHash('sha256').update(readFileSync(backup)).digest('hex');
      expect(readFileSync(`${backup}.sha256`, 'utf8')).toBe(`${digest}  copy.sqlite\n`);
      const copy = new BetterSqlite(backup, { readonly: true });
      expect(copy.pragma('journal_mode', { simple: true })).toBe('delete');
      copy.close();
      expect(patientsIn(backup)).toBe(1);
    });

    it('never takes the place of another file, and least of all of the record', async () => {
      const before = readFileSync(backup);
      await expect(backUp(service.databaseFile, backup)).rejects.toThrow(/is there already/);
      await expect(backUp(service.databaseFile, service.databaseFile)).rejects.toThrow(/is there already/);
      expect(readFileSync(backup)).toEqual(before);
      await givenPatient(service);
    });

    it('leaves nothing behind of what is no record', async () => {
      const other = join(folder, 'other.sqlite');
      const database = new BetterSqlite(other);
      database.exec('create table something (id text)');
      database.close();
      const before = readdirSync(folder);
      await expect(backUp(other, join(folder, 'target.sqlite'))).rejects.toThrow(/The copy is not sound/);
      expect(readdirSync(folder)).toEqual(before);
    });

    it('has the checksum of the whole file, however large', () => {
      const large = join(folder, 'large');
      const bytes = Buffer.alloc(3 * 1024 * 1024 + 7, 'tide');
      writeFileSync(large, bytes);
      expect(sha256OfFile(large)).toBe(createHash('sha256').update(bytes).digest('hex'));
      writeFileSync(large, '');
      expect(sha256OfFile(large)).toBe(createHash('sha256').digest('hex'));
    });

    it('is removed when it is old, with its checksum and nothing else', () => {
      const kept = ['copy.sqlite', 'copy.sqlite.sha256', 'tidemark-notes.txt'];
      writeFileSync(join(folder, 'tidemark-notes.txt'), '');
      for (const day of ['02', '01', '03']) {
        for (const suffix of ['', '.sha256'])
          writeFileSync(join(folder, `tidemark-2026-11-${day}.sqlite${suffix}`), day);
      }
      expect(removeOldBackups(folder, 2)).toEqual(['tidemark-2026-11-01.sqlite']);
      expect(removeOldBackups(folder, 2)).toEqual([]);
      const latest = ['02', '03'].flatMap((day) => [
        `tidemark-2026-11-${day}.sqlite`,
        `tidemark-2026-11-${day}.sqlite.sha256`,
      ]);
      expect(readdirSync(folder).sort()).toEqual([...kept, ...latest].sort());
    });
  });

  describe('by a restore', () => {
    it('gives back the record as it was, and makes its folder where it is missing', () => {
      const elsewhere = join(folder, 'new', 'folder', 'record.sqlite');
      expect(restore(backup, elsewhere)).toBeNull();
      expect(readFileSync(elsewhere)).toEqual(readFileSync(backup));
      expect(readdirSync(join(folder, 'new', 'folder'))).toEqual(['record.sqlite']);
    });

    it.each<[string, (file: string) => void, RegExp]>([
      ['was changed', (file) => writeFileSync(file, 'x', { flag: 'a' }), /checksum differs/],
      ['was truncated', (file) => truncateSync(file, 4096), /checksum differs/],
      ['has no checksum', (file) => rmSync(`${file}.sha256`), /no checksum/],
      ['is not there', (file) => rmSync(file), /no backup/],
      [
        'was truncated before its checksum was taken',
        (file) => {
          truncateSync(file, 8192);
          sign(file);
        },
        /is not sound/,
      ],
      [
        'was damaged before its checksum was taken',
        (file) => {
          const bytes = readFileSync(file);
          bytes.fill(0xff, 4096 * 2, 4096 * 6);
          writeFileSync(file, bytes);
          sign(file);
        },
        /is not sound/,
      ],
      [
        'refers to what it does not hold',
        (file) => {
          const copy = new BetterSqlite(file);
          copy.pragma('foreign_keys = OFF');
          copy.exec("insert into site values ('site', 'no-such-team', 'Nowhere Hall')");
          copy.close();
          sign(file);
        },
        /references lead nowhere/,
      ],
      [
        'is of a newer program',
        (file) => {
          const copy = new BetterSqlite(file);
          copy.exec("insert into kysely_migration values ('9999_from_the_future', '2030-01-01')");
          copy.close();
          sign(file);
        },
        /newer schema than this program \(9999_from_the_future\)/,
      ],
    ])('refuses a backup that %s, and leaves the record as it is', (_name, damage, reason) => {
      damage(backup);
      writeFileSync(live, 'as before');
      const before = readdirSync(folder).sort();
      expect(() => restore(backup, live)).toThrow(reason);
      expect(readFileSync(live, 'utf8')).toBe('as before');
      expect(readdirSync(folder).sort()).toEqual(before);
    });

    it('refuses while the record is in use, which goes on undisturbed', async () => {
      const beside = join(service.databaseFile, '..');
      await givenPatient(service);
      const before = readdirSync(beside).sort();
      expect(() => restore(backup, service.databaseFile)).toThrow(/in use: stop the service first/);
      expect(readdirSync(beside).sort()).toEqual(before);
      await givenPatient(service);
      expect(patientsIn(service.databaseFile)).toBe(3);
    });

    it('keeps every former record, also when it is done twice', async () => {
      await givenPatient(service);
      const second = join(folder, 'second.sqlite');
      await backUp(service.databaseFile, second);
      restore(second, live);
      expect(restore(backup, live)).toBe(`${live}.before-restore`);
      expect(restore(second, live)).toBe(`${live}.before-restore-2`);
      expect(
        [live, `${live}.before-restore`, `${live}.before-restore-2`].map((file) => patientsIn(file)),
      ).toEqual([2, 2, 1]);
    });

    it('keeps what a service that was killed had not yet moved from the log into the file', async () => {
      await givenPatient(service);
      // What a kill leaves: the file and its log as they are at this moment.
      for (const suffix of ['', '-wal']) copyFileSync(service.databaseFile + suffix, live + suffix);
      expect(readFileSync(`${live}-wal`).length).toBeGreaterThan(0);
      const kept = restore(backup, live) ?? '';
      expect(patientsIn(kept)).toBe(2);
      expect(patientsIn(live)).toBe(1);
      expect(existsSync(`${live}-wal`)).toBe(false);
    });

    it('keeps a former record that cannot be read, byte by byte', () => {
      const bytes = Buffer.alloc(10_000, 'no database');
      writeFileSync(live, bytes);
      writeFileSync(`${live}-wal`, 'a log that belongs to it');
      const kept = restore(backup, live) ?? '';
      expect(readFileSync(kept)).toEqual(bytes);
      expect(readFileSync(`${kept}-wal`, 'utf8')).toBe('a log that belongs to it');
      expect(patientsIn(live)).toBe(1);
    });
  });
});
