import type { Citation } from '../../evidence/citation.js';
import { add, fraction, multiply } from '../../exact/fraction.js';
import { fromMemory, range } from '../limits.js';
import type { Measure } from '../measure.js';
import { commonPractice } from '../measure.js';
import type { ItemScore, Questionnaire } from '../questionnaire.js';
import { atLeastHalf, meanOfAnswered } from '../scoring/fill-missing.js';
import { pickItems, sameLimits } from '../scoring/pick-items.js';

/** Printed numbers of the items of each domain. Their counts were read, the numbers are remembered. */
const DOMAINS = [
  { key: 'dyspnoea', name: 'dyspnoea', itemNumbers: [1, 2, 3, 4, 5] },
  { key: 'fatigue', name: 'fatigue', itemNumbers: [8, 11, 15, 17] },
  { key: 'emotional-function', name: 'emotional function', itemNumbers: [6, 9, 12, 14, 16, 18, 20] },
  { key: 'mastery', name: 'mastery', itemNumbers: [7, 10, 13, 19] },
] as const;

const ITEM_COUNT = 20;
const TOTAL_ID = 'crq-total';

/** Half a point per item is the same figure in every domain, from the same paper. */
const JAESCHKE_1989: Citation = {
  id: 'jaeschke-1989',
  text: 'Jaeschke R and others 1989, Control Clin Trials 10:407, as quoted in Puhan 2008 (DOI from memory)',
  doi: '10.1016/0197-2456(89)90005-6',
  status: 'retrieved-indirect',
};

const GUYATT_1987: Citation = {
  id: 'guyatt-1987',
  text: 'Guyatt GH and others 1987, Thorax 42:773: 20 items of 1 to 7 in four domains, as described in a tool list',
  doi: '10.1136/thx.42.10.773',
  status: 'retrieved-indirect',
};

/** Chronic Respiratory Questionnaire: four domains and a total, each a mean of items of 1 to 7. */
export const CHRONIC_RESPIRATORY_QUESTIONNAIRE: Questionnaire = {
  id: 'chronic-respiratory-questionnaire',
  name: 'Chronic Respiratory Questionnaire',
  shortName: 'CRQ',
  items: sameLimits(ITEM_COUNT, 1, 7),
  scoreItems,
  forms: ['self-reported', 'interviewer-led'],
  formMeasureIds: null,
  formLimits: [],
  domainWeights: Object.fromEntries(
    DOMAINS.map(({ key, itemNumbers }) => [`crq-${key}`, fraction(itemNumbers.length, ITEM_COUNT)]),
  ),
  scoringRule: {
    text:
      'Each domain is the mean of its items: dyspnoea 1-5; fatigue 8, 11, 15, 17; emotional function 6, 9, 12, 14, 16, ' +
      '18, 20; mastery 7, 10, 13, 19. The total is the mean of all 20 items, not their sum and not the mean of the domains.',
    citation: fromMemory(
      'crq-item-numbers',
      'Item counts read in a factor table in Thorax; item numbers remembered',
    ),
  },
  missingItemRule: {
    text: 'A domain is the mean of the answered items when at least half are answered; a total needs all four domains.',
    citation: commonPractice('crq-missing'),
  },
  licenceNote: {
    text: 'A licence agreement is required, held by McMaster University.',
    citation: fromMemory('crq-licence', 'The need for a licence was read, its holder is remembered'),
  },
  measures: [
    ...DOMAINS.map((domain) => ({
      ...crqMeasure(`crq-${domain.key}`, domain.name, domain.itemNumbers.length),
      thresholds: [
        {
          id: `crq-${domain.key}-jaeschke-1989`,
          purpose: 'improvement' as const,
          value: fraction(1, 2),
          interval: null,
          population: 'Chronic airflow limitation',
          diagnoses: ['copd' as const],
          method: 'Anchor (global rating)',
          n: null,
          isDefault: true,
          note: 'Per item. The method, and 1.0 for moderate and 1.5 for large, are remembered.',
          citation: JAESCHKE_1989,
        },
      ],
    })),
    {
      ...crqMeasure(TOTAL_ID, 'total', ITEM_COUNT),
      thresholds: [
        {
          id: 'crq-total-extension',
          purpose: 'improvement',
          value: fraction(1, 2),
          interval: null,
          population: 'Chronic airflow limitation',
          diagnoses: ['copd'],
          method: 'The figure of the domains, applied to the total',
          n: null,
          isDefault: true,
          note: 'For summed totals of 20 to 140 the convention is 10 points.',
          // The half point was quoted for domains; that it holds for the total is remembered only.
          citation: { ...JAESCHKE_1989, id: 'jaeschke-1989-total', status: 'from-memory' },
        },
      ],
    },
  ],
};

function crqMeasure(id: string, part: string, itemCount: number): Measure {
  return {
    id,
    name: `Chronic Respiratory Questionnaire, ${part}`,
    shortName: `CRQ ${part}`,
    unit: 'mean item score',
    betterWhen: 'higher',
    range: range(1, 7, fraction(1, itemCount), GUYATT_1987),
    checkRange: null,
    thresholds: [],
    bands: [],
    note: 'Compared as exact sums of items, not as rounded means.',
  };
}

function scoreItems(items: readonly (number | null)[]): readonly ItemScore[] {
  const domains = DOMAINS.map(({ key, itemNumbers }) =>
    meanOfAnswered(`crq-${key}`, pickItems(items, itemNumbers), atLeastHalf(itemNumbers.length)),
  );
  return [...domains, totalOf(domains)];
}

/** A missing item counts as the mean of its domain, so that a complete total is the mean of all items. */
function totalOf(domains: readonly ItemScore[]): ItemScore {
  let sum = fraction(0);
  let answeredItems = 0;
  for (const domain of domains) {
    if (domain.kind === 'not-scored') {
      return { kind: 'not-scored', measureId: TOTAL_ID, reason: `No total without ${domain.measureId}` };
    }
    sum = add(sum, multiply(domain.value, fraction(domain.ofItems)));
    answeredItems += domain.answeredItems;
  }
  return {
    kind: 'scored',
    measureId: TOTAL_ID,
    value: multiply(sum, fraction(1, ITEM_COUNT)),
    answeredItems,
    ofItems: ITEM_COUNT,
  };
}
