import { describe, expect, it } from 'vitest';
import { COLUMNS, findColumn } from '../../../src/domain/imports/columns.js';
import { columnsOfPart } from '../../../src/domain/imports/columns-of-part.js';
import { mapColumns, NO_CHOICES } from '../../../src/domain/imports/mapping.js';
import { rowReader } from '../../../src/domain/imports/read-row.js';
import { wideCourse } from '../../../src/domain/imports/wide-course.js';
import type { ColumnKind } from '../../../src/domain/imports/column.js';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';

/** Something that a column of each kind takes. */
function cellOf(kind: ColumnKind): string {
  switch (kind.type) {
    case 'date':
      return '13/03/2026';
    case 'nhs-number':
      return '9990001006';
    case 'code':
      return Object.keys(kind.codes)[0] ?? '';
    case 'place':
      return 'Dune Hall';
    case 'text':
    case 'number':
    case 'result':
      return '1';
  }
}

describe('the columns that a part of a wide row comes from', () => {
  const wide = COLUMNS.filter(({ id }) => !id.startsWith('long.'));
  const mapping = mapColumns(
    wide.map(({ id }) => id),
    NO_CHOICES,
  );
  const row = { number: 2, cells: wide.map(({ kind }) => cellOf(kind)) };
  const today = plainDate('2026-11-27');
  const places = [{ id: 'dune-hall', name: 'Dune Hall' }];
  const read = rowReader(mapping, [row], { today, sites: places, commissioners: places })(row);
  const { course } = wideCourse(read, { siteId: null, today });
  const parts = [course?.person, course?.referral, course?.triage, course?.sessions, course?.closure];
  const named = [...parts, ...(course?.assessments ?? [])].flatMap((part) =>
    part === undefined || part === null ? [] : [columnsOfPart(part)],
  );

  it('are named for every part of a row that says everything', () => {
    expect(read.faults).toEqual([]);
    expect(named).toHaveLength(8);
  });

  it('are columns that the import knows, but for a speed or a form of tests that have none', () => {
    const unknown = named.flatMap((columns) =>
      Object.values(columns).filter((id) => findColumn(id) === undefined),
    );
    expect(unknown.filter((id) => !/\.speedLevel$|\.form\./.test(id))).toEqual([]);
  });

  it('are those of the values that were read', () => {
    const [person, referral] = named;
    expect(person?.['/bornOn']).toBe('person.bornOn');
    expect(referral?.['/siteId']).toBe('referral.site');
    const baseline = named.find((columns) => columns['/assessedOn'] === 'baseline.assessedOn');
    expect(baseline).toMatchObject({
      '/siteId': 'baseline.site',
      '/heightCm': 'baseline.heightCm',
      '/spirometry/fev1L': 'baseline.fev1L',
      '/resting/spo2Percent': 'baseline.spo2Percent',
      '/walkTests/1/distanceM': 'baseline.walk.endurance-shuttle-walk.2',
      '/sitToStands/0/timeS': 'baseline.stand.five-repetition-sit-to-stand',
    });
  });
});
