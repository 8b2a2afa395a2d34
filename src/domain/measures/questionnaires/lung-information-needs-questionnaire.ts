import type { Citation } from '../../evidence/citation.js';
import { add, fraction } from '../../exact/fraction.js';
import { fromMemory, range } from '../limits.js';
import type { Measure } from '../measure.js';
import { commonPractice } from '../measure.js';
import type { ItemScore, Questionnaire } from '../questionnaire.js';
import { sumOfComplete } from '../scoring/fill-missing.js';
import { pickItems } from '../scoring/pick-items.js';

const TOTAL_ID = 'linq-total';
const SMOKING_STATUS_ITEM = 10;

/** The authors print the numbers and ranges of the first three domains; the rest is remembered. */
const DOMAINS = [
  { key: 'disease-knowledge', name: 'disease knowledge', itemNumbers: [1, 2, 3, 4], max: 4 },
  { key: 'medicines', name: 'medicines', itemNumbers: [5, 6, 7], max: 5 },
  { key: 'self-management', name: 'self-management', itemNumbers: [8, 9], max: 6 },
  { key: 'smoking', name: 'smoking', itemNumbers: [10, 11, 12], max: 3 },
  { key: 'exercise', name: 'exercise', itemNumbers: [13, 14, 15], max: 5 },
  { key: 'diet', name: 'diet', itemNumbers: [16], max: 2 },
] as const;

/** Largest score of each item. They add up to the range of each domain. */
const ITEM_MAXIMA = [1, 1, 1, 1, 1, 1, 3, 3, 3, 1, 1, 1, 1, 2, 2, 2];

const LINQ_AUTHORS: Citation = {
  id: 'linq-site',
  text: "Hyland ME, scoring guidance on the questionnaire authors' pages",
  doi: null,
  status: 'retrieved',
};

const LINQ_RANGES = fromMemory(
  'linq-ranges',
  "Ranges of the first three domains read on the authors' pages; smoking, exercise, diet and the total remembered",
);

/** Lung Information Needs Questionnaire: unmet needs, so that lower is better. Not meant for asthma. */
export const LUNG_INFORMATION_NEEDS_QUESTIONNAIRE: Questionnaire = {
  id: 'lung-information-needs-questionnaire',
  name: 'Lung Information Needs Questionnaire',
  shortName: 'LINQ',
  items: ITEM_MAXIMA.map((max) => ({ min: 0, max })),
  scoreItems,
  forms: [],
  formMeasureIds: null,
  formLimits: [],
  domainWeights: Object.fromEntries(DOMAINS.map(({ key }) => [`linq-${key}`, fraction(1)])),
  scoringRule: {
    text:
      'Six domains, each the sum of its items: disease knowledge 1-4 (0 to 4), medicines 5-7 (0 to 5), self-management 8-9 ' +
      '(0 to 6), smoking 10-12 (0 to 3), exercise 13-15 (0 to 5), diet 16 (0 to 2). The total is their sum, 0 to 25.',
    citation: LINQ_RANGES,
  },
  missingItemRule: {
    text:
      'A domain with a missing item has no score, and without six domains there is no total. Items 11 and 12 are asked of ' +
      'people who smoke: where item 10 scores 0 the smoking domain is 0 without them.',
    citation: commonPractice('linq-missing'),
  },
  licenceNote: {
    text: 'Free for clinical use and for research that is not for profit.',
    citation: LINQ_AUTHORS,
  },
  measures: [
    ...DOMAINS.map(({ key, name, max }) => linqMeasure(`linq-${key}`, name, max)),
    {
      ...linqMeasure(TOTAL_ID, 'total', 25),
      note: 'A higher score means more unmet need for information. Not meant for asthma.',
      thresholds: [
        {
          id: 'linq-authors',
          purpose: 'improvement',
          value: fraction(1),
          interval: null,
          population: 'COPD',
          diagnoses: ['copd'],
          method: 'Informal assessment by the authors',
          n: null,
          isDefault: true,
          note: null,
          citation: LINQ_AUTHORS,
        },
      ],
    },
  ],
};

function linqMeasure(id: string, part: string, max: number): Measure {
  return {
    id,
    name: `Lung Information Needs Questionnaire, ${part}`,
    shortName: `LINQ ${part}`,
    unit: 'points',
    betterWhen: 'lower',
    range: range(0, max, 1, LINQ_RANGES),
    checkRange: null,
    thresholds: [],
    bands: [],
    note: null,
  };
}

function scoreItems(items: readonly (number | null)[]): readonly ItemScore[] {
  const smokes = items[SMOKING_STATUS_ITEM - 1] !== 0;
  const domains = DOMAINS.map(({ key, itemNumbers }) => {
    const answers = pickItems(items, itemNumbers);
    const asked = key === 'smoking' && !smokes ? answers.slice(0, 1) : answers;
    return sumOfComplete(`linq-${key}`, asked);
  });
  return [...domains, totalOf(domains)];
}

function totalOf(domains: readonly ItemScore[]): ItemScore {
  let value = fraction(0);
  let items = 0;
  for (const domain of domains) {
    if (domain.kind === 'not-scored') {
      return { kind: 'not-scored', measureId: TOTAL_ID, reason: `No total without ${domain.measureId}` };
    }
    value = add(value, domain.value);
    items += domain.ofItems;
  }
  return { kind: 'scored', measureId: TOTAL_ID, value, answeredItems: items, ofItems: items };
}
