import { compare, toNumber } from '../exact/fraction.js';
import { findQuestionnaire } from '../measures/catalogue.js';
import { needsConfirmation } from '../measures/check-range.js';
import type { Questionnaire } from '../measures/questionnaire.js';
import { formsOf, readFormScore } from '../measures/form-score.js';
import { scoreQuestionnaire } from '../measures/score-items.js';
import { totalFromDomains } from '../measures/typed-total.js';
import type { Fault } from '../refusal/refusal.js';
import type { QuestionnaireEntry, Score } from './assessment.js';
import { checkMeasured } from './check-measured.js';
import { gather, NO_FINDINGS, pleaseCheck } from './field-limits.js';
import type { Findings } from './field-limits.js';

/**
 * Checks one questionnaire and works out its scores: from items where they are given, else as typed.
 *
 * A typed score that disagrees with the items is refused, so that one of the two gets looked at.
 *
 * @param pointer JSON Pointer of the entry, such as `/questionnaires/0`
 */
export function checkQuestionnaire(
  entry: QuestionnaireEntry,
  pointer: string,
): { readonly scores: readonly Score[]; readonly findings: Findings } {
  const questionnaire = findQuestionnaire(entry.questionnaire);
  if (questionnaire === undefined) {
    const message = 'There is no questionnaire of this name. See /api/v1/measures for those there are.';
    return refusal(`${pointer}/questionnaire`, 'unknown-questionnaire', message);
  }
  // Nothing answered is nothing done, however many blanks were sent.
  const hasValues = entry.items?.some((item) => item !== null) === true || entry.typedScores.length > 0;
  if (entry.notDoneReason !== null) {
    if (!hasValues) {
      return {
        scores: [],
        findings: { faults: checkForm(entry, questionnaire, [], pointer), queries: [] },
      };
    }
    return refusal(
      `${pointer}/notDoneReason`,
      'value-and-reason',
      'A questionnaire that was not done has no scores.',
    );
  }
  if (!hasValues) {
    const message = 'Give item scores or typed scores, or the reason why the questionnaire was not done.';
    return refusal(pointer, 'value-or-reason', message);
  }
  const fromItems = entry.items === null ? NO_SCORES : scoresFromItems(questionnaire, entry.items, pointer);
  const formFaults = checkForm(entry, questionnaire, fromItems.scores, pointer);
  const typed = readTyped(questionnaire, entry, fromItems.scores, pointer);
  const typedOnly = typed.scores.filter(
    (score) => !fromItems.scores.some((known) => known.measure === score.measure),
  );
  const total = settleTotal(questionnaire, entry, [...fromItems.scores, ...typedOnly], pointer);
  return {
    scores: total.scores,
    findings: gather([
      { faults: total.faults, queries: [] },
      { faults: formFaults, queries: [] },
      fromItems.findings,
      typed.findings,
    ]),
  };
}

const NO_SCORES = { scores: [] as readonly Score[], findings: NO_FINDINGS };

function scoresFromItems(
  questionnaire: Questionnaire,
  items: readonly (number | null)[],
  pointer: string,
): { readonly scores: readonly Score[]; readonly findings: Findings } {
  const scored = scoreQuestionnaire(questionnaire, items);
  if (scored.kind === 'refused') {
    const faults = scored.faults.map((found) => ({ ...found, pointer: `${pointer}/items${found.pointer}` }));
    return { scores: [], findings: { faults, queries: [] } };
  }
  const scores = scored.scores.flatMap((score): readonly Score[] =>
    score.kind === 'scored'
      ? [{ questionnaire: questionnaire.id, measure: score.measureId, value: score.value, basis: 'items' }]
      : [],
  );
  return { scores, findings: { faults: [], queries: unusualScores(questionnaire, scores, pointer) } };
}

/** A score outside the usual range is asked about once, at the items that make it. */
function unusualScores(
  questionnaire: Questionnaire,
  scores: readonly Score[],
  pointer: string,
): readonly Fault[] {
  const unusual = questionnaire.measures.filter((measure) =>
    scores.some((score) => score.measure === measure.id && needsConfirmation(measure, score.value)),
  );
  if (unusual.length === 0) return [];
  const names = unusual.map((measure) => measure.name).join(', ');
  const message = `Please check the items: they make an unusual score of ${names}. Confirm them if they are right.`;
  return [pleaseCheck(`${pointer}/items`, message)];
}

