import type { AssessmentEntry, QuestionnaireEntry, WalkTestEntry } from '../assessment/assessment.js';
import { TIMEPOINTS } from '../referral/closed-sets.js';
import type { Timepoint } from '../referral/closed-sets.js';
import { PERSON_FIELDS } from './assessment-column-ids.js';
import type { Sourced, WideGroup } from './course-draft.js';

/** Column id by JSON Pointer. */
type Columns = Readonly<Record<string, string>>;

/**
 * The columns that the fields of a part come from, by JSON Pointer. Those of a wide row follow from the part, and are worked
 * out only where something in it is refused.
 */
export function columnsOfPart({ part, from }: Sourced<object>): Columns {
  if (typeof from !== 'string') return from.columns;
  return isTimepoint(from) ? columnsOfAssessment(from, part as AssessmentEntry) : columnsOfFields(from, part);
}

function isTimepoint(group: WideGroup): group is Timepoint {
  return (TIMEPOINTS as readonly string[]).includes(group);
}

type Named = readonly (readonly [pointer: string, columnId: string])[];

/** Fields have columns of their names, but for places: those are named in a sheet. */
function columnsOfFields(group: WideGroup, part: object): Columns {
  const named: Named = Object.keys(part).map((field) => [`/${field}`, `${group}.${field}`]);
  const places: Named = [
    ['/siteId', 'referral.site'],
    ['/commissionerId', 'referral.commissioner'],
  ];
  return Object.fromEntries([...named, ...(group === 'referral' ? places : [])]);
}

function columnsOfAssessment(timepoint: Timepoint, entry: AssessmentEntry): Columns {
  const at = (part: string): string => `${timepoint}.${part}`;
  const { own, spirometry, resting } = PERSON_FIELDS;
  const named: Named = [
    ['/assessedOn', at('assessedOn')],
    ['/siteId', at('site')],
    ...own.map((field) => [`/${field}`, at(field)] as const),
    ...spirometry.map((field) => [`/spirometry/${field}`, at(field)] as const),
    ...resting.map((field) => [`/resting/${field}`, at(field)] as const),
    ...entry.walkTests.flatMap((walk, index) => columnsOfWalk(at, walk, index)),
    ...entry.sitToStands.flatMap(({ test }, index) =>
      ['', '/repetitions', '/timeS'].map(
        (field) => [`/sitToStands/${index}${field}`, at(`stand.${test}`)] as const,
      ),
    ),
    ...entry.questionnaires.flatMap((each, index) => columnsOfScores(at, each, index)),
  ];
  return Object.fromEntries(named);
}

function columnsOfWalk(at: (part: string) => string, walk: WalkTestEntry, index: number): Named {
  const pointer = `/walkTests/${index}`;
  return [
    ...['', '/distanceM', '/timeS', '/attempt'].map(
      (field) => [`${pointer}${field}`, at(`walk.${walk.test}.${walk.attempt}`)] as const,
    ),
    [`${pointer}/speedLevel`, at(`walk.${walk.test}.speedLevel`)],
    ...['courseLengthM', 'walkingAid', 'oxygenLPerMin'].map(
      (field) => [`${pointer}/${field}`, at(`walk.${field}`)] as const,
    ),
  ];
}

function columnsOfScores(at: (part: string) => string, entry: QuestionnaireEntry, index: number): Named {
  const pointer = `/questionnaires/${index}`;
  return [
    [`${pointer}/form`, at(`form.${entry.questionnaire}`)],
    ...entry.typedScores.flatMap(({ measure }, position) =>
      ['', '/value'].map(
        (field) => [`${pointer}/typedScores/${position}${field}`, at(`score.${measure}`)] as const,
      ),
    ),
  ];
}
