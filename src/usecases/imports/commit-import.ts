import type { Judgement } from '../../domain/imports/judgement.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome, Refusal } from '../../domain/refusal/refusal.js';
import { changeImport, findImport } from '../../storage/imports/imports.js';
import type { StoredImport } from '../../storage/imports/imports.js';
import { recordEvent } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import type { BasedOn } from '../history/based-on.js';
import { carryOut } from './carry-out.js';
import { judge, workOn } from './import-work.js';
import { staleImport } from './keep-import.js';
import { withoutKey } from './lead-of-team.js';
import { beginWork } from './long-work.js';
import type { LongWork, Progress } from './long-work.js';
import { overtaken } from './overtaken.js';
import type { Trial } from './trial.js';
import type { ImportWork } from './trials.js';

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
): Promise<Outcome<null>> {
  const begun = await beginCommit(context, actor, id, options);
  return begun.kind === 'refused' ? begun : begun.value.result;
}

/** As commitImport, without waiting until the rows are in. Where they are on their way already, that goes on. */
export async function beginCommit(
  context: Context,
  actor: TeamMember,
  id: string,
  options: CommitOptions,
): Promise<Outcome<LongWork<Outcome<null>>>> {
  const stored = await findImport(context.db, actor.teamId, id);
  if (stored === null) return refused({ code: 'not-found', what: 'import' });
  if (stored.state !== 'draft') return refused({ code: 'import-over' });
  const stale = staleImport(stored, options.basedOn);
  if (stale !== null) return stale;
  const work = await workOn(context, actor, stored);
  if (work.bringingIn?.hasEnded() !== false) {
    work.bringingIn = beginWork(
      (progress) => bringIn(context, actor, stored, work, options, progress),
      options.progress,
    );
  }
  return done(work.bringingIn);
}

/** Trials in a row that others may overtake; then the rows are judged while nobody else writes. */
const MOST_TRIALS = 2;

async function bringIn(
  context: Context,
  actor: TeamMember,
  stored: StoredImport,
  { judging }: ImportWork,
  options: CommitOptions,
  progress: Progress,
): Promise<Outcome<null>> {
  let tried = await judging.result;
  for (let trials = 1; ; trials += 1) {
    if (tried === null) return refused({ code: 'import-over' });
    const { columns, trial } = tried;
    if (trial === null)
      return refused({ code: 'questions-open', questions: columns.questions.map(({ message }) => message) });
    const isLast = trials === MOST_TRIALS;
    const outcome = await writeTrial(context, actor, stored, { trial, isLast }, options, progress);
    if (trials > 1) trial.close();
    if (outcome !== 'overtaken') {
      // What was put by is in the record now, and kept nowhere else.
      if (outcome.kind === 'done') context.trials.drop(stored.id);
      return outcome;
    }
    tried = await judge(context, actor, stored, progress);
  }
}

async function writeTrial(
  context: Context,
  actor: TeamMember,
  stored: StoredImport,
  { trial, isLast }: { readonly trial: Trial; readonly isLast: boolean },
  { rows, confirmsUnusual }: CommitOptions,
  progress: Progress,
): Promise<Outcome<null> | 'overtaken'> {
  try {
    return await context.db.transaction().execute(async (trx): Promise<Outcome<null> | 'overtaken'> => {
      const former = await findImport(trx, actor.teamId, stored.id);
      if (former?.state !== 'draft' || former.version !== stored.version)
        return refused({ code: 'import-over' });
      const stillOvertaken = await overtaken(context, trx, actor.teamId, trial);
      if (stillOvertaken === null && !isLast) return 'overtaken';
      const isOvertaken = stillOvertaken ?? (() => true);
      const input = { importId: stored.id, trial, isOvertaken, confirmsUnusual };
      const judgement = await carryOut(context, withoutKey(actor), trx, input, progress);
      const refusedRows = judgement.counts.refused + judgement.counts.unusual;
      if (rows === 'all-or-none' && refusedRows > 0)
        throw new AllUndone({ code: 'rows-refused', refusedRows });
      await changeImport(trx, former, {
        state: 'done',
        result: JSON.stringify(withoutCells(judgement)),
        doneAt: context.clock.now(),
        // The file is needed as long as there are rows to be given back.
        dropsFile: refusedRows === 0,
      });
      await recordEvent(context, trx, actor, {
        action: 'import-done',
        subjectId: stored.id,
        details: { counts: judgement.counts, rows, fileDigest: former.fileDigest },
      });
      return done(null);
    });
  } catch (error) {
    if (error instanceof AllUndone) return refused(error.refusal);
    throw error;
  }
}

/** What was found of the rows, without what stood in their cells. */
function withoutCells({ rows, counts }: Judgement): Judgement {
  return {
    counts,
    rows: rows.map((row) => ({ ...row, faults: row.faults.map((fault) => ({ ...fault, value: '' })) })),
  };
}
