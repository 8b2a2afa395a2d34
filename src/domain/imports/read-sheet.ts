import type { SheetRow } from './cell.js';
import { personKey } from './course-draft.js';
import type { CourseDraft } from './course-draft.js';
import type { MissingValue } from './course-of-row.js';
import { longCourses, measurementOf } from './long-course.js';
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

/** A sheet as it was read: every row is in exactly one of the three. */
export interface SheetReading {
  readonly courses: readonly CourseDraft[];
  readonly faulty: readonly FaultyRow[];
  readonly passedOver: readonly { readonly number: number; readonly why: PassedOver }[];
}

const IDENTIFYING = ['person.nhsNumber', 'person.bornOn', 'referral.receivedOn'];

/**
 * Reads every row below the headings of a sheet.
 *
 * @param rows the rows below the headings
 */
export function readSheet(mapping: Mapping, rows: readonly SheetRow[], context: ReadContext): SheetReading {
  const names = mapping.columns.map(({ heading }) => heading);
  const identifying = IDENTIFYING.flatMap((id) => mappedColumn(mapping, id)?.position ?? []);
  const reader = rowReader(mapping, rows, context);
  const courses: CourseDraft[] = [];
  const measurements: Measurement[] = [];
  const faulty: FaultyRow[] = [];
  const over: { number: number; why: PassedOver }[] = [];
  const seen = new Map<string, number>();
  for (const row of rows) {
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
    if (found.kind === 'course') courses.push(found.course);
    else measurements.push(found.measurement);
  }
  return {
    courses: [...courses, ...longCourses(measurements, mapping.siteId ?? '')],
    faulty,
    passedOver: over,
  };
}

type Found =
  | { readonly kind: 'course'; readonly key: string; readonly course: CourseDraft }
  | { readonly kind: 'measurement'; readonly key: string; readonly measurement: Measurement };

function wideFound(
  read: ReadRow,
  { siteId }: Mapping,
  { today }: ReadContext,
): { found: Found | null; missing: readonly MissingValue[] } {
  const { course, missing } = wideCourse(read, { siteId, today });
  if (course === null) return { found: null, missing };
  return {
    found: { kind: 'course', key: `${personKey(course.key)} ${course.key.receivedOn}`, course },
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
