import type { Judgement } from '../../domain/imports/judgement.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome, Refusal } from '../../domain/refusal/refusal.js';
import { findImport } from '../../storage/imports/imports.js';
import type { StoredImport } from '../../storage/imports/imports.js';
import { recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { sheetOf, workOn } from './import-work.js';
import type { Progress } from './long-work.js';
import { mapSheet } from './open-sheet.js';
import type { ColumnsOfSheet } from './open-sheet.js';
import type { ImportWork } from './trials.js';

/** An import with its columns and, once nothing is open, the verdict on its rows. */
export interface ImportView extends StoredImport {
  /** Null when the file is not kept any more. */
  readonly sheet: ColumnsOfSheet | null;
  /** Of a trial before it was brought in, else of what was done; null while a question is open. */
  readonly judgement: Judgement | null;
  /** Why its rows were not brought in when that was last tried; null where it was not. */
  readonly lastRefusal: Refusal | null;
}

/** An import that is worked on. */
export interface ImportUnderway extends StoredImport {
  readonly step: 'judging' | 'bringing-in';
  /** Referrals that are done, of how many; of none while the file is still being read. */
  readonly done: number;
  readonly of: number;
}

/** One import; waits until its rows are judged. */
export async function getImport(
  context: Context,
  actor: TeamMember,
  id: string,
): Promise<Outcome<ImportView>> {
  const view = await viewOf(context, actor, id);
  if (view.kind === 'done') await recordRead(context, actor, { action: 'import-read', subjectId: id });
  return view;
}

/** How far the work on a large import has come, without waiting for it; null where there is none. */
export async function importUnderway(
  context: Context,
  actor: TeamMember,
  id: string,
): Promise<ImportUnderway | null> {
  const stored = await findImport(context.db, actor.teamId, id);
  if (stored?.state !== 'draft' || stored.fileBytes <= LARGE_FILE_BYTES) return null;
  const work = await workOn(context, actor, stored);
  const step = stepOf(work);
  if (step === null) return null;
  const going = step === 'bringing-in' ? work.bringingIn : work.judging;
  return { ...stored, step, ...(going?.progress() ?? { done: 0, of: 0 }) };
}

/** A file up to this size is judged, or brought in, in a second or so: whoever asks waits for it. */
const LARGE_FILE_BYTES = 100_000;

function stepOf({ judging, bringingIn }: ImportWork): ImportUnderway['step'] | null {
  if (bringingIn !== null && !bringingIn.hasEnded()) return 'bringing-in';
  return judging.hasEnded() ? null : 'judging';
}

/** An import with its columns and its judgement, without telling the trail. */
export async function viewOf(
  context: Context,
  actor: TeamMember,
  id: string,
  progress: Progress = () => {},
): Promise<Outcome<ImportView>> {
  const stored = await findImport(context.db, actor.teamId, id);
  if (stored === null) return refused({ code: 'not-found', what: 'import' });
  if (stored.state === 'draft') {
    const work = await workOn(context, actor, stored, { progress });
    const tried = await work.judging.result;
    const brought = work.bringingIn?.ended() ?? null;
    const lastRefusal = brought?.kind === 'refused' ? brought.refusal : null;
    const judgement = tried?.trial?.judgement ?? null;
    return done({ ...stored, sheet: tried?.columns ?? null, judgement, lastRefusal });
  }
  const opened = await sheetOf(context, stored);
  return done({
    ...stored,
    sheet: opened === null ? null : mapSheet(opened, stored.choices),
    // Written by commitImport only.
    judgement: stored.result === null ? null : judgementOf(JSON.parse(stored.result) as Judgement),
    lastRefusal: null,
  });
}

/** What was kept of an import before a fault was told once had it at each row of its referral, and nothing held back. */
function judgementOf({ rows, counts }: Judgement): Judgement {
  return { counts, rows: rows.map((row) => ({ ...row, heldBack: row.heldBack ?? [] })) };
}
