import BetterSqlite from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { preparedOnce } from '../../src/storage/prepared-once.js';

describe('statements that are prepared once', () => {
  let raw: BetterSqlite.Database;
  let prepared: string[];
  let database: ReturnType<typeof preparedOnce>;

  beforeEach(() => {
    raw = new BetterSqlite(':memory:');
    raw.exec('create table thing (id integer)');
    raw.exec('insert into thing values (1)');
    prepared = [];
    const prepare = raw.prepare.bind(raw);
    raw.prepare = (sql: string) => {
      prepared.push(sql);
      return prepare(sql);
    };
    database = preparedOnce(raw);
  });
  afterEach(() => database.close());

  it('prepares the same text once, another text anew', () => {
    database.prepare('select id from thing').all([]);
    database.prepare('select id from thing').all([]);
    database.prepare('select 2').all([]);
    expect(prepared).toEqual(['select id from thing', 'select 2']);
  });

  it('runs a kept statement with the parameters of each call', () => {
    const named = (id: number): unknown => database.prepare('select id from thing where id = ?').all([id]);
    expect(named(1)).toEqual([{ id: 1 }]);
    expect(named(2)).toEqual([]);
  });

  it('sees a column that was added after the statement was prepared', () => {
    expect(database.prepare('select * from thing').all([])).toEqual([{ id: 1 }]);
    raw.exec("alter table thing add column name text default 'new'");
    expect(database.prepare('select * from thing').all([])).toEqual([{ id: 1, name: 'new' }]);
  });

  it('calls a column by the name that it has now', () => {
    expect(database.prepare('select * from thing').all([])).toEqual([{ id: 1 }]);
    database.prepare('alter table thing rename column id to number').run([]);
    expect(database.prepare('select * from thing').all([])).toEqual([{ number: 1 }]);
  });

  it('gives each row as an object of its own, with nothing where there is nothing', () => {
    const rows = database.prepare("select 1 as a, null as b union all select 0, ''").all([]);
    expect(rows).toEqual([
      { a: 1, b: null },
      { a: 0, b: '' },
    ]);
  });

  it('keeps answering when more texts come than are kept', () => {
    const numbers = Array.from({ length: 450 }, (_, index) => index);
    const answers = numbers.map((number) => database.prepare(`select ${number} as n`).all([]));
    expect(answers).toEqual(numbers.map((n) => [{ n }]));
    database.prepare('select 449 as n').all([]);
    expect(prepared).toHaveLength(450);
    database.prepare('select 0 as n').all([]);
    expect(prepared).toHaveLength(451);
  });
});
