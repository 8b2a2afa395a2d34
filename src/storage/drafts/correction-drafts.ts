import type { CorrectionDraft } from '../../domain/draft/draft.js';
import type { Executor } from '../connection.js';
import { draftColumns, typedDraftOf } from './draft-rows.js';
import type { NextDraft } from './draft-rows.js';

/** The draft of the correction of an assessment, an ended one too; null where nothing was ever saved. */
export async function findCorrectionDraft(
  db: Executor,
  assessmentId: string,
): Promise<CorrectionDraft | null> {
  const row = await db
    .selectFrom('correction_draft')
    .innerJoin('account', 'account.id', 'correction_draft.saved_by')
    .selectAll('correction_draft')
    .select('account.display_name')
    .where('assessment_id', '=', assessmentId)
    .executeTakeFirst();
  if (row === undefined) return null;
  return { assessmentId, assessmentVersion: row.assessment_version, ...typedDraftOf(row) };
}

/** Stores the next version of the draft of a correction in the place of the former. */
export async function storeCorrectionDraft(
  db: Executor,
  draft: NextDraft & { readonly assessmentId: string; readonly assessmentVersion: number },
): Promise<void> {
  const changed = { assessment_version: draft.assessmentVersion, ...draftColumns(draft) };
  await db
    .insertInto('correction_draft')
    .values({ assessment_id: draft.assessmentId, ...changed })
    .onConflict((conflict) => conflict.column('assessment_id').doUpdateSet(changed))
    .execute();
}
