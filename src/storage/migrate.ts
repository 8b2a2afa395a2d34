import { Migrator } from 'kysely';
import type { Kysely, Migration } from 'kysely';
import type { Tables } from './tables.js';

/**
 * Brings a database to the newest schema; an up-to-date one is left as it is.
 *
 * @param db the database
 * @param migrations every migration by name, in order
 * @returns names of the migrations that were applied
 * @throws Error naming the migration that failed; a failed one leaves nothing behind
 */
export async function migrate(
  db: Kysely<Tables>,
  migrations: Readonly<Record<string, Migration>>,
): Promise<readonly string[]> {
  const migrator = new Migrator({ db, provider: { getMigrations: async () => ({ ...migrations }) } });
  const { error, results = [] } = await migrator.migrateToLatest();
  if (error !== undefined) {
    const failed = results.find((result) => result.status === 'Error');
    throw new Error(`Migration ${failed?.migrationName ?? 'set'} failed: ${messageOf(error)}`, {
      cause: error,
    });
  }
  return results.map((result) => result.migrationName);
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
