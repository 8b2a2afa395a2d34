import type { Fault } from '../refusal/refusal.js';

/**
 * Lengths in code points. A passphrase is judged by length and by not being a known one, never by kinds of characters.
 *
 * @source NIST SP 800-63B, 5.1.1.2 (from memory, check before use): at least 8, at least 64 accepted, a list of common
 *   ones refused, no rules of composition, NFKC or NFKD before hashing. The least length here is longer.
 */
export const PASSPHRASE_LENGTH = { min: 12, max: 128 } as const;

/** The form in which a passphrase is judged and hashed, whatever keyboard it was typed on. */
export function normalisePassphrase(text: string): string {
  return text.normalize('NFKC');
}

/**
 * What is wrong with a new passphrase; empty where it may be used.
 *
 * @param passphrase normalised
 * @param isCommon whether a text, in lower case, is on a list of common passwords
 * @example 'password1234' -> one fault, common-passphrase: a common one with digits behind it
 */
export function checkPassphrase(
  pointer: string,
  passphrase: string,
  other: { readonly signInName: string; readonly isCommon: (text: string) => boolean },
): readonly Fault[] {
  const length = [...passphrase].length;
  const { min, max } = PASSPHRASE_LENGTH;
  if (length < min || length > max) {
    return [{ pointer, code: 'passphrase-length', message: `Use ${min} to ${max} characters.` }];
  }
  const lower = passphrase.toLowerCase();
  if (lower.includes(other.signInName)) {
    const message = 'Choose a passphrase that does not hold the sign-in name.';
    return [{ pointer, code: 'passphrase-holds-name', message }];
  }
  if (!formsOf(lower).some((form) => other.isCommon(form) || new Set(form).size < 3)) return [];
  const message =
    'This passphrase is among the first to be guessed. Choose several words that do not belong together.';
  return [{ pointer, code: 'common-passphrase', message }];
}

/** The text itself, what is left of it without digits and signs at its ends, and the part that it repeats. */
function formsOf(text: string): readonly string[] {
  const core = text.replace(/^[^\p{L}]+|[^\p{L}]+$/gu, '');
  const repeated = /^(.+?)\1+$/u.exec(text)?.[1];
  return [text, ...(core === '' ? [] : [core]), ...(repeated === undefined ? [] : [repeated])];
}
