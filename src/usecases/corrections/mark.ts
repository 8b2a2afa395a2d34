import type { EnteredInError } from '../../domain/history/entered-in-error.js';
import type { Context, TeamMember } from '../context.js';
import type { BasedOn } from '../history/based-on.js';

/** Why an entry is marked as made in error, or restored, and the version that this is based on. */
export interface MarkRequest {
  readonly reason: string;
  readonly basedOn: BasedOn;
}

/** The mark that a member makes now. */
export function markOf(context: Context, { accountId }: TeamMember, reason: string): EnteredInError {
  return { markedAt: context.clock.now(), markedBy: accountId, reason };
}
