import { personKey } from '../../domain/imports/course-draft.js';
import type { ImportedPart } from '../../domain/imports/import-record.js';
import { judgementBuilder } from '../../domain/imports/judgement.js';
import type { Judgement } from '../../domain/imports/judgement.js';
import { appendAuditEvents } from '../../storage/audit/audit-trail.js';
import type { UnchainedEvent } from '../../storage/audit/audit-trail.js';
import type { Executor } from '../../storage/connection.js';
import { insertImportedParts } from '../../storage/imports/imports.js';
import { writeAgain } from '../../storage/written.js';
import type { Context, TeamMember } from '../context.js';
import { applyCourse } from './apply-course.js';
import { roomForOthers } from './long-work.js';
import type { Progress } from './long-work.js';
import type { IsOvertaken } from './overtaken.js';
import { partsOf, saidOf } from './trial.js';
import type { Trial } from './trial.js';

const COURSES_AT_ONCE = 50;
const EVENTS_AT_ONCE = 200;

/**
 * Carries out what a trial has put by, in the transaction that is given: the record is as the trial found it, but for the
 * people whom others have changed meanwhile. Their courses are judged anew, as are unusual ones that were confirmed.
 */
export async function carryOut(
  context: Context,
  actor: TeamMember,
  trx: Executor,
  {
    importId,
    trial,
    isOvertaken,
    confirmsUnusual,
  }: {
    readonly importId: string;
    readonly trial: Trial;
    readonly isOvertaken: IsOvertaken;
    readonly confirmsUnusual: boolean;
  },
  progress: Progress,
): Promise<Judgement> {
  const now = context.clock.now();
  const atNow = (value: unknown): unknown => (value === trial.triedAt ? now : value);
  const options = { mapping: trial.mapping, confirmsUnusual };
  // Whoever is judged anew is so in all their further courses: each finds what came before.
  const anew = new Set<string>();
  const judged = judgementBuilder();
  for (const row of trial.aside) judged.add(row);
  let [events, parts, done]: [UnchainedEvent[], ImportedPart[], number] = [[], [], 0];
  const tellAll = async (): Promise<void> => {
    for (let start = 0; start < events.length; start += EVENTS_AT_ONCE)
      await appendAuditEvents(trx, events.slice(start, start + EVENTS_AT_ONCE));
    await insertImportedParts(trx, importId, parts);
    [events, parts] = [[], []];
  };
  for (const tried of trial.courses()) {
    const { course } = tried;
    const person = personKey(course.key);
    const isConfirmed = confirmsUnusual && tried.said.verdict === 'unusual';
    if (anew.has(person) || isConfirmed || isOvertaken({ key: course.key, patientId: tried.patientId })) {
      anew.add(person);
      await tellAll();
      const applied = await applyCourse(context, actor, trx, course, options);
      parts.push(...partsOf(applied));
      judged.addCourse(course.rowNumbers, saidOf(applied));
    } else {
      for (const { sql, parameters } of tried.written)
        await writeAgain(trx, { sql, parameters: parameters.map(atNow) });
      events.push(...tried.told.map((event) => ({ ...event, occurredAt: now })));
      parts.push(...tried.parts);
      judged.addCourse(course.rowNumbers, tried.said);
    }
    done += 1;
    if (done % COURSES_AT_ONCE > 0) continue;
    await tellAll();
    progress(done, trial.whose.length);
    await roomForOthers();
  }
  await tellAll();
  progress(done, trial.whose.length);
  return judged.build();
}
