import { existsSync, mkdirSync, renameSync, rmSync, writeFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import BetterSqlite from 'better-sqlite3';
import { enlarge, makeSmallStore, tenYearsOf } from './report-store.js';

const FOLDER = fileURLToPath(new URL('../../var/', import.meta.url));

/** A store of a million referrals in ten years, with a lead of one of its teams. */
export interface MillionStore {
  readonly file: string;
  readonly token: string;
  readonly referrals: number;
}

/** How many referrals the store holds at least. */
const REFERRALS = 1_000_000;

/**
 * The store of a million referrals. It takes minutes to make, so that it is kept under `var/` and used again; delete it there
 * to have it made anew.
 *
 * @param folder where it is kept
 */
export async function millionStore(folder = FOLDER): Promise<MillionStore> {
  mkdirSync(folder, { recursive: true });
  const file = join(folder, 'bench-million.sqlite');
  const tokenFile = `${file}.token`;
  if (!existsSync(file)) {
    const unfinished = `${file}.unfinished`;
    rmSync(unfinished, { force: true });
    const token = await makeSmallStore(unfinished);
    writeFileSync(tokenFile, token);
    const startedAt = Date.now();
    const copies = tenYearsOf(REFERRALS, countReferrals(unfinished));
    enlarge(unfinished, copies, {
      // No report reads former states.
      leaveOut: /^audit_event$|_version$/,
      tell: (table) => {
        const seconds = Math.round((Date.now() - startedAt) / 1000);
        console.error(`Making a store of ${REFERRALS} referrals, ${seconds} s: ${table}`);
      },
    });
    renameSync(unfinished, file);
  }
  return { file, token: readFileSync(tokenFile, 'utf8'), referrals: countReferrals(file) };
}

function countReferrals(file: string): number {
  const database = new BetterSqlite(file, { readonly: true });
  const count = Number(database.prepare('select count(*) from referral').pluck().get());
  database.close();
  return count;
}
