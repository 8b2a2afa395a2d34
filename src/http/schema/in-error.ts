import { z } from 'zod';
import { ENTRY_FILTERS } from '../../domain/history/entered-in-error.js';
import type { EnteredInError } from '../../domain/history/entered-in-error.js';
import { reasonField } from './fields.js';

/** The mark of an entry in error, as clients see it. */
export const InErrorShown = z
  .strictObject({
    markedAt: z.string().describe('UTC'),
    markedBy: z.string().describe('Id of the account'),
    reason: z.string(),
  })
  .meta({ id: 'EnteredInError' })
  .nullable()
  .describe('Null for an entry that stands; one in error counts in no figure');

/** Which entries a list shows. */
export const entriesField = z
  .enum(ENTRY_FILTERS)
  .default('standing')
  .describe('Entries that stand, those entered in error, or all, each marked');

/** Why an entry is marked as made in error, or restored. */
export const MarkReason = z.strictObject({ reason: reasonField }).meta({ id: 'MarkReason' });

/** What a client is shown of a mark: each field by name. */
export function presentInError(mark: EnteredInError | null): z.output<typeof InErrorShown> {
  return mark === null ? null : { markedAt: mark.markedAt, markedBy: mark.markedBy, reason: mark.reason };
}
