import type { MappingChoices } from '../../domain/imports/mapping.js';
import { NO_CHOICES } from '../../domain/imports/mapping.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { sha256 } from '../../sheets/digest.js';
import { hasParts } from '../../storage/imports/half-in.js';
import {
  changeImport,
  contentOfImport,
  findChoices,
  findImport,
  insertImport,
  keepChoices,
  listImportRows,
} from '../../storage/imports/imports.js';
import type { StoredImport } from '../../storage/imports/imports.js';
import type { Page, PageRequest } from '../../storage/page.js';
import { recordEvent, recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import type { BasedOn } from '../history/based-on.js';
import { workOn } from './import-work.js';
import type { Progress } from './long-work.js';
import { openSheet } from './open-sheet.js';
import { viewOf } from './view-import.js';
import type { ImportView } from './view-import.js';

/** Takes a file in to be looked at, and judges its rows; nothing of it is brought into the record. */
export async function takeFile(
  context: Context,
  actor: TeamMember,
  file: ImportFile,
  progress: Progress = () => {},
): Promise<Outcome<ImportView>> {
  const begun = await beginImport(context, actor, file, progress);
  return begun.kind === 'refused' ? begun : viewOf(context, actor, begun.value.id);
}

/** A file that is handed in. */
export interface ImportFile {
  readonly name: string;
  readonly content: Uint8Array;
}

/** As takeFile, without waiting until the rows are judged. */
export async function beginImport(
  context: Context,
  actor: TeamMember,
  file: ImportFile,
  progress: Progress = () => {},
): Promise<Outcome<{ readonly id: string }>> {
  const sheet = await openSheet(context.trials.readTable, file.content);
  if ('refusedBecause' in sheet) return refused({ code: 'file-refused', message: sheet.refusedBecause });
  const choices = (await findChoices(context.db, actor.teamId, sheet.headingsDigest)) ?? NO_CHOICES;
  const id = context.newId();
  await context.db.transaction().execute(async (trx) => {
    const { teamId, accountId } = actor;
    const fileDigest = sha256(file.content);
    await insertImport(trx, {
      ...{ id, teamId, accountId, fileDigest, choices },
      fileName: file.name,
      content: file.content,
      now: context.clock.now(),
    });
    const details = { fileDigest, rows: sheet.rows.length };
    await recordEvent(context, trx, actor, { action: 'import-begun', subjectId: id, details });
  });
  const stored = await findImport(context.db, actor.teamId, id);
  if (stored !== null) await workOn(context, actor, stored, { sheet, progress });
  return done({ id });
}

/** The team's imports, latest first. */
export async function listImports(
  context: Context,
  actor: TeamMember,
  page: PageRequest,
): Promise<Page<StoredImport>> {
  const imports = await listImportRows(context.db, actor.teamId, page);
  await recordRead(context, actor, {
    action: 'imports-listed',
    details: { importIds: imports.rows.map(({ id }) => id) },
  });
  return imports;
}

/** Says what the columns of a sheet hold; kept for the next sheet with the same headings. */
export async function chooseColumns(
  context: Context,
  actor: TeamMember,
  id: string,
  change: { readonly choices: MappingChoices; readonly basedOn: BasedOn },
): Promise<Outcome<null>> {
  const { choices } = change;
  const content = await contentOfImport(context.db, id);
  const sheet = content === null ? null : await openSheet(context.trials.readTable, content);
  return context.db.transaction().execute(async (trx): Promise<Outcome<null>> => {
    const former = await findImport(trx, actor.teamId, id);
    if (former === null) return refused({ code: 'not-found', what: 'import' });
    if (former.state !== 'draft' || sheet === null || 'refusedBecause' in sheet)
      return refused({ code: 'import-over' });
    if (await hasParts(trx, id)) return refused({ code: 'import-underway' });
    const stale = staleImport(former, change.basedOn);
    if (stale !== null) return stale;
    await changeImport(trx, former, { choices });
    await keepChoices(trx, {
      teamId: actor.teamId,
      headingsDigest: sheet.headingsDigest,
      choices,
      now: context.clock.now(),
    });
    await recordEvent(context, trx, actor, { action: 'import-mapped', subjectId: id });
    return done(null);
  });
}

/** Throws a file away that was not brought in; nothing of it is kept. */
export async function discardImport(
  context: Context,
  actor: TeamMember,
  id: string,
  { basedOn, reason }: { readonly basedOn: BasedOn; readonly reason: string },
): Promise<Outcome<null>> {
  return context.db.transaction().execute(async (trx): Promise<Outcome<null>> => {
    const former = await findImport(trx, actor.teamId, id);
    if (former === null) return refused({ code: 'not-found', what: 'import' });
    if (former.state !== 'draft') return refused({ code: 'import-over' });
    if (await hasParts(trx, id)) return refused({ code: 'import-underway' });
    const stale = staleImport(former, basedOn);
    if (stale !== null) return stale;
    await changeImport(trx, former, { state: 'discarded', dropsFile: true });
    context.trials.drop(id);
    await recordEvent(context, trx, actor, {
      action: 'import-discarded',
      subjectId: id,
      details: { reason },
    });
    return done(null);
  });
}

/** A refusal where an import is not at the version that a change is based on. */
export function staleImport(former: StoredImport, basedOn: BasedOn): Outcome<never> | null {
  if (basedOn.includes(former.version)) return null;
  return refused({
    code: 'changed-meanwhile',
    meanwhile: { version: former.version, versions: [], changes: [] },
  });
}
