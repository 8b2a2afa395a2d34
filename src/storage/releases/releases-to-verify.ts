import type { IssuedRelease } from '../../domain/release/issued.js';
import type { Executor } from '../connection.js';

/** A release with everything that is kept of it. */
export interface KeptRelease {
  readonly number: number;
  readonly teamId: string;
  readonly financialYear: string;
  readonly document: string;
  readonly digest: string;
  /** The text over which its digest is taken. */
  readonly counts: string;
  readonly countsDigest: string;
  readonly issued: IssuedRelease;
  readonly files: readonly { readonly form: string; readonly content: Uint8Array; readonly digest: string }[];
}

/** Every release of the record, in the order of their numbers. */
export async function releasesToVerify(db: Executor): Promise<readonly KeptRelease[]> {
  const rows = await db.selectFrom('release').selectAll().orderBy('number').execute();
  const files = await db.selectFrom('release_file').selectAll().orderBy('form').execute();
  return rows.map((row) => ({
    number: row.number,
    teamId: row.team_id,
    financialYear: row.financial_year,
    document: row.document,
    digest: row.digest,
    counts: row.counts,
    countsDigest: row.counts_digest,
    issued: JSON.parse(row.counts) as IssuedRelease,
    files: files.filter(({ number }) => number === row.number),
  }));
}
