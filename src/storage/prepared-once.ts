import type { Database, Statement } from 'better-sqlite3';
import type { SqliteDatabase, SqliteStatement } from 'kysely';

/** Statements kept; lists of ids of every length make more texts than are worth keeping. */
const KEPT = 200;

const CHANGES_SCHEMA = /^\s*(?:create|alter|drop)\b/i;

/**
 * A database that prepares each statement once: preparing costs more than running a short statement does.
 *
 * Only for queries whose rows are read at once, not for streaming: a statement in use cannot be started again.
 */
export function preparedOnce(database: Database): SqliteDatabase {
  const statements = new Map<string, SqliteStatement>();
  return {
    close: () => {
      database.close();
    },
    prepare: (sql) => {
      const known = statements.get(sql);
      if (known !== undefined) return known;
      // Starting afresh is rare, and cheaper than to note the use of each statement at every call; what a statement gives may
      // have other names after a change of the schema.
      if (statements.size >= KEPT || CHANGES_SCHEMA.test(sql)) statements.clear();
      const prepared = database.prepare(sql);
      const statement = prepared.reader ? givingObjects(prepared) : prepared;
      statements.set(sql, statement);
      return statement;
    },
  };
}

/**
 * A statement whose rows are made objects here: the driver makes each a table of names, which takes twice the time, and every
 * look into one is slower as well.
 */
function givingObjects(statement: Statement): SqliteStatement {
  let toObject = rowMaker(statement);
  const arrays = statement.raw(true);
  return {
    reader: true,
    all: (parameters) => {
      const rows = arrays.all(parameters) as readonly (readonly unknown[])[];
      // The schema may have changed since.
      if (rows[0] !== undefined && rows[0].length !== toObject.columns) toObject = rowMaker(statement);
      return rows.map(toObject.make);
    },
    run: (parameters) => statement.run(parameters),
    iterate: () => {
      throw new Error('Rows are read at once, not one by one.');
    },
  };
}

interface RowMaker {
  readonly columns: number;
  readonly make: (values: readonly unknown[]) => Readonly<Record<string, unknown>>;
}

function rowMaker(statement: Statement): RowMaker {
  const names = statement.columns().map(({ name }) => name);
  const empty: Readonly<Record<string, unknown>> = Object.fromEntries(names.map((name) => [name, null]));
  return {
    columns: names.length,
    make: (values) => {
      const row = { ...empty };
      for (let index = 0; index < names.length; index += 1) row[names[index] ?? ''] = values[index];
      return row;
    },
  };
}
