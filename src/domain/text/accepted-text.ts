// Control characters have no place in a name and could disturb a terminal, a log or a spreadsheet; marks that turn the
// direction of reading can make one name look like another; U+FFFD stands where a character was lost on its way here.
/** A line of text as the record takes it. */
export const ACCEPTED_LINE = /^[^\p{Cc}\p{Cs}\u202A-\u202E\u2066-\u2069\uFFFD]*$/u;
/** Text of several lines as the record takes it. */
export const ACCEPTED_TEXT = /^(?:[^\p{Cc}\p{Cs}\u202A-\u202E\u2066-\u2069\uFFFD]|[\n\r\t])*$/u;
/** Why a text is not taken. */
export const TEXT_NOT_ACCEPTED =
  'Control characters, and characters that were lost on the way, are not accepted.';
