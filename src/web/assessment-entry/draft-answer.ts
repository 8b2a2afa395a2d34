import type { TypedDraft } from '../../domain/draft/draft.js';
import { fieldId } from '../forms/form-errors.js';
import type { FormValues } from '../forms/form-values.js';
import type { Judged } from './judge.js';
import type { Missing } from './next-missing.js';
import { savedWords } from './sheet-foot.js';

/**
 * What the script is told that saves while somebody types: the draft, the figures, what is wrong, and what is missing next.
 *
 * @param alsoTold what is to be said beside that it is saved
 */
export function draftAnswer(
  draft: TypedDraft,
  values: FormValues,
  { figures, errors, queries }: Pick<Judged, 'figures' | 'errors' | 'queries'>,
  missing: Missing | null,
  alsoTold = '',
): object {
  return {
    version: draft.version,
    words: `${savedWords(draft)}${alsoTold}`,
    figures,
    // While somebody types, only what was typed is found fault with.
    faults: [...errors, ...queries].filter(({ field }) => values.has(field) && values.get(field)?.[0] !== ''),
    queries: queries.map(({ field }) => field),
    next: missing === null ? null : { ...missing, id: fieldId(missing.field) },
  };
}
