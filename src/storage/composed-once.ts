import type { Compilable, CompiledQuery, DialectAdapter } from 'kysely';
import type { Executor } from './connection.js';
import { runComposed } from './run-composed.js';

/** Stands in a query for a value by its name; only its type is that of the value. */
export type ValueOf<Values> = <Name extends keyof Values>(name: Name) => Values[Name];

const NAME = Symbol('name of the value that is stood in for');

/**
 * A query whose text is composed once and that is run with other values at every call.
 *
 * For the few queries that nearly every request makes: composing one takes longer than running it.
 *
 * @param compose builds the query with a stand-in for each value; it may not look at them
 * @returns the query, to be run with its values
 * @example composedOnce((db, value: ValueOf<{ id: string }>) => db.selectFrom('team').selectAll().where('id', '=', value('id')))
 */
export function composedOnce<Values extends object, Row>(
  compose: (db: Executor, value: ValueOf<Values>) => Compilable<Row>,
): (db: Executor, values: Values) => Promise<readonly Row[]> {
  // The text belongs to a kind of database; a transaction has the adapter of its database.
  const queries = new WeakMap<DialectAdapter, CompiledQuery<Row>>();
  const standIn: ValueOf<Values> = (name) => ({ [NAME]: name }) as never;
  return async (db, values) => {
    const { adapter } = db.getExecutor();
    const query = queries.get(adapter) ?? compose(db, standIn).compile();
    queries.set(adapter, query);
    const parameters = query.parameters.map((parameter) =>
      isStandIn<Values>(parameter) ? values[parameter[NAME]] : parameter,
    );
    return (await runComposed<Row>(db, { ...query, parameters })).rows;
  };
}

/** Ids up to which the text of a list of them is kept; longer lists are seldom of the same length. */
const MOST_IDS = 16;

/**
 * As composedOnce, for the rows that belong to some ids: composed once for each small number of them.
 *
 * @param compose builds the query with the ids, or with stand-ins for them
 * @example composedAmong((db, ids) => db.selectFrom('score').selectAll().where('assessment_version_id', 'in', ids))
 */
export function composedAmong<Row>(
  compose: (db: Executor, ids: readonly string[]) => Compilable<Row>,
): (db: Executor, ids: readonly string[]) => Promise<readonly Row[]> {
  const byCount = new Map<number, ReturnType<typeof composedOnce<Readonly<Record<number, string>>, Row>>>();
  return async (db, ids) => {
    if (ids.length > MOST_IDS) return (await runComposed(db, compose(db, ids).compile())).rows;
    const composed =
      byCount.get(ids.length) ??
      composedOnce<Readonly<Record<number, string>>, Row>((on, value) =>
        compose(
          on,
          ids.map((_id, index) => value(index)),
        ),
      );
    byCount.set(ids.length, composed);
    return composed(db, { ...ids });
  };
}

function isStandIn<Values>(parameter: unknown): parameter is { readonly [NAME]: keyof Values } {
  return typeof parameter === 'object' && parameter !== null && NAME in parameter;
}
