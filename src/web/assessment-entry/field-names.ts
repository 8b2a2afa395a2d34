/** Names of the fields of an assessment's form: those of a draft as well. */

/** Before the fields of an attempt at the walk test of the visit, and of an endurance walk beside it. */
export const ATTEMPTS = ['walk1', 'walk2', 'endurance'] as const;
export type AttemptName = (typeof ATTEMPTS)[number];

/** The test of an endurance walk: its speed follows from the walk before it. */
export const ENDURANCE_TEST = 'endurance-shuttle-walk';

/** What all walks of a visit have in common. */
export const SHARED_WALK_FIELDS = ['place', 'courseLengthM', 'walkingAid', 'oxygenLPerMin'] as const;

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

/** Ticked where an unusual value of a field is right; it holds the value that was looked at. */
export function confirmField(field: string): string {
  return `confirm.${field}`;
}

/** The version of the draft that the page was made from. */
export const DRAFT_VERSION = 'draftVersion';
/** The version of the assessment that the typing of its correction began with. */
export const BEGUN_FROM = 'begunFrom';
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
