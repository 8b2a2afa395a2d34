import type { Fraction } from '../exact/fraction.js';
import { add, fraction, multiply } from '../exact/fraction.js';
import type { Questionnaire } from './questionnaire.js';

/**
 * The total that typed domain scores make, for comparison with a typed total.
 *
 * @param questionnaire a questionnaire whose total follows from its domains (CRQ, LINQ)
 * @param scores exact scores by measure id
 * @returns the measure and value of the total; null where a domain is missing or the total does not follow from domains
 * @example four CRQ domains of 4, 3, 5 and 4 -> crq-total (5 x 4 + 4 x 3 + 7 x 5 + 4 x 4) / 20 = 83/20
 */
export function totalFromDomains(
  questionnaire: Questionnaire,
  scores: ReadonlyMap<string, Fraction>,
): { readonly measureId: string; readonly value: Fraction } | null {
  const { domainWeights, measures } = questionnaire;
  const total = measures.at(-1);
  if (domainWeights === null || total === undefined) return null;
  let value = fraction(0);
  for (const [measureId, weight] of Object.entries(domainWeights)) {
    const score = scores.get(measureId);
    if (score === undefined) return null;
    value = add(value, multiply(weight, score));
  }
  return { measureId: total.id, value };
}
