import { RECORD_TABLES } from '../../domain/exports/record-tables.js';
import { rowsOfTeam } from '../../storage/exports/rows-of-team.js';
import { getTeam, listTeams } from '../../storage/providers/providers.js';
import { recordEventOf, recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import type { RecordHead, RowSource } from './record-form.js';
import { writeRecordJson } from './write-record-json.js';
import { writeRecordZip } from './write-record-zip.js';

/** The forms in which the whole record of a team leaves the service. */
export const RECORD_FORMS = ['zip', 'json'] as const;
export type RecordForm = (typeof RECORD_FORMS)[number];

export const RECORD_MEDIA_TYPES: Readonly<Record<RecordForm, string>> = {
  zip: 'application/zip',
  json: 'application/json; charset=utf-8',
};

/** A file that leaves the service. */
export interface ExportedFile {
  readonly content: Uint8Array;
  readonly mediaType: string;
  /** Names nobody. */
  readonly fileName: string;
}

/**
 * The whole record of the member's own team as a file, as it stands at one moment: a zip of CSV files with a data
 * dictionary, or the same as JSON. That it left the service is told to the trail.
 */
export async function exportRecord(
  context: Context,
  actor: TeamMember,
  form: RecordForm,
): Promise<ExportedFile> {
  await recordRead(context, actor, { action: 'record-exported', details: { form } });
  return recordOfTeam(context, actor.teamId, form);
}

/**
 * The same for an operator's command, which knows the team by its name.
 *
 * @returns in words why there is no such record
 */
export async function exportRecordByName(
  context: Context,
  teamName: string,
  form: RecordForm,
): Promise<ExportedFile | string> {
  const team = (await listTeams(context.db)).find(({ name }) => name === teamName);
  if (team === undefined) return `There is no team "${teamName}".`;
  await context.db.transaction().execute(async (trx) => {
    const operator = { id: null, role: null, teamId: team.id };
    await recordEventOf(context, trx, operator, {
      action: 'record-exported',
      details: { form, by: 'operator' },
    });
  });
  return recordOfTeam(context, team.id, form);
}

async function recordOfTeam(context: Context, teamId: string, form: RecordForm): Promise<ExportedFile> {
  const exportedAt = context.clock.now();
  const content = await context.reader.transaction().execute(async (trx) => {
    const head: RecordHead = { teamName: (await getTeam(trx, teamId)).name, exportedAt };
    const rows: RowSource = (table) => rowsOfTeam(trx, teamId, table);
    return form === 'zip'
      ? writeRecordZip(head, RECORD_TABLES, rows)
      : writeRecordJson(head, RECORD_TABLES, rows);
  });
  return {
    content,
    mediaType: RECORD_MEDIA_TYPES[form],
    fileName: `record-${exportedAt.slice(0, 10)}.${form}`,
  };
}
