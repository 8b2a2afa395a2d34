import type { Draft, DraftFields, TypedDraft } from '../../domain/draft/draft.js';
import { fitsDraft, MOST_DRAFT_CHARACTERS, noDraft } from '../../domain/draft/draft.js';
import type { Timepoint } from '../../domain/referral/closed-sets.js';
import type { Refusal } from '../../domain/refusal/refusal.js';
import type { Executor } from '../../storage/connection.js';
import { draftsOfReferral, storeDraft } from '../../storage/drafts/drafts.js';
import type { Context, TeamMember } from '../context.js';

/** The draft of an assessment as it stands; the one of version 0 where nothing was ever saved. */
export async function draftOf(db: Executor, referralId: string, timepoint: Timepoint): Promise<Draft> {
  const drafts = await draftsOfReferral(db, referralId);
  return drafts.find((draft) => draft.timepoint === timepoint) ?? noDraft(referralId, timepoint);
}

/** Refuses what is based on a draft that has been saved or ended since, telling by whom; null where it is not. */
export function staleDraft(draft: TypedDraft, basedOn: readonly number[]): Refusal | null {
  if (basedOn.includes(draft.version)) return null;
  const { version, state, saved } = draft;
  return { code: 'stale-draft', version, state, saved };
}

/** Refuses what is too much for a draft; null where it is not. */
export function tooLongDraft(fields: DraftFields): Refusal | null {
  if (fitsDraft(fields)) return null;
  const message = `A draft holds at most ${MOST_DRAFT_CHARACTERS} characters.`;
  return { code: 'rules-broken', faults: [{ pointer: '/fields', code: 'too-long', message }] };
}

/**
 * Ends a draft in the transaction of what ends it: its fields are emptied, its number goes on.
 *
 * @param end the version that somebody had before them; refused when the draft has changed since
 * @returns null when done, or when there was no open draft to end
 */
export async function endDraft(
  context: Context,
  actor: TeamMember,
  trx: Executor,
  end: {
    readonly referralId: string;
    readonly timepoint: Timepoint;
    readonly version: number;
    readonly as: 'recorded' | 'discarded';
  },
): Promise<Refusal | null> {
  const { referralId, timepoint } = end;
  const draft = await draftOf(trx, referralId, timepoint);
  const stale = staleDraft(draft, [end.version]);
  if (stale !== null || draft.state !== 'open') return stale;
  const [now, { accountId }] = [context.clock.now(), actor];
  const next = { version: draft.version + 1, state: end.as, fields: {}, now, accountId };
  await storeDraft(trx, { referralId, timepoint, ...next });
  return null;
}
