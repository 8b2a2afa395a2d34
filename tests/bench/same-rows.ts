import BetterSqlite from 'better-sqlite3';

const TABLES = [
  'assessment',
  'walk_test',
  'sit_to_stand',
  'questionnaire',
  'score',
  'physical_test',
  'audit_event',
];

/** Keys that each server makes for itself; the audit trail's order and chain depend on who was answered first. */
const OWN_KEYS = [
  ...['version_id', 'id', 'assessment_version_id'],
  ...['sequence', 'subject_id', 'details_salt', 'previous_hash', 'hash'],
];

/**
 * Makes sure that two records hold the same assessments, keys apart: else their writers did not do the same work.
 *
 * @throws Error naming the table that differs
 */
export function demandSameRows(fileA: string, fileB: string): void {
  for (const table of TABLES) {
    const [a, b] = [countedRows(fileA, table), countedRows(fileB, table)];
    const differs = Array.from({ length: Math.max(a.length, b.length) }, (_, index) => index).find(
      (index) => a[index] !== b[index],
    );
    if (differs === undefined) continue;
    throw new Error(`Different rows in ${table}: ${String(a[differs])} and ${String(b[differs])}`);
  }
}

/** Every different row with the number of times it stands in the table, in order. */
function countedRows(file: string, table: string): readonly string[] {
  const database = new BetterSqlite(file, { readonly: true });
  const columns = database
    .prepare('select name from pragma_table_info(?)')
    .pluck()
    .all(table)
    .map(String)
    .filter((column) => !OWN_KEYS.includes(column))
    .join(', ');
  const rows = database
    .prepare(`select ${columns}, count(*) as rows from ${table} group by ${columns} order by ${columns}`)
    .all();
  database.close();
  return rows.map((row) => JSON.stringify(row));
}
