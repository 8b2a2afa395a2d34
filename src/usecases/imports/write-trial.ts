import type { Judgement } from '../../domain/imports/judgement.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome, Refusal } from '../../domain/refusal/refusal.js';
import type { Executor } from '../../storage/connection.js';
import { changeImport, findImport } from '../../storage/imports/imports.js';
import type { StoredImport } from '../../storage/imports/imports.js';
import { recordEvent } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { bringInAtOnce } from './bring-in-at-once.js';
import { bringInSlices } from './bring-in-slices.js';
import type { LeftOver } from './bring-in-slices.js';
import { carrierOf } from './carry-out.js';
import type { Carrier } from './carry-out.js';
import type { CommitOptions } from './commit-import.js';
import { withoutKey } from './lead-of-team.js';
import type { Progress } from './long-work.js';
import { overtaken } from './overtaken.js';
import type { IsOvertaken } from './overtaken.js';
import { takeBack } from './take-back.js';
import { putBy } from './trial.js';
import type { Trial } from './trial.js';

/** A trial that is to be written to the record. */
export interface TrialToWrite {
  readonly stored: StoredImport;
  readonly trial: Trial;
  /** It is written whatever has changed since: what no longer holds is judged anew. */
  readonly isLast: boolean;
  readonly options: CommitOptions;
}

export type WrittenTrial = Outcome<null> | 'overtaken';

/** Undoes everything that was written in a transaction, with the refusal that it ends in. */
class AllUndone extends Error {
  readonly refusal: Refusal;

  constructor(refusal: Refusal) {
    super('Nothing is brought in.');
    this.refusal = refusal;
  }
}

/** Writes a trial in one transaction. */
export async function writeTrial(
  context: Context,
  actor: TeamMember,
  toWrite: TrialToWrite,
  progress: Progress,
): Promise<WrittenTrial> {
  const { trial, isLast, options } = toWrite;
  const carrier = carrierFor(context, actor, toWrite);
  return inOneTransaction(context, actor, toWrite, carrier, async (trx) => {
    const stillOvertaken = await overtaken(context, trx, actor.teamId, trial);
    if (stillOvertaken === null && !isLast) return 'overtaken';
    const isOvertaken = stillOvertaken ?? (() => true);
    const input = { ...options, courses: trial.courses(), isOvertaken };
    await bringInAtOnce(trx, carrier, input, (carriedOut) => progress(carriedOut, trial.whose.length));
    return 'written';
  });
}

/**
 * Writes a trial in many short transactions, so that others write in between, and what may be refused in a last one. Until
 * that has ended nobody reads figures; where it does not, the slices are taken back.
 */
export async function writeInSlices(
  context: Context,
  actor: TeamMember,
  toWrite: TrialToWrite,
  progress: Progress,
): Promise<WrittenTrial> {
  const gate = await context.trials.figuresGate.close(actor.teamId);
  const takeItBack = (): Promise<void> =>
    takeBack(context, toWrite.stored.id, { id: actor.accountId, role: actor.role, teamId: actor.teamId });
  let isWhole = false;
  try {
    // Left by an attempt that could not be taken back, as where the disk was full.
    await takeItBack();
    isWhole = true;
    const refusal = await refusedBefore(context, actor, toWrite);
    if (refusal !== null) return refusal;
    isWhole = false;
    const outcome = await slicesAndLast(context, actor, toWrite, progress);
    if (outcome === 'overtaken' || outcome.kind === 'refused') await takeItBack();
    isWhole = true;
    return outcome;
  } catch (error) {
    if (!isWhole) await takeItBack();
    isWhole = true;
    throw error;
  } finally {
    if (isWhole) gate.open();
    else gate.leaveShut();
  }
}

/** What can be refused, or has to be judged anew, before anything is written. */
async function refusedBefore(
  context: Context,
  actor: TeamMember,
  { trial, options }: TrialToWrite,
): Promise<WrittenTrial | null> {
  const isOvertaken = await overtaken(context, context.db, actor.teamId, trial);
  if (isOvertaken === null) return 'overtaken';
  if (options.rows === 'good-rows') return null;
  const isRefused = trial.whose.some(
    (whose) =>
      (whose.verdict === 'refused' || (whose.verdict === 'unusual' && !options.confirmsUnusual)) &&
      !isOvertaken(whose),
  );
  const isRowRefused = trial.aside.some(({ verdict }) => verdict === 'refused');
  const { counts } = trial.judgement;
  return isRefused || isRowRefused
    ? refused({ code: 'rows-refused', refusedRows: counts.refused + counts.unusual })
    : null;
}

async function slicesAndLast(
  context: Context,
  actor: TeamMember,
  toWrite: TrialToWrite,
  progress: Progress,
): Promise<WrittenTrial> {
  const { trial, options } = toWrite;
  const carrier = carrierFor(context, actor, toWrite);
  const spool = context.trials.newSpool();
  const left = putBy(spool);
  try {
    const input = { ...options, trial, left };
    const leftOver = await bringInSlices(context, actor.teamId, carrier, input, progress);
    if (leftOver === null) return 'overtaken';
    return await inOneTransaction(context, actor, toWrite, carrier, async (trx) => {
      const isOvertaken = await overtakenSince(context, trx, actor.teamId, { trial, leftOver });
      if (isOvertaken === null) return 'overtaken';
      await bringInAtOnce(trx, carrier, { ...options, courses: left.courses(), isOvertaken }, () => {});
      return 'written';
    });
  } finally {
    spool.close();
  }
}

async function overtakenSince(
  context: Context,
  trx: Executor,
  teamId: string,
  { trial, leftOver }: { readonly trial: Trial; readonly leftOver: LeftOver },
): Promise<IsOvertaken | null> {
  const changed = await overtaken(context, trx, teamId, { since: leftOver.since, triedOn: trial.triedOn });
  return changed === null ? null : (whose) => leftOver.isOvertaken(whose) || changed(whose);
}

/** Ends an import in one transaction with what a step writes in it, or undoes that. */
async function inOneTransaction(
  context: Context,
  actor: TeamMember,
  { stored, options: { rows } }: TrialToWrite,
  carrier: Carrier,
  step: (trx: Executor) => Promise<'written' | 'overtaken'>,
): Promise<WrittenTrial> {
  try {
    return await context.db.transaction().execute(async (trx): Promise<WrittenTrial> => {
      const former = await findImport(trx, actor.teamId, stored.id);
      if (former?.state !== 'draft' || former.version !== stored.version)
        return refused({ code: 'import-over' });
      if ((await step(trx)) === 'overtaken') return 'overtaken';
      const judgement = carrier.judgement();
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

function carrierFor(
  context: Context,
  actor: TeamMember,
  { stored, trial, options: { confirmsUnusual } }: TrialToWrite,
): Carrier {
  return carrierOf(context, withoutKey(actor), { importId: stored.id, trial, confirmsUnusual });
}

/** What was found of the rows, without what stood in their cells. */
function withoutCells({ rows, counts }: Judgement): Judgement {
  return {
    counts,
    rows: rows.map((row) => ({ ...row, faults: row.faults.map((fault) => ({ ...fault, value: '' })) })),
  };
}
