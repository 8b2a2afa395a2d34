import type { EnteredInError } from '../../domain/history/entered-in-error.js';
import { accountNames } from '../../storage/accounts/account-names.js';
import type { Context } from '../context.js';

/** A mark as people read it: by name. */
export interface NamedMark extends EnteredInError {
  readonly byName: string;
}

/** Marks with the names of those who made them, in their order; null stays null. */
export async function namedMarks(
  { db }: Pick<Context, 'db'>,
  marks: readonly (EnteredInError | null)[],
): Promise<readonly (NamedMark | null)[]> {
  const names = await accountNames(
    db,
    marks.flatMap((mark) => mark?.markedBy ?? []),
  );
  return marks.map((mark) =>
    mark === null ? null : { ...mark, byName: names.get(mark.markedBy) ?? 'somebody of the team' },
  );
}
