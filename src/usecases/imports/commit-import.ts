import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { findImport } from '../../storage/imports/imports.js';
import type { StoredImport } from '../../storage/imports/imports.js';
import type { Context, TeamMember } from '../context.js';
import type { BasedOn } from '../history/based-on.js';
import { judge, workOn } from './import-work.js';
import { staleImport } from './keep-import.js';
import { beginWork } from './long-work.js';
import type { LongWork, Progress } from './long-work.js';
import type { ImportWork } from './trials.js';
import { writeInSlices, writeTrial } from './write-trial.js';
import type { TrialToWrite } from './write-trial.js';

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
  /** In one transaction however large it is: for a process that nobody else works in. */
  readonly isAtOnce?: boolean;
}

/** Brings the rows of a sheet into the record: the good ones, or all or none. */
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
/** A sheet of more courses than this is written in slices, so that others need not wait for all of it. */
const MOST_COURSES_AT_ONCE = 50;

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
    const isAtOnce = isLast || options.isAtOnce === true || trial.whose.length <= MOST_COURSES_AT_ONCE;
    const toWrite: TrialToWrite = { stored, trial, isLast, options };
    const outcome = await (isAtOnce ? writeTrial : writeInSlices)(context, actor, toWrite, progress);
    if (trials > 1) trial.close();
    if (outcome !== 'overtaken') {
      // What was put by is in the record now, and kept nowhere else.
      if (outcome.kind === 'done') context.trials.drop(stored.id);
      return outcome;
    }
    tried = await judge(context, actor, stored, progress);
  }
}
