import { sha256 } from '../../sheets/digest.js';
import { listTeams } from '../../storage/providers/providers.js';
import { recordEventOf } from '../audit/record-event.js';
import type { Context } from '../context.js';
import { checkRecordFile } from './check-record-file.js';
import type { TeamOfFile } from './check-record-file.js';
import { faultOfFile, openRecordFile } from './open-record-file.js';
import type { RecordFault } from './open-record-file.js';
import { faultInJson, looksLikeJson, openRecordJson } from './open-record-json.js';
import { readBack } from './read-back.js';
import { storeRecordFile } from './store-record-file.js';

/** What came of a file: the team is in the store, or nothing is, with what is wrong. */
export type BroughtRecord =
  | { readonly kind: 'done'; readonly teamName: string; readonly rows: number; readonly exportedAt: string }
  | { readonly kind: 'refused'; readonly faults: readonly RecordFault[] };

/** Undoes everything that was written, with the fault that it ends in. */
class NothingKept extends Error {
  readonly fault: RecordFault;

  constructor(fault: RecordFault) {
    super('Nothing is brought in.');
    this.fault = fault;
  }
}

/**
 * Brings the whole record of a team, as `exportRecord` took it out in tables or as JSON, into a store that does not have the team:
 * every row as it was, ids and all, in one transaction, or nothing. Every row is checked first, the store's own rules hold,
 * and the record is read once before it is kept. For the operator of the service: no route leads here.
 */
export async function bringRecordIn(context: Context, bytes: Uint8Array): Promise<BroughtRecord> {
  const isJson = looksLikeJson(bytes);
  const refused = (faults: readonly RecordFault[]): BroughtRecord => ({
    kind: 'refused',
    faults: isJson ? faults.map(faultInJson) : faults,
  });
  const record = isJson ? openRecordJson(bytes) : openRecordFile(bytes);
  if ('faults' in record) return refused(record.faults);
  const checked = await checkRecordFile(record);
  if ('faults' in checked) return refused(checked.faults);
  const { team } = checked;
  const tables = Object.fromEntries(record.about.tables.map(({ table, rows }) => [table, rows]));
  try {
    await context.db.transaction().execute(async (trx) => {
      const keep = (fault: RecordFault | null): void => {
        if (fault !== null) throw new NothingKept(fault);
      };
      keep(thereAlready(await listTeams(trx), team));
      keep(await storeRecordFile(trx, record, team));
      keep(await readBack(trx, team.id));
      const operator = { id: null, role: null, teamId: team.id };
      await recordEventOf(context, trx, operator, {
        action: 'record-brought-in',
        subjectId: team.id,
        details: {
          by: 'operator',
          exportedAt: record.about.exportedAt,
          fileDigest: sha256(bytes),
          rows: tables,
        },
      });
    });
  } catch (error) {
    if (error instanceof NothingKept) return refused([error.fault]);
    throw error;
  }
  const rows = record.about.tables.reduce((sum, each) => sum + each.rows, 0);
  return { kind: 'done', teamName: team.name, rows, exportedAt: record.about.exportedAt };
}

function thereAlready(
  teams: readonly { readonly id: string; readonly name: string }[],
  { id, name }: TeamOfFile,
): RecordFault | null {
  if (!teams.some((team) => team.id === id || team.name === name)) return null;
  return faultOfFile(`The store has a team "${name}" already. A record comes into a store without its team.`);
}
