import type { Judgement } from '../../domain/imports/judgement.js';
import { refused } from '../../domain/refusal/refusal.js';
import type { Outcome, Refusal } from '../../domain/refusal/refusal.js';
import { changeImport, findImport, insertImportedParts } from '../../storage/imports/imports.js';
import { recordEvent } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import type { BasedOn } from '../history/based-on.js';
import { bringIn, readRows } from './bring-in.js';
import type { Progress } from './bring-in.js';
import { sheetOfImport, staleImport, viewOf, withoutKey } from './keep-import.js';
import type { ImportView } from './keep-import.js';

/** Whether the good rows are brought in beside refused ones, or nothing unless every row is good. */
export const ROW_CHOICES = ['good-rows', 'all-or-none'] as const;
export type RowChoice = (typeof ROW_CHOICES)[number];

/** How a sheet is brought in. */
export interface CommitOptions {
  readonly rows: RowChoice;
  /** Values outside the usual range have been checked, and are taken. */
  readonly confirmsUnusual: boolean;
  readonly basedOn: BasedOn;
  readonly progress?: Progress;
}

/** Undoes everything that was written in a transaction, with the refusal that it ends in. */
class AllUndone extends Error {
  readonly refusal: Refusal;

  constructor(refusal: Refusal) {
    super('Nothing is brought in.');
    this.refusal = refusal;
  }
}

/** Brings the rows of a sheet into the record, in one transaction: the good ones, or all or none. */
export async function commitImport(
  context: Context,
  actor: TeamMember,
  id: string,
  options: CommitOptions,
): Promise<Outcome<ImportView>> {
  const stored = await findImport(context.db, actor.teamId, id);
  if (stored === null) return refused({ code: 'not-found', what: 'import' });
  const sheet = await sheetOfImport(context, stored);
  if (stored.state !== 'draft' || sheet === null) return refused({ code: 'import-over' });
  const stale = staleImport(stored, options.basedOn);
  if (stale !== null) return stale;
  if (sheet.questions.length > 0) {
    return refused({ code: 'questions-open', questions: sheet.questions.map(({ message }) => message) });
  }
  const reading = await readRows(context, actor, sheet);
  try {
    await context.db.transaction().execute(async (trx) => {
      const former = await findImport(trx, actor.teamId, id);
      if (former?.state !== 'draft' || former.version !== stored.version)
        throw new AllUndone({ code: 'import-over' });
      const applied = { mapping: sheet.mapping, confirmsUnusual: options.confirmsUnusual };
      const { judgement, parts } = await bringIn(
        context,
        withoutKey(actor),
        trx,
        reading,
        applied,
        options.progress,
      );
      const refusedRows = judgement.counts.refused + judgement.counts.unusual;
      if (options.rows === 'all-or-none' && refusedRows > 0)
        throw new AllUndone({ code: 'rows-refused', refusedRows });
      await insertImportedParts(trx, id, parts);
      await changeImport(trx, former, {
        state: 'done',
        result: JSON.stringify(toldOnly(judgement)),
        doneAt: context.clock.now(),
        // The file is needed as long as there are rows to be given back.
        dropsFile: refusedRows === 0,
      });
      await recordEvent(context, trx, actor, {
        action: 'import-done',
        subjectId: id,
        details: { counts: judgement.counts, rows: options.rows, fileDigest: former.fileDigest },
      });
    });
  } catch (error) {
    if (error instanceof AllUndone) return refused(error.refusal);
    throw error;
  }
  return viewOf(context, actor, id);
}

/** Rows that were brought in need no words; the others are kept with theirs, without what stood in their cells. */
function toldOnly({ rows, counts }: Judgement): Judgement {
  const told = rows.filter(
    ({ verdict }) => verdict === 'refused' || verdict === 'unusual' || verdict === 'passed-over',
  );
  return {
    counts,
    rows: told.map((row) => ({ ...row, faults: row.faults.map((fault) => ({ ...fault, value: '' })) })),
  };
}
