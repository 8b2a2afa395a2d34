import { DRAFT_STATES } from '../../domain/draft/draft.js';
import type { DraftFields, DraftState, TypedDraft } from '../../domain/draft/draft.js';
import { memberOf } from '../row-mapping.js';
import type { DraftTable } from '../tables.js';

/** A version of a draft that is to be stored. */
export interface NextDraft {
  readonly version: number;
  readonly state: Exclude<DraftState, 'none'>;
  readonly fields: DraftFields;
  readonly now: string;
  readonly accountId: string;
}

/** What all drafts have in common, as it is stored. */
export function draftColumns({ version, state, fields, now, accountId }: NextDraft): DraftTable {
  return { version, state, fields: JSON.stringify(fields), saved_at: now, saved_by: accountId };
}

/** What all drafts have in common, as it is read with the name of whoever saved it. */
export function typedDraftOf(row: DraftTable & { readonly display_name: string }): TypedDraft {
  return {
    version: row.version,
    state: memberOf(DRAFT_STATES, row.state),
    // Written from checked fields only.
    fields: JSON.parse(row.fields) as DraftFields,
    saved: { at: row.saved_at, byId: row.saved_by, byName: row.display_name },
  };
}
