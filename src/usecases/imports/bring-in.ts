import { personKey } from '../../domain/imports/course-draft.js';
import type { CourseDraft } from '../../domain/imports/course-draft.js';
import type { ImportedPart } from '../../domain/imports/import-record.js';
import { judgementOf } from '../../domain/imports/judgement.js';
import type { JudgedRow, Judgement } from '../../domain/imports/judgement.js';
import { readSheet } from '../../domain/imports/read-sheet.js';
import type { SheetReading } from '../../domain/imports/read-sheet.js';
import type { Executor } from '../../storage/connection.js';
import { commissionersOfTeam, sitesOfTeam } from '../../storage/providers/providers.js';
import type { Context, TeamMember } from '../context.js';
import { applyCourse } from './apply-course.js';
import type { AppliedCourse, ApplyOptions } from './apply-course.js';
import type { MappedSheet } from './open-sheet.js';

/** Is told how many of how many rows are done. */
export type Progress = (done: number, of: number) => void;

/** What bringing a sheet in gave: a verdict for every row, and what was written. */
export interface BroughtIn {
  readonly judgement: Judgement;
  readonly parts: readonly ImportedPart[];
}

/** Courses in one transaction of a trial; those of one person are never parted. */
const COURSES_IN_ONE_TRIAL = 50;

/** A trial has shown what it was for; nothing of it is kept. */
class TrialOver extends Error {}

/**
 * Judges every row of a sheet by bringing it in for trial, some rows at a time: by the same rules, against the record as it
 * is, with nothing kept, and with room for other work in between.
 */
export async function judgeSheet(
  context: Context,
  actor: TeamMember,
  sheet: MappedSheet,
  options: ApplyOptions,
  progress: Progress = () => {},
): Promise<Judgement> {
  const reading = await readRows(context, actor, sheet);
  const applied: Applied[] = [];
  for (const courses of inTrials(reading.courses)) {
    try {
      await context.db.transaction().execute(async (trx) => {
        applied.push(...(await applyAll(context, actor, trx, courses, options)));
        throw new TrialOver();
      });
    } catch (error) {
      if (!(error instanceof TrialOver)) throw error;
    }
    progress(applied.length, reading.courses.length);
    await roomForOthers();
  }
  return judgement(reading, applied);
}

/** Brings the rows of a sheet in, in the transaction that is given. */
export async function bringIn(
  context: Context,
  actor: TeamMember,
  trx: Executor,
  reading: SheetReading,
  options: ApplyOptions,
  progress: Progress = () => {},
): Promise<BroughtIn> {
  const applied: Applied[] = [];
  for (const courses of inTrials(reading.courses)) {
    applied.push(...(await applyAll(context, actor, trx, courses, options)));
    progress(applied.length, reading.courses.length);
    await roomForOthers();
  }
  const parts = applied.flatMap(({ outcome }) => (outcome.kind === 'refused' ? [] : outcome.parts));
  return { judgement: judgement(reading, applied), parts };
}

interface Applied {
  readonly course: CourseDraft;
  readonly outcome: AppliedCourse;
}

/** Reads the rows of a sheet with what the team's places are called; not inside a transaction, which would wait for itself. */
export async function readRows(
  context: Context,
  actor: TeamMember,
  { sheet, mapping }: MappedSheet,
): Promise<SheetReading> {
  const sites = await sitesOfTeam(context.db, actor.teamId);
  const commissioners = await commissionersOfTeam(context.db, actor.teamId);
  return readSheet(mapping, sheet.rows, { today: context.clock.today(), sites, commissioners });
}

async function applyAll(
  context: Context,
  actor: TeamMember,
  trx: Executor,
  courses: readonly CourseDraft[],
  options: ApplyOptions,
): Promise<readonly Applied[]> {
  const applied: Applied[] = [];
  for (const course of courses) {
    applied.push({ course, outcome: await applyCourse(context, actor, trx, course, options) });
  }
  return applied;
}

/** The courses of one person stand together, earliest first, so that each finds what came before. */
function inTrials(courses: readonly CourseDraft[]): readonly (readonly CourseDraft[])[] {
  const people = new Map<string, CourseDraft[]>();
  for (const course of courses) {
    const key = personKey(course.key);
    const others = people.get(key);
    if (others === undefined) people.set(key, [course]);
    else others.push(course);
  }
  const trials: CourseDraft[][] = [];
  for (const ofPerson of people.values()) {
    ofPerson.sort((one, other) => (one.key.receivedOn < other.key.receivedOn ? -1 : 1));
    const last = trials.at(-1);
    if (last === undefined || last.length + ofPerson.length > COURSES_IN_ONE_TRIAL)
      trials.push([...ofPerson]);
    else last.push(...ofPerson);
  }
  return trials;
}

function judgement(reading: SheetReading, applied: readonly Applied[]): Judgement {
  return judgementOf([
    ...reading.passedOver.map(({ number, why }): JudgedRow => ({
      number,
      verdict: 'passed-over',
      faults: [],
      passedOver: why,
    })),
    ...reading.faulty.map(({ number, faults }): JudgedRow => ({
      number,
      verdict: 'refused',
      faults,
      passedOver: null,
    })),
    ...applied.flatMap(({ course, outcome }) =>
      course.rowNumbers.map((number): JudgedRow => {
        if (outcome.kind !== 'refused')
          return { number, verdict: outcome.kind, faults: [], passedOver: null };
        return {
          number,
          verdict: outcome.isUnusual ? 'unusual' : 'refused',
          faults: outcome.faults,
          passedOver: null,
        };
      }),
    ),
  ]);
}

async function roomForOthers(): Promise<void> {
  await new Promise<void>((resolve) => {
    setImmediate(resolve);
  });
}
