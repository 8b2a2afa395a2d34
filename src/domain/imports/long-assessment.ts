import type {
  AssessmentEntry,
  QuestionnaireEntry,
  SitToStandEntry,
  WalkTestEntry,
} from '../assessment/assessment.js';
import { questionnaireOf } from '../measures/catalogue.js';
import { SIT_TO_STAND_TESTS, WALK_TESTS } from '../measures/registered.js';
import { standEntry, walkEntry } from './assessment-of-row.js';
import type { Sourced } from './course-draft.js';
import { groupBy } from './group-by.js';
import type { Measurement } from './long-course.js';

/** What was measured of a person at one timepoint on one day. */
export type Visit = readonly [Measurement, ...Measurement[]];

/** The assessment that the rows of one visit make together. */
export function assessmentOfVisit(visit: Visit, siteId: string): Sourced<AssessmentEntry> {
  const [{ timepoint, assessedOn, rowNumber }] = visit;
  const [walks, stands, questionnaires] = [
    visit.flatMap(walkOf),
    visit.flatMap(standOf),
    questionnairesOf(visit),
  ];
  const part: AssessmentEntry = {
    timepoint,
    assessedOn,
    siteId,
    heightCm: null,
    weightKg: null,
    spirometry: null,
    resting: null,
    safetyScreen: 'not-recorded',
    safetyNote: null,
    safetyFindings: [],
    walkTests: walks.map(({ entry }) => entry),
    sitToStands: stands.map(({ entry }) => entry),
    questionnaires: questionnaires.map(({ entry }) => entry),
    physicalTests: [],
    notes: null,
    confirmed: [],
  };
  const places = [
    ...walks.flatMap(({ rows }, index) => placesOfWalk(`/walkTests/${index}`, rows)),
    ...stands.flatMap(({ rows }, index) => placesAt(`/sitToStands/${index}`, 'long.value', rows)),
    ...questionnaires.flatMap(({ rows, scored }, index) =>
      placesOfScores(`/questionnaires/${index}`, rows, scored),
    ),
  ];
  return {
    part,
    from: {
      columns: {
        '/assessedOn': 'long.assessedOn',
        ...Object.fromEntries(places.map(({ pointer, columnId }) => [pointer, columnId])),
      },
      rows: { '': rowNumber, ...Object.fromEntries(places.map(({ pointer, row }) => [pointer, row])) },
    },
  };
}

/** An entry with the rows that it comes from. */
interface FromRows<Entry> {
  readonly entry: Entry;
  readonly rows: Visit;
}

/** Where a value of an assessment stands in the sheet. */
interface Place {
  readonly pointer: string;
  readonly columnId: string;
  readonly row: number;
}

function placesAt(pointer: string, columnId: string, [{ rowNumber }]: Visit): readonly Place[] {
  return [{ pointer, columnId, row: rowNumber }];
}

function placesOfWalk(pointer: string, rows: Visit): readonly Place[] {
  return [...placesAt(pointer, 'long.value', rows), ...placesAt(`${pointer}/attempt`, 'long.attempt', rows)];
}

function placesOfScores(pointer: string, rows: Visit, scored: readonly Measurement[]): readonly Place[] {
  const named = rows.find(({ form }) => form !== null) ?? rows[0];
  return [
    ...placesAt(pointer, 'long.value', rows),
    ...placesAt(`${pointer}/form`, 'long.form', [named]),
    ...scored.flatMap((score, index) => placesAt(`${pointer}/typedScores/${index}`, 'long.value', [score])),
  ];
}

function walkOf(row: Measurement): readonly FromRows<WalkTestEntry>[] {
  const { measure, attempt, result, notDoneReason } = row;
  const test = WALK_TESTS.find((each) => each.measure.id === measure.id);
  if (test === undefined) return [];
  return [{ entry: walkEntry(test, attempt, result, notDoneReason), rows: [row] }];
}

function standOf(row: Measurement): readonly FromRows<SitToStandEntry>[] {
  const { measure, result, notDoneReason } = row;
  const test = SIT_TO_STAND_TESTS.find((each) => each.measure.id === measure.id);
  if (test === undefined) return [];
  return [{ entry: standEntry(test.id, measure.unit === 's', result, notDoneReason), rows: [row] }];
}

function questionnairesOf(
  visit: Visit,
): readonly (FromRows<QuestionnaireEntry> & { readonly scored: readonly Measurement[] })[] {
  const scored = visit.filter(({ measure }) => questionnaireOf(measure.id) !== undefined);
  return groupBy(scored, ({ measure }) => questionnaireOf(measure.id)?.id ?? '').map((rows) => {
    const withResult = rows.filter(({ result }) => result !== null);
    const typedScores = rows.flatMap(({ measure, result }) =>
      result === null ? [] : [{ measure: measure.id, value: result }],
    );
    const [{ measure, notDoneReason }] = rows;
    const entry: QuestionnaireEntry = {
      questionnaire: questionnaireOf(measure.id)?.id ?? '',
      form: rows.find(({ form }) => form !== null)?.form ?? null,
      items: null,
      typedScores,
      notDoneReason: typedScores.length === 0 ? notDoneReason : null,
    };
    return { entry, rows, scored: withResult };
  });
}
