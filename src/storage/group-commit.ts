import type { Database } from 'better-sqlite3';
import type { CompiledQuery, DatabaseConnection, Dialect, Driver, QueryResult, SqliteDatabase } from 'kysely';
import { preparedOnce } from './prepared-once.js';
import { sqliteDialect } from './sqlite-dialect.js';
import { forgetReads, recall, remember } from './remembered.js';
import { takeTurns } from './take-turns.js';
import { stopListening, tellWritten } from './written.js';

/**
 * SQLite for writing, where transactions that arrive together reach the disk together.
 *
 * Waiting for the disk is the dearest part of a short transaction, and every reading of a record writes one too, to the
 * audit trail. Each transaction runs alone, one after the other, and is undone alone; those that end before the program
 * turns to its next events share one commit. None is reported as done before that commit is on the disk. If it fails,
 * all of them have failed: so no constraint may be deferred to the commit.
 */
export function groupCommitDialect(database: Database): Dialect {
  const statements = preparedOnce(database);
  return { ...sqliteDialect(statements), createDriver: () => groupCommitDriver(database, statements) };
}

/** A connection in somebody's hands, until it is passed on. */
interface Turn {
  isInTransaction: boolean;
  readonly pass: () => void;
}

/** A transaction that has ended and waits for the commit of its group. */
interface Ended {
  readonly succeed: () => void;
  readonly fail: (error: unknown) => void;
}

function groupCommitDriver(database: Database, statements: SqliteDatabase): Driver {
  const run = (sql: string): unknown => statements.prepare(sql).run([]);
  const nextTurn = takeTurns();
  const turns = new WeakMap<DatabaseConnection, Turn>();
  const turnOf = (connection: DatabaseConnection): Turn => {
    const turn = turns.get(connection);
    if (turn === undefined) throw new Error('This connection is of another database.');
    return turn;
  };
  let group: readonly Ended[] = [];
  const settle = (settleOne: (ended: Ended) => void): void => {
    const settled = group;
    group = [];
    settled.forEach(settleOne);
  };
  const commitGroup = (): void => {
    if (group.length === 0) return;
    try {
      run('commit');
    } catch (error) {
      if (database.inTransaction) run('rollback');
      settle(({ fail }) => fail(error));
      return;
    }
    settle(({ succeed }) => succeed());
  };
  const commitSoon = (): void => {
    setImmediate(() => {
      void nextTurn().then((pass) => {
        commitGroup();
        pass();
      });
    });
  };

  return {
    init: async () => {},
    acquireConnection: async () => {
      const turn: Turn = { isInTransaction: false, pass: await nextTurn() };
      const connection = connectionTo(statements, {
        // What stands outside a transaction is on the disk when it is answered, and reads nothing that might yet fail.
        before: () => {
          if (!turn.isInTransaction) commitGroup();
        },
        // A full disk may make the database undo everything, those that have ended as well: they failed by the same.
        afterError: (error) => {
          if (!database.inTransaction) settle(({ fail }) => fail(error));
        },
      });
      turns.set(connection, turn);
      return connection;
    },
    beginTransaction: async (connection) => {
      if (!database.inTransaction) {
        settle(({ fail }) => fail(new Error('The database undid the transactions of this group.')));
        run('begin immediate');
      }
      run('savepoint member');
      turnOf(connection).isInTransaction = true;
    },
    commitTransaction: async (connection) => {
      const turn = turnOf(connection);
      run('release member');
      turn.isInTransaction = false;
      const committed = new Promise<void>((succeed, fail) => {
        if (group.length === 0) commitSoon();
        group = [...group, { succeed, fail }];
      });
      turn.pass();
      await committed;
    },
    rollbackTransaction: async (connection) => {
      const turn = turnOf(connection);
      // Nothing is left to undo when its group failed, or when the database undid everything by itself.
      if (!turn.isInTransaction || !database.inTransaction) return;
      turn.isInTransaction = false;
      run('rollback to member');
      run('release member');
      if (group.length === 0) run('rollback');
    },
    releaseConnection: async (connection) => {
      turnOf(connection).pass();
      turns.delete(connection);
      forgetReads(connection);
      stopListening(connection);
    },
    destroy: async () => {
      const pass = await nextTurn();
      commitGroup();
      statements.close();
      // Whoever still waits learns that the record is closed.
      pass();
    },
  };
}

function connectionTo(
  statements: SqliteDatabase,
  { before, afterError }: { readonly before: () => void; readonly afterError: (error: unknown) => void },
): DatabaseConnection {
  const connection: DatabaseConnection = {
    executeQuery: async <Row>({ sql, parameters }: CompiledQuery): Promise<QueryResult<Row>> => {
      before();
      try {
        const recalled = recall(connection, sql, parameters);
        if (recalled !== null) return { rows: [...recalled] as Row[] };
        const statement = statements.prepare(sql);
        if (statement.reader) {
          const rows = statement.all(parameters) as Row[];
          remember(connection, sql, parameters, rows);
          return { rows };
        }
        const { changes, lastInsertRowid } = statement.run(parameters);
        remember(connection, sql, parameters, []);
        tellWritten(connection, { sql, parameters });
        return { rows: [], numAffectedRows: BigInt(changes), insertId: BigInt(lastInsertRowid) };
      } catch (error) {
        afterError(error);
        throw error;
      }
    },
    streamQuery: () => {
      throw new Error('Rows are read at once, not one by one.');
    },
  };
  return connection;
}
