import type { Fraction } from '../exact/fraction.js';
import { toNumber } from '../exact/fraction.js';
import type { Fault } from '../refusal/refusal.js';
import type {
  AssessmentEntry,
  CheckedAssessment,
  PhysicalTestEntry,
  QuestionnaireEntry,
  Score,
  SitToStandEntry,
  WalkTestEntry,
} from './assessment.js';

/** Walk tests by name, the attempts of one test by number. */
export function byTestAndAttempt(a: WalkTestEntry, b: WalkTestEntry): number {
  return byText(a.test, b.test) || a.attempt - b.attempt;
}

/** Sit-to-stand and physical tests by name. */
export function byTest(
  a: SitToStandEntry | PhysicalTestEntry,
  b: SitToStandEntry | PhysicalTestEntry,
): number {
  return byText(a.test, b.test);
}

/** Questionnaires by name. */
export function byQuestionnaire(a: QuestionnaireEntry, b: QuestionnaireEntry): number {
  return byText(a.questionnaire, b.questionnaire);
}

/** Scores by measure. */
export function byMeasure(a: Score, b: Score): number {
  return byText(a.measure, b.measure);
}

/**
 * The typed scores of one questionnaire as they are shown: those that no items stand behind, by measure.
 *
 * A mean is shown to six places, from which the exact mean can be read again: 24/7 as 3.428571.
 */
export function typedScoresOf(
  questionnaire: string,
  scores: readonly Score[],
): QuestionnaireEntry['typedScores'] {
  return scores
    .filter((score) => score.questionnaire === questionnaire && score.basis === 'typed')
    .sort(byMeasure)
    .map((score) => ({ measure: score.measure, value: toSixPlaces(score.value) }));
}

/**
 * Brings an accepted assessment into the one form in which it is stored and read, whatever order it was typed in.
 *
 * What is read can be sent again as it is: the pointers in `confirmed` follow the tests they belong to, and only those
 * are kept that confirmed something.
 *
 * @param queries what was outside the usual range, every one of them confirmed
 */
export function inStoredOrder(checked: CheckedAssessment, queries: readonly Fault[]): CheckedAssessment {
  const { entry } = checked;
  const scores = [...checked.scores].sort(byMeasure);
  const questionnaires = entry.questionnaires.map((questionnaire) => ({
    ...questionnaire,
    typedScores: typedScoresOf(questionnaire.questionnaire, scores),
  }));
  const ordered: AssessmentEntry = {
    ...entry,
    spirometry: nullWhenEmpty(entry.spirometry),
    resting: nullWhenEmpty(entry.resting),
    walkTests: [...entry.walkTests].sort(byTestAndAttempt),
    sitToStands: [...entry.sitToStands].sort(byTest),
    questionnaires: [...questionnaires].sort(byQuestionnaire),
    physicalTests: [...entry.physicalTests].sort(byTest),
  };
  const confirmed = queries.flatMap(({ pointer }) => movedPointer(pointer, entry, ordered));
  return {
    entry: { ...ordered, confirmed: [...new Set(confirmed)].sort(byText) },
    scores,
    physicalResults: checked.physicalResults,
  };
}

/** Where a pointer of the entry as typed leads after ordering; nowhere when its typed score gave way to the items. */
function movedPointer(pointer: string, typed: AssessmentEntry, ordered: AssessmentEntry): readonly string[] {
  const [, list = '', index = '', ...rest] = pointer.split('/');
  const from = Number(index);
  switch (list) {
    case 'walkTests': {
      const to = ordered.walkTests.findIndex(
        (walk) =>
          walk.test === typed.walkTests[from]?.test && walk.attempt === typed.walkTests[from]?.attempt,
      );
      return [['', list, to, ...rest].join('/')];
    }
    case 'physicalTests': {
      const to = ordered.physicalTests.findIndex((test) => test.test === typed.physicalTests[from]?.test);
      return [['', list, to, ...rest].join('/')];
    }
    case 'sitToStands': {
      const to = ordered.sitToStands.findIndex((stand) => stand.test === typed.sitToStands[from]?.test);
      return [['', list, to, ...rest].join('/')];
    }
    case 'questionnaires': {
      const former = typed.questionnaires[from];
      const to = ordered.questionnaires.findIndex(
        (candidate) => candidate.questionnaire === former?.questionnaire,
      );
      if (rest[0] !== 'typedScores') return [['', list, to, ...rest].join('/')];
      const measure = former?.typedScores[Number(rest[1])]?.measure;
      const score = ordered.questionnaires[to]?.typedScores.findIndex((kept) => kept.measure === measure);
      if (score === undefined || score < 0) return [];
      return [['', list, to, 'typedScores', score, ...rest.slice(2)].join('/')];
    }
    default:
      return [pointer];
  }
}

function nullWhenEmpty<Values extends object>(values: Values | null): Values | null {
  return values === null || Object.values(values).every((value) => value === null) ? null : values;
}

function toSixPlaces(value: Fraction): number {
  return Math.round(toNumber(value) * 1_000_000) / 1_000_000;
}

/** By code unit: the same in every language and on every database. */
function byText(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}
