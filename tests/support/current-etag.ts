import type { Database } from 'better-sqlite3';

/**
 * The ETag under which a client would have read the record that a path changes.
 *
 * Read from the database and not by a request, so that a test that counts what was told to the trail counts its own; and
 * at once, so that it is the one of the moment at which a request is made.
 *
 * @param db a connection of its own to the file of the record
 * @param teamId whose settings are meant
 * @returns the tag of a first version where the path names no record that there is
 */
export function currentEtag(db: Database, teamId: string, path: string): string {
  const [, resource = '', id = ''] = /^\/api\/v1\/([a-z-]+)(?:\/([^/?]+))?/.exec(path) ?? [];
  const draft = /\/drafts\/([a-z-]+)$/.exec(path)?.[1];
  if (draft !== undefined) return `"${draftVersion(db, id, draft)}"`;
  return `"${versionOf(db, teamId, resource, id) ?? 1}"`;
}

function versionOf(db: Database, teamId: string, resource: string, id: string): number | null {
  switch (resource) {
    case 'patients':
      return newest(db, 'select max(version) from patient where id = ?', id);
    case 'referrals':
      return newest(db, 'select max(version) from referral where id = ?', id);
    case 'sessions':
      return newest(db, 'select max(version) from session where id = ?', id);
    case 'assessments':
      return newest(db, 'select max(version) from assessment where id = ?', id);
    case 'accounts':
      return newest(db, 'select max(version) from account where id = ?', id);
    case 'imports':
      return newest(db, 'select max(version) from import where id = ?', id);
    case 'settings':
      return newest(db, 'select max(version) from settings where team_id = ?', teamId) ?? 0;
    default:
      return null;
  }
}

function newest(db: Database, sql: string, id: string): number | null {
  return db.prepare<[string], number | null>(sql).pluck().get(id) ?? null;
}

/** A draft of which nothing was ever saved has version 0. */
function draftVersion(db: Database, referralId: string, timepoint: string): number {
  const sql = 'select version from assessment_draft where referral_id = ? and timepoint = ?';
  return db.prepare<[string, string], number>(sql).pluck().get(referralId, timepoint) ?? 0;
}
