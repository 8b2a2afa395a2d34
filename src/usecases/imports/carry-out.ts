import type { CourseDraft } from '../../domain/imports/course-draft.js';
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
import { partsOf, saidOf } from './trial.js';
import type { Trial, TriedCourse } from './trial.js';

const EVENTS_AT_ONCE = 200;

/** Carries out what a trial has put by, a course at a time, in the transactions that it is given. */
export interface Carrier {
  /** Writes again what the trial of a course wrote, with the time that it is now. */
  readonly write: (trx: Executor, tried: TriedCourse) => Promise<void>;
  /** Brings a course in by the rules of the record as it is now. */
  readonly judgeAnew: (trx: Executor, course: CourseDraft) => Promise<void>;
  /** Tells the trail of what was written since it was last called: before each of the transactions ends. */
  readonly tell: (trx: Executor) => Promise<void>;
  /** What became of the rows so far, those that belong to no course included. */
  readonly judgement: () => Judgement;
}

/** A carrier of one import. */
export function carrierOf(
  context: Context,
  actor: TeamMember,
  {
    importId,
    trial,
    confirmsUnusual,
  }: { readonly importId: string; readonly trial: Trial; readonly confirmsUnusual: boolean },
): Carrier {
  const now = context.clock.now();
  const atNow = (value: unknown): unknown => (value === trial.triedAt ? now : value);
  const options = { mapping: trial.mapping, confirmsUnusual };
  const judged = judgementBuilder();
  for (const row of trial.aside) judged.add(row);
  let [events, parts]: [UnchainedEvent[], ImportedPart[]] = [[], []];
  const tell = async (trx: Executor): Promise<void> => {
    for (let start = 0; start < events.length; start += EVENTS_AT_ONCE)
      await appendAuditEvents(trx, events.slice(start, start + EVENTS_AT_ONCE));
    await insertImportedParts(trx, importId, parts);
    [events, parts] = [[], []];
  };
  return {
    write: async (trx, tried) => {
      for (const { sql, parameters } of tried.written)
        await writeAgain(trx, { sql, parameters: parameters.map(atNow) });
      events.push(...tried.told.map((event) => ({ ...event, occurredAt: now })));
      parts.push(...tried.parts);
      judged.addCourse(tried.course.rowNumbers, tried.said);
    },
    judgeAnew: async (trx, course) => {
      // The rules tell the trail themselves, after what was told before.
      await tell(trx);
      const applied = await applyCourse(context, actor, trx, course, options);
      parts.push(...partsOf(applied));
      judged.addCourse(course.rowNumbers, saidOf(applied));
    },
    tell,
    judgement: judged.build,
  };
}
