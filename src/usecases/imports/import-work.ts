import { contentOfImport } from '../../storage/imports/imports.js';
import type { StoredImport } from '../../storage/imports/imports.js';
import type { Context, TeamMember } from '../context.js';
import { withoutKey } from './lead-of-team.js';
import { beginWork } from './long-work.js';
import type { Progress } from './long-work.js';
import { mapSheet, openSheet } from './open-sheet.js';
import type { OpenSheet } from './open-sheet.js';
import { overtaken } from './overtaken.js';
import { trySheet } from './try-sheet.js';
import type { ImportWork, TriedSheet } from './trials.js';

/** What work on a draft may be begun with. */
export interface WorkOptions {
  /** Its file, where it was opened already. */
  readonly sheet?: OpenSheet;
  readonly progress?: Progress;
}

/** The work on a draft that goes on or has ended; begun where there is none, or where the record has changed since. */
export async function workOn(
  context: Context,
  actor: TeamMember,
  stored: StoredImport,
  options: WorkOptions = {},
): Promise<ImportWork> {
  const known = context.trials.of(stored.id, stored.version);
  if (known !== null && (await isOfUse(context, actor, known))) return known;
  const work: ImportWork = {
    version: stored.version,
    judging: beginWork(
      (progress) => judge(context, actor, stored, progress, options.sheet),
      options.progress,
    ),
    bringingIn: null,
  };
  context.trials.keep(stored.id, work);
  return work;
}

/** Opens the file of an import and tries its rows; null where it is not kept any more. */
export async function judge(
  context: Context,
  actor: TeamMember,
  stored: StoredImport,
  progress: Progress,
  opened: OpenSheet | null = null,
): Promise<TriedSheet | null> {
  const sheet = opened ?? (await sheetOf(context, stored));
  if (sheet === null) return null;
  const mapped = mapSheet(sheet, stored.choices);
  const { mapping, questions } = mapped;
  const trial = questions.length > 0 ? null : await trySheet(context, withoutKey(actor), mapped, progress);
  return { columns: { mapping, questions }, trial };
}

/** The sheet of an import; null when its file is not kept any more. */
export async function sheetOf(context: Context, stored: StoredImport): Promise<OpenSheet | null> {
  const content = await contentOfImport(context.db, stored.id);
  const sheet = content === null ? null : await openSheet(context.trials.readTable, content);
  return sheet === null || 'refusedBecause' in sheet ? null : sheet;
}

async function isOfUse(
  context: Context,
  actor: TeamMember,
  { judging, bringingIn }: ImportWork,
): Promise<boolean> {
  if (judging.hasFailed() || bringingIn?.hasFailed() === true) return false;
  if (bringingIn?.hasEnded() === false) return true;
  const trial = judging.ended()?.trial ?? null;
  if (trial === null) return true;
  const isOvertaken = await overtaken(context, context.db, actor.teamId, trial);
  return isOvertaken !== null && !trial.whose.some(isOvertaken);
}
