import type { Draft } from '../../domain/draft/draft.js';
import { TIMEPOINTS } from '../../domain/referral/closed-sets.js';
import type { Timepoint } from '../../domain/referral/closed-sets.js';
import type { Executor } from '../connection.js';
import { memberOf } from '../row-mapping.js';
import { draftColumns, typedDraftOf } from './draft-rows.js';
import type { NextDraft } from './draft-rows.js';

/** The drafts of a referral, ended ones included; the referral has been found in the team before. */
export async function draftsOfReferral(db: Executor, referralId: string): Promise<readonly Draft[]> {
  const rows = await db
    .selectFrom('assessment_draft')
    .innerJoin('account', 'account.id', 'assessment_draft.saved_by')
    .selectAll('assessment_draft')
    .select('account.display_name')
    .where('referral_id', '=', referralId)
    .orderBy('timepoint')
    .execute();
  return rows.map((row) => ({
    referralId: row.referral_id,
    timepoint: memberOf(TIMEPOINTS, row.timepoint),
    ...typedDraftOf(row),
  }));
}

/** Stores the next version of a draft in the place of the former: a draft is no clinical fact and has no history. */
export async function storeDraft(
  db: Executor,
  draft: NextDraft & { readonly referralId: string; readonly timepoint: Timepoint },
): Promise<void> {
  const changed = draftColumns(draft);
  await db
    .insertInto('assessment_draft')
    .values({ referral_id: draft.referralId, timepoint: draft.timepoint, ...changed })
    .onConflict((conflict) => conflict.columns(['referral_id', 'timepoint']).doUpdateSet(changed))
    .execute();
}
