import BetterSqlite from 'better-sqlite3';
import { Kysely, sql } from 'kysely';
import type { Transaction } from 'kysely';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { groupCommitDialect } from '../../src/storage/group-commit.js';

interface Things {
  thing: { id: number };
}

describe('transactions that reach the disk in groups', () => {
  let folder: string;
  let executed: string[];
  let raw: BetterSqlite.Database;
  let db: Kysely<Things>;
  let onlooker: BetterSqlite.Database;

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'tidemark-group-'));
    const file = join(folder, 'things.sqlite');
    executed = [];
    raw = new BetterSqlite(file, { verbose: (statement) => executed.push(String(statement)) });
    raw.pragma('journal_mode = WAL');
    raw.pragma('foreign_keys = ON');
    raw.exec('create table thing (id integer primary key)');
    db = new Kysely<Things>({ dialect: groupCommitDialect(raw) });
    onlooker = new BetterSqlite(file, { readonly: true });
  });
  afterEach(async () => {
    onlooker.close();
    await db.destroy();
    rmSync(folder, { recursive: true });
  });

  const stored = (): unknown[] => onlooker.prepare('select id from thing order by id').pluck().all();
  const commits = (): number => executed.filter((statement) => statement === 'commit').length;
  const add = (trx: Transaction<Things>, id: number): Promise<unknown> =>
    trx.insertInto('thing').values({ id }).execute();
  /** Steps until a transaction has ended; only its commit waits for the program's next events. */
  const untilEnded = async (): Promise<void> => {
    for (let step = 0; step < 1000; step += 1) await Promise.resolve();
    expect(executed).toContain('release member');
  };
  const addAlone = (id: number): Promise<number> =>
    db.transaction().execute(async (trx) => {
      await add(trx, id);
      return id;
    });

  it('commits once what arrives together, and says so when others can see it', async () => {
    const answers = [1, 2, 3].map((id) => addAlone(id).then(() => stored()));
    expect(await Promise.all(answers)).toEqual([
      [1, 2, 3],
      [1, 2, 3],
      [1, 2, 3],
    ]);
    expect(commits()).toBe(1);
  });

  it('does not say that a transaction is done before it is committed', async () => {
    let isDone = false;
    const answer = addAlone(1).then(() => {
      isDone = true;
    });
    await untilEnded();
    expect([isDone, stored()]).toEqual([false, []]);
    await answer;
    expect([isDone, stored()]).toEqual([true, [1]]);
  });

  it('commits one by one what arrives one by one', async () => {
    for (const id of [1, 2, 3]) await addAlone(id);
    expect([commits(), stored()]).toEqual([3, [1, 2, 3]]);
  });

  it('undoes a transaction that fails, whole and alone', async () => {
    const addTwentyAndOne = (): Promise<unknown> =>
      db.transaction().execute(async (trx) => {
        await add(trx, 20);
        await add(trx, 1);
      });
    const outcomes = await Promise.allSettled([addAlone(1), addTwentyAndOne(), addAlone(3)]);
    expect(outcomes.map(({ status }) => status)).toEqual(['fulfilled', 'rejected', 'fulfilled']);
    expect(stored()).toEqual([1, 3]);
  });

  it('leaves nothing open after a transaction that fails on its own', async () => {
    await expect(
      db.transaction().execute(async () => Promise.reject(new Error('changed my mind'))),
    ).rejects.toThrow('changed my mind');
    expect(raw.inTransaction).toBe(false);
    expect(await addAlone(1)).toBe(1);
  });

  it('runs each transaction after the one before, so that they see each other whole', async () => {
    const addNext = (): Promise<number> =>
      db.transaction().execute(async (trx) => {
        const { highest } = await trx
          .selectFrom('thing')
          .select(({ fn }) => fn.max<number | null>('id').as('highest'))
          .executeTakeFirstOrThrow();
        await new Promise(setImmediate);
        await add(trx, (highest ?? 0) + 1);
        return (highest ?? 0) + 1;
      });
    expect(await Promise.all([addNext(), addNext(), addNext()])).toEqual([1, 2, 3]);
  });

  it('commits before a query outside any transaction reads', async () => {
    const writing = addAlone(1);
    const seen = await db.selectFrom('thing').selectAll().execute();
    expect([seen, stored()]).toEqual([[{ id: 1 }], [1]]);
    expect(await writing).toBe(1);
  });

  it('writes at once what is written outside a transaction', async () => {
    const written = await db.insertInto('thing').values({ id: 1 }).executeTakeFirst();
    expect([written.numInsertedOrUpdatedRows, stored()]).toEqual([1n, [1]]);
  });

  it('fails all of a group when their commit fails, and goes on with the next', async () => {
    raw.exec('create table part (thing_id integer references thing (id) deferrable initially deferred)');
    const orphan = db.transaction().execute((trx) => sql`insert into part values (99)`.execute(trx));
    const outcomes = await Promise.allSettled([addAlone(1), orphan]);
    expect(outcomes.map(({ status }) => status)).toEqual(['rejected', 'rejected']);
    expect(stored()).toEqual([]);
    expect([await addAlone(2), stored()]).toEqual([2, [2]]);
  });

  it('fails those that had ended when the database undoes the whole group, and goes on with the next', async () => {
    raw.exec(
      `create trigger no_thirteen before insert on thing when new.id = 13
       begin select raise(rollback, 'everything is undone'); end`,
    );
    const outcomes = await Promise.allSettled([addAlone(1), addAlone(13), addAlone(2)]);
    expect(outcomes.map(({ status }) => status)).toEqual(['rejected', 'rejected', 'fulfilled']);
    expect(stored()).toEqual([2]);
    expect([await addAlone(3), stored()]).toEqual([3, [2, 3]]);
  });

  it('commits what has ended before it closes', async () => {
    const writing = addAlone(1);
    await untilEnded();
    await db.destroy();
    expect([await writing, stored()]).toEqual([1, [1]]);
  });

  it('answers what comes while it closes: what it says is done is stored, nothing else is', async () => {
    await addAlone(1);
    const closing = db.destroy();
    const [outcome] = await Promise.allSettled([addAlone(2)]);
    await closing;
    expect(stored()).toEqual(outcome.status === 'fulfilled' ? [1, 2] : [1]);
    await expect(addAlone(3)).rejects.toThrow();
  });
});
