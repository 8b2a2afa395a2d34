import { cellText } from '../../domain/imports/cell.js';
import { judgementBuilder } from '../../domain/imports/judgement.js';
import type { JudgedRow, SaidOfCourse } from '../../domain/imports/judgement.js';
import { readSheet } from '../../domain/imports/read-sheet.js';
import type { PersonReading, SheetReading } from '../../domain/imports/read-sheet.js';
import { endOfTrail } from '../../storage/audit/audit-trail.js';
import type { UnchainedEvent } from '../../storage/audit/audit-trail.js';
import { commissionersOfTeam, sitesOfTeam } from '../../storage/providers/providers.js';
import { rememberReads } from '../../storage/remembered.js';
import { listenToWrites } from '../../storage/written.js';
import type { Written } from '../../storage/written.js';
import type { Context, TeamMember } from '../context.js';
import { applyCourse } from './apply-course.js';
import type { ApplyOptions } from './apply-course.js';
import { roomForOthers, sliceOfTime } from './long-work.js';
import type { Progress } from './long-work.js';
import type { MappedSheet } from './open-sheet.js';
import { partsOf, putBy, saidOf } from './trial.js';
import type { Trial, TriedCourse, TriedWhose } from './trial.js';

/** Statements that write after which a transaction of a trial ends, where its time is not over before. */
const STATEMENTS_AT_ONCE = 200;

/** A trial has shown what it was for; nothing of it is kept in the record. */
class TrialOver extends Error {}

/**
 * Tries every row of a sheet by bringing it in, some at a time: by the same rules as any other entry, against the record as
 * it is, with nothing kept in it, and with room for other work in between. What would be written is put by, so that it need
 * not be judged again when it is carried out.
 */
export async function trySheet(
  context: Context,
  actor: TeamMember,
  sheet: MappedSheet,
  progress: Progress,
): Promise<Trial> {
  const { sequence: since } = await endOfTrail(context.db);
  const { people, courseCount, faulty, passedOver } = await readRows(context, actor, sheet);
  const options: ApplyOptions = { mapping: sheet.mapping, confirmsUnusual: false };
  const [triedAt, triedOn] = [context.clock.now(), context.clock.today()];
  const atOnce: Context = { ...context, clock: { now: () => triedAt, today: () => triedOn } };
  const aside = [
    ...passedOver.map(({ number, why }): JudgedRow => ({
      ...{ number, verdict: 'passed-over', faults: [], passedOver: why, heldBack: [] },
    })),
    ...faulty.map(({ number, faults }): JudgedRow => ({
      ...{ number, verdict: 'refused', faults, passedOver: null, heldBack: [] },
    })),
  ];
  const cellsOf = cellsByRow(sheet);
  const judged = judgementBuilder();
  for (const row of aside) judged.add(row);
  const spool = context.trials.newSpool();
  const kept = putBy(spool);
  const whose: TriedWhose[] = [];
  try {
    const waiting = people[Symbol.iterator]();
    for (;;) {
      const some = await tryCourses(atOnce, actor, waiting, options);
      if (some.length === 0) break;
      for (const each of some) {
        const tried = { ...each, said: withCells(each.said, each.course.rowNumbers, cellsOf) };
        judged.addCourse(tried.course.rowNumbers, tried.said);
        kept.add(tried);
        whose.push({ key: tried.course.key, patientId: tried.patientId, verdict: tried.said.verdict });
      }
      progress(whose.length, courseCount);
      await roomForOthers();
    }
  } catch (error) {
    spool.close();
    throw error;
  }
  const { mapping } = sheet;
  const judgement = judged.build();
  return {
    ...{ judgement, aside, mapping, since, triedAt, triedOn, whose },
    courses: kept.courses,
    close: spool.close,
  };
}

/** What stands in a cell of a row; empty where nothing does. */
type CellsByRow = (number: number, heading: string) => string;

function cellsByRow({ sheet: { rows, headings } }: MappedSheet): CellsByRow {
  return (number, heading) => {
    // Rows stand in their order, blank ones left out.
    let [from, to] = [0, rows.length];
    while (from < to) {
      const middle = (from + to) >>> 1;
      if ((rows[middle]?.number ?? 0) < number) from = middle + 1;
      else to = middle;
    }
    const row = rows[from];
    return row?.number === number ? cellText(row.cells[headings.indexOf(heading)] ?? null).slice(0, 80) : '';
  };
}

/** A rule names the column that it is broken in; where its row is known, what stands there is told too. */
function withCells(
  said: SaidOfCourse,
  [number, ...others]: readonly number[],
  cellsOf: CellsByRow,
): SaidOfCourse {
  const only = others.length === 0 ? (number ?? null) : null;
  const faults = said.faults.map((fault) => {
    const row = fault.row ?? only;
    return fault.heading === null || row === null ? fault : { ...fault, value: cellsOf(row, fault.heading) };
  });
  return { ...said, faults };
}

/** Reads the rows of a sheet with what the team's places are called. */
async function readRows(
  context: Context,
  actor: TeamMember,
  { sheet, mapping }: MappedSheet,
): Promise<SheetReading> {
  const sites = await sitesOfTeam(context.db, actor.teamId);
  const commissioners = await commissionersOfTeam(context.db, actor.teamId);
  const reading = readSheet(mapping, sheet.rows, { today: context.clock.today(), sites, commissioners });
  for (;;) {
    const step = reading.next();
    if (step.done === true) return step.value;
    await roomForOthers();
  }
}

/** Tries the courses of the next people, as many as one transaction takes; those of one person are never parted. */
async function tryCourses(
  context: Context,
  actor: TeamMember,
  people: Iterator<PersonReading>,
  options: ApplyOptions,
): Promise<readonly TriedCourse[]> {
  const all: TriedCourse[] = [];
  try {
    await context.db.transaction().execute(async (trx) => {
      let [written, told]: [Written[], UnchainedEvent[]] = [[], []];
      await rememberReads(trx);
      await listenToWrites(trx, (each) => written.push(each));
      const trying: Context = { ...context, tellInstead: (event) => told.push(event) };
      const isOver = sliceOfTime();
      // One at least: where none were tried, none are left.
      for (let statements = 0; all.length === 0 || (statements < STATEMENTS_AT_ONCE && !isOver());) {
        const person = people.next();
        if (person.done === true) break;
        for (const course of person.value()) {
          [written, told] = [[], []];
          const applied = await applyCourse(trying, actor, trx, course, options);
          const isKept = applied.kind !== 'refused';
          all.push({
            ...{ course, said: saidOf(applied), patientId: applied.patientId, parts: partsOf(applied) },
            ...(isKept ? { written, told } : { written: [], told: [] }),
          });
          statements += 1 + written.length;
        }
      }
      throw new TrialOver();
    });
  } catch (error) {
    if (!(error instanceof TrialOver)) throw error;
  }
  return all;
}
