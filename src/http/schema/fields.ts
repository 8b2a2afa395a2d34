import { z } from 'zod';
import { parsePlainDate, plainDate } from '../../domain/calendar/plain-date.js';
import { ACCEPTED_LINE, ACCEPTED_TEXT, TEXT_NOT_ACCEPTED } from '../../domain/text/accepted-text.js';

/** A calendar date, years 1800 to 2999, as the domain's own type. */
export const dateField = z.iso
  .date()
  .refine((text) => parsePlainDate(text) !== null, {
    message: 'Give a date from the year 1800 to 2999.',
    when: ({ issues }) => issues.length === 0,
  })
  .transform((text) => plainDate(text));

/** A calendar date in a response. */
export const dateShown = z.string().meta({ format: 'date' });

/** An id in any case; it is stored in lower case. */
export const idField = z.uuid().toLowerCase();

/** One line of text, trimmed. */
export function lineField(maxLength: number) {
  return z.string().trim().min(1).max(maxLength).regex(ACCEPTED_LINE, TEXT_NOT_ACCEPTED);
}

/** Text of several lines, trimmed. */
export function textField(maxLength: number) {
  return z.string().trim().min(1).max(maxLength).regex(ACCEPTED_TEXT, TEXT_NOT_ACCEPTED);
}

/** A finite number of ordinary size; its limits are the domain's to judge, so that every door has the same. */
export const numberField = z.number().min(-1_000_000).max(1_000_000);

/** A field that may be left out or null; both mean "not recorded". */
export function orNull<Schema extends z.ZodType>(schema: Schema) {
  return schema.nullable().default(null);
}

export const reasonField = lineField(500).describe('Why the correction is made; kept in the history');
