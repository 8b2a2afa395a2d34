import type { Judgement } from '../../domain/imports/judgement.js';
import type { MappingChoices } from '../../domain/imports/mapping.js';
import { NO_CHOICES } from '../../domain/imports/mapping.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { sha256 } from '../../sheets/digest.js';
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
import { judgeSheet } from './bring-in.js';
import type { Progress } from './bring-in.js';
import { mapSheet, openSheet } from './open-sheet.js';
import type { MappedSheet } from './open-sheet.js';

/** An import with its columns and, once nothing is open, the verdict on every row. */
export interface ImportView extends StoredImport {
  /** Null when the file is not kept any more. */
  readonly sheet: MappedSheet | null;
  /** Of a trial before it was brought in, else of what was done; null while a question is open. */
  readonly judgement: Judgement | null;
}

/** Takes a file in to be looked at; nothing of it is brought into the record. */
export async function takeFile(
  context: Context,
  actor: TeamMember,
  file: { readonly name: string; readonly content: Uint8Array },
): Promise<Outcome<ImportView>> {
  const sheet = await openSheet(file.content);
  if ('refusedBecause' in sheet) return refused({ code: 'file-refused', message: sheet.refusedBecause });
  const choices = (await findChoices(context.db, actor.teamId, sheet.headingsDigest)) ?? NO_CHOICES;
  const id = context.newId();
  await context.db.transaction().execute(async (trx) => {
    const { teamId, accountId } = actor;
    const fileDigest = sha256(file.content);
    await insertImport(trx, {
      id,
      teamId,
      fileName: file.name,
      fileDigest,
      content: file.content,
      choices,
      now: context.clock.now(),
      accountId,
    });
    const details = { fileDigest, rows: sheet.rows.length };
    await recordEvent(context, trx, actor, { action: 'import-begun', subjectId: id, details });
  });
  return viewOf(context, actor, id);
}

/** One import. */
export async function getImport(
  context: Context,
  actor: TeamMember,
  id: string,
): Promise<Outcome<ImportView>> {
  const view = await viewOf(context, actor, id);
  if (view.kind === 'done') await recordRead(context, actor, { action: 'import-read', subjectId: id });
  return view;
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
): Promise<Outcome<ImportView>> {
  const { choices } = change;
  const content = await contentOfImport(context.db, id);
  const sheet = content === null ? null : await openSheet(content);
  const changed = await context.db.transaction().execute(async (trx): Promise<Outcome<null>> => {
    const former = await findImport(trx, actor.teamId, id);
    if (former === null) return refused({ code: 'not-found', what: 'import' });
    if (former.state !== 'draft' || sheet === null || 'refusedBecause' in sheet)
      return refused({ code: 'import-over' });
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
  return changed.kind === 'refused' ? changed : viewOf(context, actor, id);
}

/** Throws a file away that was not brought in; nothing of it is kept. */
export async function discardImport(
  context: Context,
  actor: TeamMember,
  id: string,
  { basedOn, reason }: { readonly basedOn: BasedOn; readonly reason: string },
): Promise<Outcome<ImportView>> {
  const changed = await context.db.transaction().execute(async (trx): Promise<Outcome<null>> => {
    const former = await findImport(trx, actor.teamId, id);
    if (former === null) return refused({ code: 'not-found', what: 'import' });
    if (former.state !== 'draft') return refused({ code: 'import-over' });
    const stale = staleImport(former, basedOn);
    if (stale !== null) return stale;
    await changeImport(trx, former, { state: 'discarded', dropsFile: true });
    await recordEvent(context, trx, actor, {
      action: 'import-discarded',
      subjectId: id,
      details: { reason },
    });
    return done(null);
  });
  return changed.kind === 'refused' ? changed : viewOf(context, actor, id);
}

/** A refusal where an import is not at the version that a change is based on. */
export function staleImport(former: StoredImport, basedOn: BasedOn): Outcome<never> | null {
  if (basedOn.includes(former.version)) return null;
  return refused({
    code: 'changed-meanwhile',
    meanwhile: { version: former.version, versions: [], changes: [] },
  });
}

/** The sheet of an import as it is mapped; null when its file is not kept any more. */
export async function sheetOfImport(context: Context, stored: StoredImport): Promise<MappedSheet | null> {
  const content = await contentOfImport(context.db, stored.id);
  const sheet = content === null ? null : await openSheet(content);
  return sheet === null || 'refusedBecause' in sheet ? null : mapSheet(sheet, stored.choices);
}

/** An import with its sheet and its judgement, without telling the trail. */
export async function viewOf(
  context: Context,
  actor: TeamMember,
  id: string,
  progress?: Progress,
): Promise<Outcome<ImportView>> {
  const stored = await findImport(context.db, actor.teamId, id);
  if (stored === null) return refused({ code: 'not-found', what: 'import' });
  const sheet = await sheetOfImport(context, stored);
  if (stored.result !== null) {
    // Written by commitImport only.
    return done({ ...stored, sheet, judgement: JSON.parse(stored.result) as Judgement });
  }
  if (stored.state !== 'draft' || sheet === null || sheet.questions.length > 0)
    return done({ ...stored, sheet, judgement: null });
  const options = { mapping: sheet.mapping, confirmsUnusual: false };
  return done({
    ...stored,
    sheet,
    judgement: await judgeSheet(context, withoutKey(actor), sheet, options, progress),
  });
}

/** The key of a request is for the import as a whole, not for the rows of it. */
export function withoutKey({ accountId, role, teamId }: TeamMember): TeamMember {
  return { accountId, role, teamId };
}
