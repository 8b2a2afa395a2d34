import { personKey } from '../../domain/imports/course-draft.js';
import { endOfTrail } from '../../storage/audit/audit-trail.js';
import type { Context } from '../context.js';
import type { Carrier } from './carry-out.js';
import { roomForOthers, sliceOfTime } from './long-work.js';
import type { Progress } from './long-work.js';
import { overtaken } from './overtaken.js';
import type { IsOvertaken } from './overtaken.js';
import type { PutBy, Trial, TriedCourse } from './trial.js';

/** Statements after which a slice ends, where its time is not over before. */
const STATEMENTS_IN_A_SLICE = 250;

/** What the slices have left to the last transaction. */
export interface LeftOver {
  readonly isOvertaken: IsOvertaken;
  /** Number of the last entry of the trail that was looked at: what came later may have changed more. */
  readonly since: number;
}

/**
 * Carries out the courses of a trial in short transactions, so that others write in between. What may be refused, or could
 * not be taken out again, is left to the last transaction: courses of people whom others have changed, unusual ones that
 * were confirmed, and those that decide or close a referral which was in the record before.
 *
 * @param left takes the courses that are left
 * @returns null where nothing of the trial holds any more
 */
export async function bringInSlices(
  context: Context,
  teamId: string,
  carrier: Carrier,
  {
    trial,
    confirmsUnusual,
    left,
  }: { readonly trial: Trial; readonly confirmsUnusual: boolean; readonly left: PutBy },
  progress: Progress,
): Promise<LeftOver | null> {
  // Whoever waits does so with all their further courses: each finds what came before.
  const waiting = new Set<string>();
  let since = trial.since;
  let isOvertaken: IsOvertaken = () => false;
  const isLeft = (tried: TriedCourse): boolean =>
    waiting.has(personKey(tried.course.key)) ||
    (confirmsUnusual && tried.said.verdict === 'unusual') ||
    !canBeTakenOut(tried) ||
    isOvertaken({ key: tried.course.key, patientId: tried.patientId });
  const courses = trial.courses()[Symbol.iterator]();
  let next = courses.next();
  for (let carriedOut = 0; next.done !== true;) {
    const holds = await context.db.transaction().execute(async (trx) => {
      const changed = await overtaken(context, trx, teamId, { since, triedOn: trial.triedOn });
      if (changed === null) return false;
      const before = isOvertaken;
      isOvertaken = (whose) => before(whose) || changed(whose);
      const isOver = sliceOfTime();
      for (let statements = 0; next.done !== true && statements < STATEMENTS_IN_A_SLICE;) {
        const tried = next.value;
        if (isLeft(tried)) {
          left.add(tried);
          waiting.add(personKey(tried.course.key));
        } else {
          await carrier.write(trx, tried);
          carriedOut += 1;
        }
        statements += 1 + tried.written.length;
        next = courses.next();
        if (isOver()) break;
      }
      await carrier.tell(trx);
      ({ sequence: since } = await endOfTrail(trx));
      return true;
    });
    if (!holds) return null;
    progress(carriedOut, trial.whose.length);
    await roomForOthers();
  }
  return { isOvertaken, since };
}

/** Whether a course decides and closes no other referral than its own: only such a one can be taken out again. */
function canBeTakenOut({ parts }: TriedCourse): boolean {
  const own = new Set(parts.filter(({ kind }) => kind === 'referral').map(({ subjectId }) => subjectId));
  return parts.every(
    ({ kind, subjectId }) => (kind !== 'triage' && kind !== 'closure') || own.has(subjectId),
  );
}
