import type { CompiledQuery, QueryResult } from 'kysely';
import type { Executor } from './connection.js';

/**
 * Runs a query that was composed before, on the connection of the database or the transaction: the way there that the query
 * builder takes is as long again, for plugins, of which no database here has any.
 */
export async function runComposed<Row>(db: Executor, query: CompiledQuery<Row>): Promise<QueryResult<Row>> {
  return db.getExecutor().provideConnection((connection) => connection.executeQuery<Row>(query));
}
