import { dictionary } from '@zxcvbn-ts/language-common';

const COMMON: ReadonlySet<string> = new Set(dictionary['passwords-common']);

/**
 * Whether a text is on the list of common passwords.
 *
 * @param text in lower case
 * @source passwords-common of @zxcvbn-ts/language-common, 49,233 entries at version 4.1.3
 */
export function isCommonPassword(text: string): boolean {
  return COMMON.has(text);
}
