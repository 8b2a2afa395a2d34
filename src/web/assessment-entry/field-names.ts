/** Names of the fields of an assessment's form: those of a draft as well. */

/** Walks of further tests: the page has room for one more each time that it is asked for, and for those that came in otherwise. */
export const MORE_WALKS = ['more1', 'more2', 'more3', 'more4', 'more5', 'more6', 'more7'] as const;
export type MoreWalk = (typeof MORE_WALKS)[number];

/** Before the fields of an attempt at the walk test of the visit, of an endurance walk beside it, and of further walks. */
export const ATTEMPTS = ['walk1', 'walk2', 'endurance', ...MORE_WALKS] as const;
export type AttemptName = (typeof ATTEMPTS)[number];

/** Before the fields of the sit-to-stand test of the visit, and of further ones, which the page does not ask for. */
export const STANDS = ['sitToStand', 'sitToStand2', 'sitToStand3'] as const;
export type StandName = (typeof STANDS)[number];

/** The test of an endurance walk: its speed follows from the walk before it. */
export const ENDURANCE_TEST = 'endurance-shuttle-walk';

/** What the walks of a visit have in common, unless one of them has a value of its own. */
export const SHARED_WALK_FIELDS = ['place', 'courseLengthM', 'walkingAid', 'oxygenLPerMin'] as const;
export type SharedWalkField = (typeof SHARED_WALK_FIELDS)[number];

/** Numbers among them; of a walk beside the first, a box says that one was not recorded. */
export const SHARED_NUMBERS = ['oxygenLPerMin', 'courseLengthM'] as const;
/** Chosen as the aid of such a walk where none was recorded, since nothing chosen is as in the first walk. */
export const AID_NOT_RECORDED = 'not-recorded';

/** Numbers of one attempt, apart from its result. */
export const MEASURED_IN_WALK = [
  'startSpo2Percent',
  'lowestSpo2Percent',
  'startHeartRateBpm',
  'peakHeartRateBpm',
  'startBreathlessness',
  'endBreathlessness',
  'startFatigue',
  'endFatigue',
  'stops',
] as const;

/** Numbers that give the result of one attempt; which of them, the test decides. */
export const RESULT_OF_WALK = ['distanceM', 'level', 'shuttles', 'timeS', 'speedLevel'] as const;

/** The field of an item of a questionnaire, from 1. */
export function itemField(questionnaireId: string, item: number): string {
  return `q.${questionnaireId}.${item}`;
}

/** The field of a score that was added up by hand. */
export function scoreField(questionnaireId: string, measureId: string): string {
  return `q.${questionnaireId}.score.${measureId}`;
}

/** The field of the variant of a questionnaire. */
export function formField(questionnaireId: string): string {
  return `q.${questionnaireId}.form`;
}

/** The field of the reason why something was not done. */
export function notDoneField(part: string): string {
  return `${part}.notDoneReason`;
}

/** Which numbers were not recorded of a walk, where those of the first walk were. */
export function notRecordedField(attempt: AttemptName): string {
  return `${attempt}.notRecorded`;
}

/** The field of which sit-to-stand test it was. */
export function standTestField(stand: StandName): string {
  return `${stand}Test`;
}

/** The field of where a test was done, where that is not where the walks were. */
export function placeField(part: string): string {
  return `${part}.place`;
}

/** Ticked where an unusual value of a field is right; it holds the value that was looked at. */
export function confirmField(field: string): string {
  return `confirm.${field}`;
}

/** The version of the draft that the page was made from. */
export const DRAFT_VERSION = 'draftVersion';
/** The version of the assessment that the typing of its correction began with. */
export const BEGUN_FROM = 'begunFrom';
/** Sent by the button that asks for room for one more walk. */
export const ANOTHER_WALK = 'anotherWalk';
/** When the rest between two walks began, in milliseconds since 1970. */
export const REST_STARTED = 'restStartedAt';

/** The field of one timing of a physical test, in seconds. */
export function partField(testId: string, partId: string): string {
  return `p.${testId}.part.${partId}`;
}

/** Ticked where the person could not do a part: that is a finding, and no missing time. */
export function unableField(testId: string, partId: string): string {
  return `p.${testId}.unable.${partId}`;
}

/** The field of a result of a physical test that is typed as such; a test has one for each of its measures. */
export function valueField(testId: string, measureId: string): string {
  return `p.${testId}.value.${measureId}`;
}

/** The field of what must be the same at both ends, such as the side. */
export function conditionField(testId: string, conditionId: string): string {
  return `p.${testId}.condition.${conditionId}`;
}
