import type { LetterKind } from '../../reports/letters/letter-model.js';

/** To whom a letter goes. */
export const LETTER_WORDS: Readonly<Record<LetterKind, string>> = {
  gp: 'Letter to the general practice',
  patient: 'Letter to the person',
};
