import { ASSESSMENT_COLUMNS } from './assessment-columns.js';
import type { Column } from './column.js';
import { COURSE_COLUMNS } from './course-columns.js';
import { LONG_COLUMNS } from './long-columns.js';
import { PERSON_COLUMNS } from './person-columns.js';

/** Every column that the import knows. */
export const COLUMNS: readonly Column[] = [
  ...PERSON_COLUMNS,
  ...COURSE_COLUMNS,
  ...ASSESSMENT_COLUMNS,
  ...LONG_COLUMNS,
];

const byId = new Map(COLUMNS.map((each) => [each.id, each]));

/** The column with this id; undefined where there is none. */
export function findColumn(id: string): Column | undefined {
  return byId.get(id);
}
