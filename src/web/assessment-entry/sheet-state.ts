import type { TypedDraft } from '../../domain/draft/draft.js';
import type { EntrySheet } from '../../usecases/assessments/entry-sheet.js';
import type { Place } from '../../usecases/providers.js';
import { errorAt } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { textOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import type { Frame } from '../frame.js';
import type { FigureLines } from './figure-words.js';

/** All that the page of an assessment shows: what is known, what was typed, and what was found in it. */
export interface SheetState {
  readonly frame: Frame;
  readonly sheet: EntrySheet;
  readonly sites: readonly Place[];
  readonly values: FormValues;
  readonly errors: FormErrors;
  /** Unusual values that wait for a confirmation, by field. */
  readonly queries: FormErrors;
  readonly figures: FigureLines;
  /** The draft on which the next saving is based. */
  readonly draft: TypedDraft;
}

/** What a field of the sheet shows. */
export function fieldState(
  { values, errors }: SheetState,
  name: string,
): { readonly name: string; readonly value: string; readonly error: string | null } {
  return { name, value: textOf(values, name), error: errorAt(errors, name) };
}

/** Whether something was typed into any field of a part. */
export function isBegun(values: FormValues, part: string): boolean {
  return [...values].some(
    ([name, texts]) => name.startsWith(`${part}.`) && texts.some((text) => text !== ''),
  );
}
