import type { QuestionnaireEntry } from '../src/domain/assessment/assessment.js';
import { compare } from '../src/domain/exact/fraction.js';
import { findQuestionnaire } from '../src/domain/measures/catalogue.js';
import type { ItemLimits, ItemScore, Questionnaire } from '../src/domain/measures/questionnaire.js';
import type { NotDoneReason } from '../src/domain/referral/closed-sets.js';
import { chance, wholeBetween } from './random.js';
import type { Random } from './random.js';

/** What the items of a measure are to add up to; for a mean over items, the mean. */
export interface Target {
  readonly measureId: string;
  readonly value: number;
}

/** Share of questionnaires with one item left blank. */
const BLANK_SHARE = 0.02;

/**
 * A filled-in questionnaire whose scores come out at the targets, rounded to whole items.
 *
 * @param form null where the questionnaire has one form only
 */
export function planAnswers(
  random: Random,
  questionnaireId: string,
  targets: readonly Target[],
  form: string | null = null,
): QuestionnaireEntry {
  const questionnaire = questionnaireById(questionnaireId);
  const items: (number | null)[] = questionnaire.items.map((limits) => limits.min);
  for (const { measureId, value } of targets) {
    const places = itemsOf(questionnaire, measureId);
    const isMean = questionnaire.measures.some(
      (measure) => measure.id === measureId && measure.unit === 'mean item score',
    );
    const limits = places.map((place) => cautious(random, questionnaire, place));
    const answers = spreadOver(random, Math.round(isMean ? value * places.length : value), limits);
    places.forEach((place, index) => (items[place] = answers[index] ?? null));
  }
  if (items.length > 1 && chance(random, BLANK_SHARE)) {
    items[wholeBetween(random, 0, items.length - 1)] = null;
  }
  return { questionnaire: questionnaireId, form, items, typedScores: [], notDoneReason: null };
}

/** A total that was added up by hand, without the items. */
export function typedTotal(questionnaireId: string, measure: string, value: number): QuestionnaireEntry {
  const typedScores = [{ measure, value: Math.round(value) }];
  return { questionnaire: questionnaireId, form: null, items: null, typedScores, notDoneReason: null };
}

/** A questionnaire that was not filled in, and why. */
export function answersNotGiven(questionnaireId: string, notDoneReason: NotDoneReason): QuestionnaireEntry {
  return { questionnaire: questionnaireId, form: null, items: null, typedScores: [], notDoneReason };
}

/**
 * Spreads a sum over items.
 *
 * @returns one whole number per item within its limits; they add up to the sum, or to the nearest sum there is
 */
export function spreadOver(random: Random, sum: number, limits: readonly ItemLimits[]): readonly number[] {
  const answers = limits.map((limit) => limit.min);
  let left = sum - answers.reduce((total, answer) => total + answer, 0);
  let open = limits.flatMap((limit, index) => (limit.max > limit.min ? [index] : []));
  while (left > 0 && open.length > 0) {
    const chosen = open[wholeBetween(random, 0, open.length - 1)] ?? 0;
    const raised = (answers[chosen] ?? 0) + 1;
    answers[chosen] = raised;
    left -= 1;
    if (raised >= (limits[chosen]?.max ?? 0)) open = open.filter((index) => index !== chosen);
  }
  return answers;
}

/** The items that a measure is scored from, found by trying, so that the numbers stand in one place only. */
export function itemsOf(questionnaire: Questionnaire, measureId: string): readonly number[] {
  const { items, scoreItems } = questionnaire;
  if (scoreItems === null) return [];
  const lowest = items.map((limits) => limits.min);
  const scoreOf = (answers: readonly number[]): ItemScore | undefined =>
    scoreItems(answers).find((score) => score.measureId === measureId);
  const base = scoreOf(lowest);
  return items.flatMap((limits, index) => {
    const raised = scoreOf(lowest.map((answer, place) => (place === index ? limits.max : answer)));
    if (base?.kind !== 'scored' || raised?.kind !== 'scored') return [];
    return compare(base.value, raised.value) === 0 ? [] : [index];
  });
}

/** The ninth item of the PHQ-9 asks for a risk procedure wherever it is above 0: it stays rare here. */
function cautious(random: Random, questionnaire: Questionnaire, place: number): ItemLimits {
  const limits = questionnaire.items[place] ?? { min: 0, max: 0 };
  const isRiskItem = questionnaire.id === 'patient-health-questionnaire-9' && place === 8;
  return isRiskItem && chance(random, 0.93) ? { min: limits.min, max: limits.min } : limits;
}

function questionnaireById(id: string): Questionnaire {
  const questionnaire = findQuestionnaire(id);
  if (questionnaire === undefined) throw new Error(`The catalogue has no questionnaire ${id}.`);
  return questionnaire;
}
