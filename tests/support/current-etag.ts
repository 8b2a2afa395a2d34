import type { Executor } from '../../src/storage/connection.js';

/**
 * The ETag under which a client would have read the record that a path changes.
 *
 * Read from the database and not by a request, so that a test that counts what was told to the trail counts its own.
 *
 * @param teamId whose settings are meant
 * @returns the tag of a first version where the path names no record that there is
 */
export async function currentEtag(db: Executor, teamId: string, path: string): Promise<string> {
  const [, resource = '', id = ''] = /^\/api\/v1\/([a-z-]+)(?:\/([^/?]+))?/.exec(path) ?? [];
  const draft = /\/drafts\/([a-z-]+)$/.exec(path)?.[1];
  if (draft !== undefined) return `"${await draftVersion(db, id, draft)}"`;
  return `"${(await versionOf(db, teamId, resource, id)) ?? 1}"`;
}

async function versionOf(db: Executor, teamId: string, resource: string, id: string): Promise<number | null> {
  switch (resource) {
    case 'patients':
      return newest(db, 'patient', id);
    case 'referrals':
      return newest(db, 'referral', id);
    case 'sessions':
      return newest(db, 'session', id);
    case 'assessments':
      return newest(db, 'assessment', id);
    case 'accounts':
      return newest(db, 'account', id);
    case 'offers': {
      // An offer is a part of its referral.
      const offer = await db
        .selectFrom('offer')
        .select('referral_id')
        .where('id', '=', id)
        .executeTakeFirst();
      return offer === undefined ? null : newest(db, 'referral', offer.referral_id);
    }
    case 'settings': {
      const rows = await db.selectFrom('settings').select('version').where('team_id', '=', teamId).execute();
      return Math.max(0, ...rows.map(({ version }) => version));
    }
    default:
      return null;
  }
}

async function newest(
  db: Executor,
  table: 'patient' | 'referral' | 'session' | 'assessment' | 'account',
  id: string,
): Promise<number | null> {
  const row = await db
    .selectFrom(table)
    .select('version')
    .where('id', '=', id)
    .orderBy('version', 'desc')
    .executeTakeFirst();
  return row?.version ?? null;
}

/** A draft of which nothing was ever saved has version 0. */
async function draftVersion(db: Executor, referralId: string, timepoint: string): Promise<number> {
  const row = await db
    .selectFrom('assessment_draft')
    .select('version')
    .where('referral_id', '=', referralId)
    .where('timepoint', '=', timepoint)
    .executeTakeFirst();
  return row?.version ?? 0;
}
