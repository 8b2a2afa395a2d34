import { personKey } from '../../domain/imports/course-draft.js';
import type { Executor } from '../../storage/connection.js';
import type { Carrier } from './carry-out.js';
import { roomForOthers } from './long-work.js';
import type { IsOvertaken } from './overtaken.js';
import type { TriedCourse } from './trial.js';

const COURSES_AT_ONCE = 20;

/**
 * Carries courses of a trial out in the transaction that is given: the record is as the trial found it, but for the people
 * whom others have changed meanwhile. Their courses are judged anew, as are unusual ones that were confirmed.
 */
export async function bringInAtOnce(
  trx: Executor,
  carrier: Carrier,
  {
    courses,
    isOvertaken,
    confirmsUnusual,
  }: {
    readonly courses: Iterable<TriedCourse>;
    readonly isOvertaken: IsOvertaken;
    readonly confirmsUnusual: boolean;
  },
  progress: (carriedOut: number) => void,
): Promise<void> {
  // Whoever is judged anew is so in all their further courses: each finds what came before.
  const anew = new Set<string>();
  const isJudgedAnew = (tried: TriedCourse): boolean =>
    anew.has(personKey(tried.course.key)) ||
    (confirmsUnusual && tried.said.verdict === 'unusual') ||
    isOvertaken({ key: tried.course.key, patientId: tried.patientId });
  let carriedOut = 0;
  for (const tried of courses) {
    if (isJudgedAnew(tried)) {
      anew.add(personKey(tried.course.key));
      await carrier.judgeAnew(trx, tried.course);
    } else await carrier.write(trx, tried);
    carriedOut += 1;
    if (carriedOut % COURSES_AT_ONCE > 0) continue;
    await carrier.tell(trx);
    progress(carriedOut);
    await roomForOthers();
  }
  await carrier.tell(trx);
  progress(carriedOut);
}
