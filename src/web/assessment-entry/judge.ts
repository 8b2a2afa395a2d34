import type { AssessmentEntry } from '../../domain/assessment/assessment.js';
import { previewEntry } from '../../usecases/assessments/entry-sheet.js';
import type { EntrySheet } from '../../usecases/assessments/entry-sheet.js';
import type { TeamMember } from '../../usecases/context.js';
import type { FormErrors } from '../forms/form-errors.js';
import type { FormValues } from '../forms/form-values.js';
import type { Web } from '../web.js';
import { fieldOf } from './field-of.js';
import { figureLines } from './figure-words.js';
import type { FigureLines } from './figure-words.js';
import { isConfirmed, readEntry } from './read-entry.js';

/** What was typed, judged: the entry to be recorded, what is wrong with it, what is to be checked, and its figures. */
export interface Judged {
  readonly entry: AssessmentEntry;
  readonly errors: FormErrors;
  readonly queries: FormErrors;
  readonly figures: FigureLines;
}

/** Reads a form and judges it as the record would. */
export async function judge(
  { context }: Pick<Web, 'context'>,
  actor: TeamMember,
  sheet: EntrySheet,
  values: FormValues,
): Promise<Judged> {
  const read = readEntry(values, sheet.timepoint, context.clock.today());
  const first = await previewEntry(context, actor, sheet, read.entry);
  // A value that is confirmed is confirmed by what stands in its field, not by where the entry has it.
  const confirmed = first.queries
    .map(({ pointer }) => pointer)
    .filter((pointer) => isConfirmed(values, fieldOf(read, pointer)));
  const entry = { ...read.entry, confirmed };
  const preview = confirmed.length === 0 ? first : await previewEntry(context, actor, sheet, entry);
  const faults = preview.faults.map(({ pointer, message }) => ({ field: fieldOf(read, pointer), message }));
  // A field that could not be read is told of once.
  const unread = new Set(read.errors.map(({ field }) => field));
  return {
    entry,
    errors: [...read.errors, ...faults.filter(({ field }) => !unread.has(field))],
    queries: preview.queries.map(({ pointer, message }) => ({ field: fieldOf(read, pointer), message })),
    figures: figureLines(read, preview),
  };
}
