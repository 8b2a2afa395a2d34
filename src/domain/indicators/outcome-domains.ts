import { WALK_TESTS } from '../measures/registered.js';

/**
 * The three things that every programme must measure at both ends, and the measures of the catalogue that stand for each.
 *
 * A measure stands for one domain only: the dyspnoea domain of a health status questionnaire is breathlessness, its
 * total is health status.
 *
 * @source The three domains: British Thoracic Society guideline 2013. Which measure stands for which: our own.
 */
export const OUTCOME_DOMAINS: readonly {
  readonly name: string;
  readonly measureIds: readonly string[];
}[] = [
  { name: 'walk test', measureIds: WALK_TESTS.map((test) => test.measure.id) },
  { name: 'breathlessness', measureIds: ['mrc-dyspnoea', 'mmrc-dyspnoea', 'crq-dyspnoea'] },
  {
    name: 'health status',
    measureIds: ['cat-total', 'crq-total', 'sgrq-total', 'k-bild-total', 'eq-5d-5l-index', 'eq-vas'],
  },
];