/** Adds the total that typed domains make, and refuses a typed total that disagrees with them. */
function settleTotal(
  questionnaire: Questionnaire,
  entry: QuestionnaireEntry,
  scores: readonly Score[],
  pointer: string,
): { readonly scores: readonly Score[]; readonly faults: readonly Fault[] } {
  const total = totalFromDomains(questionnaire, new Map(scores.map((score) => [score.measure, score.value])));
  if (total === null || entry.items !== null) return { scores, faults: [] };
  const given = scores.find((score) => score.measure === total.measureId);
  if (given === undefined) {
    const derived: Score = {
      questionnaire: questionnaire.id,
      measure: total.measureId,
      value: total.value,
      basis: 'typed',
    };
    return { scores: [...scores, derived], faults: [] };
  }
  if (compare(given.value, total.value) === 0) return { scores, faults: [] };
  const index = entry.typedScores.findIndex((typed) => typed.measure === total.measureId);
  const message = `The domains make a total of ${round(toNumber(total.value))}. Correct the total or a domain.`;
  return {
    scores,
    faults: [{ pointer: `${pointer}/typedScores/${index}/value`, code: 'domains-disagree', message }],
  };
}

function readTyped(
  questionnaire: Questionnaire,
  entry: QuestionnaireEntry,
  fromItems: readonly Score[],
  pointer: string,
): { readonly scores: readonly Score[]; readonly findings: Findings } {
  const scores: Score[] = [];
  const findings: Findings[] = [];
  const seen = new Set<string>();
  entry.typedScores.forEach((typed, index) => {
    const at = `${pointer}/typedScores/${index}`;
    const measure = questionnaire.measures.find((candidate) => candidate.id === typed.measure);
    if (measure === undefined || seen.has(typed.measure)) {
      const names = questionnaire.measures.map((candidate) => candidate.id).join(', ');
      const message = `This questionnaire has one score each of: ${names}.`;
      findings.push({
        faults: [{ pointer: `${at}/measure`, code: 'unknown-measure', message }],
        queries: [],
      });
      return;
    }
    seen.add(typed.measure);
    const checked = checkMeasured(measure, typed.value, `${at}/value`, (of, value) =>
      readFormScore(questionnaire, of, value, entry.form),
    );
    findings.push(checked.findings);
    if (checked.value === null) return;
    scores.push({
      questionnaire: questionnaire.id,
      measure: measure.id,
      value: checked.value,
      basis: 'typed',
    });
    const computed = fromItems.find((score) => score.measure === measure.id);
    if (computed !== undefined && compare(computed.value, checked.value) !== 0) {
      const message = `The items give ${round(toNumber(computed.value))}, the typed score is ${typed.value}. Correct one of them.`;
      findings.push({ faults: [{ pointer: `${at}/value`, code: 'items-disagree', message }], queries: [] });
    }
  });
  return { scores, findings: gather(findings) };
}

function checkForm(
  entry: QuestionnaireEntry,
  questionnaire: Questionnaire,
  fromItems: readonly Score[],
  pointer: string,
): readonly Fault[] {
  const { forms } = questionnaire;
  if (entry.form !== null && forms.includes(entry.form)) return [];
  const isNeeded = fromItems.some((score) => formsOf(questionnaire, score.measure).length > 0);
  if (entry.form === null && !isNeeded) return [];
  const message =
    forms.length === 0
      ? 'This questionnaire has one form only: leave the form out.'
      : `Name the form: ${forms.join(', ')}.`;
  return [{ pointer: `${pointer}/form`, code: 'unknown-form', message }];
}

function refusal(
  pointer: string,
  code: string,
  message: string,
): { scores: readonly Score[]; findings: Findings } {
  return { scores: [], findings: { faults: [{ pointer, code, message }], queries: [] } };
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
