import type { Fault } from '../refusal/refusal.js';

const SHAPE = /^[a-z0-9][a-z0-9.@_-]{1,78}[a-z0-9]$/;

/**
 * A sign-in name as it is stored and looked for: without space around it, in lower case.
 *
 * @example normaliseSignInName(' H.Turnstone ') -> 'h.turnstone'
 */
export function normaliseSignInName(text: string): string {
  return text.normalize('NFKC').trim().toLowerCase();
}

/** What is wrong with a sign-in name that is to be given to somebody. @param name normalised */
export function checkSignInName(pointer: string, name: string): readonly Fault[] {
  if (SHAPE.test(name)) return [];
  const message =
    'Use 3 to 80 letters a to z, digits, dots, hyphens, underscores or @; begin and end with a letter or digit.';
  return [{ pointer, code: 'sign-in-name-shape', message }];
}
