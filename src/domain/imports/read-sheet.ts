import type { SheetRow } from './cell.js';
import { personKey } from './course-draft.js';
import type { CourseDraft, CourseKey } from './course-draft.js';
import type { MissingValue } from './course-of-row.js';
import { longPeople, measurementOf } from './long-course.js';
import type { Measurement } from './long-course.js';
import { mappedColumn } from './mapping.js';
import type { Mapping } from './mapping.js';
import { rowReader } from './read-row.js';
import type { CellFault, ReadContext, ReadRow } from './read-row.js';
import { passedOver } from './row-kind.js';
import type { PassedOver } from './row-kind.js';
import { wideCourse } from './wide-course.js';

/** A row that cannot be taken as it stands. */
export interface FaultyRow {
  readonly number: number;
  readonly faults: readonly CellFault[];
}

/** The courses of one person, earliest first, so that each finds what came before; made when they are asked for. */
export type PersonReading = () => readonly CourseDraft[];

/** A sheet as it was read: every row is in exactly one of the three. */
export interface SheetReading {
  /** All courses at once would fill the memory. */
  readonly people: readonly PersonReading[];
  readonly courseCount: number;
  readonly faulty: readonly FaultyRow[];
  readonly passedOver: readonly { readonly number: number; readonly why: PassedOver }[];
}

const IDENTIFYING = ['person.nhsNumber', 'person.bornOn', 'referral.receivedOn'];

const ROWS_BETWEEN_PAUSES = 50;

/**
 * Reads every row below the headings of a sheet; stops now and then, so that whoever reads a long one can let others work.
 *
 * @param rows the rows below the headings
 */
export function* readSheet(
  mapping: Mapping,
  rows: readonly SheetRow[],
  context: ReadContext,
): Generator<undefined, SheetReading> {
  const names = mapping.columns.map(({ heading }) => heading);
  const identifying = IDENTIFYING.flatMap((id) => mappedColumn(mapping, id)?.position ?? []);
  const reader = rowReader(mapping, rows, context);
  const wideRows = new Map<string, WideRow[]>();
  const measurements: Measurement[] = [];
  const faulty: FaultyRow[] = [];
  const over: { number: number; why: PassedOver }[] = [];
  const seen = new Map<string, number>();
  for (const [index, row] of rows.entries()) {
    if (index % ROWS_BETWEEN_PAUSES === ROWS_BETWEEN_PAUSES - 1) yield;
    const why = passedOver(row, names, identifying);
    if (why !== null) {
      over.push({ number: row.number, why });
      continue;
    }
    const read = reader(row);
    const { found, missing } = mapping.shape === 'wide' ? wideFound(read, mapping, context) : longFound(read);
    const faults = [
      ...read.faults,
      ...missing.filter((each) => !isToldAlready(mapping, each, read)).map((each) => atColumn(mapping, each)),
    ];
    if (found === null || faults.length > 0) {
      faulty.push({ number: row.number, faults });
      continue;
    }
    const first = seen.get(found.key);
    if (first !== undefined) {
      faulty.push({
        number: row.number,
        faults: [{ heading: null, value: '', message: `Row ${first} says the same already.` }],
      });
      continue;
    }
    seen.set(found.key, row.number);
    if (found.kind === 'measurement') measurements.push(found.measurement);
    else pushTo(wideRows, personKey(found.courseKey), { row, receivedOn: found.courseKey.receivedOn });
  }
  const courseOf = (row: SheetRow): readonly CourseDraft[] => {
    const { course } = wideCourse(reader(row), { siteId: mapping.siteId, today: context.today });
    return course === null ? [] : [course];
  };
  const long = longPeople(measurements, mapping.siteId ?? '');
  return {
    people: [
      ...[...wideRows.values()].map((ofPerson) => () => inOrder(ofPerson).flatMap(courseOf)),
      ...long.people,
    ],
    courseCount: [...wideRows.values()].reduce((sum, ofPerson) => sum + ofPerson.length, long.courseCount),
    faulty,
    passedOver: over,
  };
}

/** A row that holds a course; it is read again when the course is wanted. */
interface WideRow {
  readonly row: SheetRow;
  readonly receivedOn: string;
}

function inOrder(rows: readonly WideRow[]): readonly SheetRow[] {
  return [...rows].sort((one, other) => (one.receivedOn < other.receivedOn ? -1 : 1)).map(({ row }) => row);
}

function pushTo<Value>(lists: Map<string, Value[]>, key: string, value: Value): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [value]);
  else list.push(value);
}

type Found =
  | { readonly kind: 'course'; readonly key: string; readonly courseKey: CourseKey }
  | { readonly kind: 'measurement'; readonly key: string; readonly measurement: Measurement };

function wideFound(
  read: ReadRow,
  { siteId }: Mapping,
  { today }: ReadContext,
): { found: Found | null; missing: readonly MissingValue[] } {
  const { course, missing } = wideCourse(read, { siteId, today });
  if (course === null) return { found: null, missing };
  return {
    found: {
      kind: 'course',
      key: `${personKey(course.key)} ${course.key.receivedOn}`,
      courseKey: course.key,
    },
    missing,
  };
}

function longFound(read: ReadRow): { found: Found | null; missing: readonly MissingValue[] } {
  const { measurement, missing } = measurementOf(read);
  if (measurement === null) return { found: null, missing };
  const { nhsNumber, receivedOn, timepoint, assessedOn, measure, attempt } = measurement;
  const key = [nhsNumber, receivedOn, timepoint, assessedOn, measure.id, attempt].join(' ');
  return { found: { kind: 'measurement', key, measurement }, missing };
}

/** A value that could not be read is not missing as well. */
function isToldAlready(mapping: Mapping, { columnId }: MissingValue, read: ReadRow): boolean {
  const heading = mappedColumn(mapping, columnId)?.heading;
  return heading !== undefined && read.faults.some((fault) => fault.heading === heading);
}

function atColumn(mapping: Mapping, { columnId, message }: MissingValue): CellFault {
  return { heading: mappedColumn(mapping, columnId)?.heading ?? null, value: '', message };
}
