import type { Citation } from '../evidence/citation.js';
import type { Fraction } from '../exact/fraction.js';
import { compare, fraction } from '../exact/fraction.js';
import type { Questionnaire } from './questionnaire.js';

/** Something that a registered clinician must look at; the product decides nothing. */
export interface Prompt {
  /** Stable id, kept in the record with its acknowledgement. */
  readonly id: string;
  readonly measureId: string;
  readonly text: string;
  readonly citation: Citation;
}

const RISK_QUESTIONNAIRE = 'patient-health-questionnaire-9';
const RISK_ITEM = 9;

const RISK_ITEM_SOURCE: Citation = {
  id: 'phq-9-item-9',
  text: 'Common practice, as described on a secondary page: prompt whatever the total, and also when unanswered',
  doi: null,
  status: 'common-practice',
};

const LOCAL_PROCEDURE = 'Follow the local risk procedure and record who was told, and when.';

/** Lowest scores of the case range. They prompt a look and are no diagnosis. */
const CASE_RANGES: readonly {
  readonly measureId: string;
  readonly name: string;
  readonly from: number;
  readonly citation: Citation;
}[] = [
  { measureId: 'hads-anxiety', name: 'HADS-A', from: 11, citation: hadsCase() },
  { measureId: 'hads-depression', name: 'HADS-D', from: 11, citation: hadsCase() },
  {
    measureId: 'phq-9',
    name: 'PHQ-9',
    from: 10,
    // Read in the abstract: 88 % sensitivity and 88 % specificity for major depression.
    citation: {
      id: 'kroenke-2001',
      text: 'Kroenke K and others 2001, J Gen Intern Med 16:606',
      doi: null,
      status: 'retrieved',
    },
  },
  {
    measureId: 'gad-7',
    name: 'GAD-7',
    from: 10,
    // 89 % sensitivity and 82 % specificity, as quoted.
    citation: {
      id: 'spitzer-2006',
      text: 'Spitzer RL and others 2006, Arch Intern Med 166:1092, cut points as quoted on two pages',
      doi: null,
      status: 'retrieved-indirect',
    },
  },
];

/** Where each kind of prompt comes from, for the list of sources. */
export const PROMPT_SOURCES: readonly {
  readonly prompt: string;
  /** For readers. */ readonly words: string;
  readonly citation: Citation;
}[] = [
  { prompt: 'phq-9-item-9', words: 'item 9 of the PHQ-9', citation: RISK_ITEM_SOURCE },
  ...CASE_RANGES.map(({ measureId, name, citation }) => ({
    prompt: `${measureId}-case-range`,
    words: `case range of the ${name}`,
    citation,
  })),
];

/**
 * What a completed questionnaire asks a clinician to look at.
 *
 * @param questionnaire the questionnaire that was completed
 * @param items its answers, null where unanswered; null where only scores were typed, so that item 9 of the PHQ-9 is unknown
 * @param scores its exact scores by measure id
 * @returns prompts: the answer to item 9 of the PHQ-9 first, then case ranges; equality counts
 * @source See the citation of each prompt
 * @example PHQ-9 with a typed total of 4 -> phq-9-item-9-unanswered
 */
export function promptsFor(
  questionnaire: Questionnaire,
  items: readonly (number | null)[] | null,
  scores: ReadonlyMap<string, Fraction>,
): readonly Prompt[] {
  const risk = questionnaire.id === RISK_QUESTIONNAIRE ? riskPrompts(items) : [];
  const cases = CASE_RANGES.flatMap(({ measureId, from, citation }): readonly Prompt[] => {
    const measure = questionnaire.measures.find((candidate) => candidate.id === measureId);
    const score = scores.get(measureId);
    if (measure === undefined || score === undefined || compare(score, fraction(from)) < 0) return [];
    const text = `${measure.shortName} is ${from} or more, the case range. ${LOCAL_PROCEDURE}`;
    return [{ id: `${measureId}-case-range`, measureId, text, citation }];
  });
  return [...risk, ...cases];
}

function riskPrompts(items: readonly (number | null)[] | null): readonly Prompt[] {
  const answer = items?.[RISK_ITEM - 1] ?? null;
  if (answer === 0) return [];
  const [id, finding] =
    answer === null
      ? ['phq-9-item-9-unanswered', 'Item 9 of the PHQ-9 is unanswered or was not entered']
      : ['phq-9-item-9-above-zero', 'Item 9 of the PHQ-9 is above 0'];
  const text = `${finding}, whatever the total. ${LOCAL_PROCEDURE}`;
  return [{ id, measureId: 'phq-9', text, citation: RISK_ITEM_SOURCE }];
}

function hadsCase(): Citation {
  return {
    id: 'hads-bands',
    text: 'Published cut points of the Hospital Anxiety and Depression Scale',
    doi: null,
    status: 'retrieved',
  };
}
