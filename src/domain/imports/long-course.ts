import type { PlainDate } from '../calendar/plain-date.js';
import { findMeasure } from '../measures/catalogue.js';
import type { Measure } from '../measures/measure.js';
import type { NotDoneReason, Timepoint } from '../referral/closed-sets.js';
import type { CourseDraft } from './course-draft.js';
import type { MissingValue } from './course-of-row.js';
import { groupBy } from './group-by.js';
import { assessmentOfVisit } from './long-assessment.js';
import { readResult } from './read-row.js';
import type { ReadRow } from './read-row.js';
import { rowValues } from './row-values.js';

/** One measurement of a person who is in the record: a row of the long form. */
export interface Measurement {
  readonly rowNumber: number;
  readonly nhsNumber: string;
  readonly receivedOn: PlainDate;
  readonly timepoint: Timepoint;
  readonly assessedOn: PlainDate;
  readonly measure: Measure;
  readonly attempt: 1 | 2;
  readonly form: string | null;
  readonly result: number | null;
  readonly notDoneReason: NotDoneReason | null;
}

const NEEDED = {
  'person.nhsNumber': 'The NHS number is missing.',
  'referral.receivedOn': 'The date on which the referral was received is missing.',
  'long.timepoint': 'The timepoint is missing.',
  'long.assessedOn': 'The date of the measurement is missing.',
  'long.measure': 'What was measured is missing.',
  'long.value': 'The value is missing.',
};

/** Reads a row of the long form. */
export function measurementOf(read: ReadRow): {
  readonly measurement: Measurement | null;
  readonly missing: readonly MissingValue[];
} {
  const row = rowValues(read.values);
  const missing = Object.entries(NEEDED)
    .filter(([columnId]) => !row.has(columnId))
    .map(([columnId, message]) => ({ columnId, message }));
  const measure = findMeasure(row.text('long.measure') ?? '');
  const [nhsNumber, receivedOn, assessedOn] = [
    row.text('person.nhsNumber'),
    row.date('referral.receivedOn'),
    row.date('long.assessedOn'),
  ];
  const timepoint = row.code<Timepoint>('long.timepoint');
  if (
    measure === undefined ||
    nhsNumber === null ||
    receivedOn === null ||
    assessedOn === null ||
    timepoint === null
  ) {
    return { measurement: null, missing };
  }
  const attempt = row.number('long.attempt') ?? 1;
  if (attempt !== 1 && attempt !== 2)
    return { measurement: null, missing: [{ columnId: 'long.attempt', message: 'The attempt is 1 or 2.' }] };
  const reading = readResult(row.text('long.value'), { unit: measure.unit, isInFeet: false });
  if (reading.kind !== 'value') {
    const message = reading.kind === 'wrong' ? reading.message : NEEDED['long.value'];
    return { measurement: null, missing: [{ columnId: 'long.value', message }] };
  }
  const { value } = reading;
  return {
    missing,
    measurement: {
      rowNumber: read.number,
      nhsNumber,
      receivedOn,
      timepoint,
      assessedOn,
      measure,
      attempt,
      form: row.text('long.form'),
      result: typeof value === 'number' ? value : null,
      notDoneReason: typeof value === 'object' ? value.notDone : null,
    },
  };
}

/** Puts the measurements of each person together, by referral: one assessment for each timepoint and day. */
export function longPeople(
  measurements: readonly Measurement[],
  siteId: string,
): { readonly people: readonly (() => readonly CourseDraft[])[]; readonly courseCount: number } {
  const ofPeople = groupBy(measurements, ({ nhsNumber }) => nhsNumber);
  const referrals = (rows: readonly Measurement[]) => groupBy(rows, ({ receivedOn }) => receivedOn);
  return {
    people: ofPeople.map(
      (rows) => () =>
        [...referrals(rows)]
          .sort(([one], [other]) => (one.receivedOn < other.receivedOn ? -1 : 1))
          .map((ofReferral) => courseOf(ofReferral, siteId)),
    ),
    courseCount: ofPeople.reduce(
      (sum, rows) => sum + new Set(rows.map(({ receivedOn }) => receivedOn)).size,
      0,
    ),
  };
}

function courseOf(rows: readonly [Measurement, ...Measurement[]], siteId: string): CourseDraft {
  const [{ nhsNumber, receivedOn }] = rows;
  const visits = groupBy(rows, ({ timepoint, assessedOn }) => `${timepoint} ${assessedOn}`);
  return {
    rowNumbers: rows.map(({ rowNumber }) => rowNumber),
    person: null,
    referral: null,
    triage: null,
    sessions: null,
    closure: null,
    assessments: visits.map((visit) => assessmentOfVisit(visit, siteId)),
    key: { nhsNumber, familyName: '', givenName: '', bornOn: '', receivedOn },
  };
}
