import { EXCLUSIONS } from '../cohort/exclusions.js';
import type { ExclusionId } from '../cohort/exclusions.js';
import { wilsonInterval } from '../statistics/proportion.js';
import type { Exclusion, Figure } from './figure.js';
import type { FigureRule, Judgement } from './indicator.js';

/** Counts so far; only people with several referrals need to be remembered to be counted once. */
export interface Tally {
  readonly rule: FigureRule;
  numerator: number;
  denominator: number;
  open: number;
  peopleInNumerator: number;
  peopleInDenominator: number;
  readonly seenInNumerator: Set<string>;
  readonly seenInDenominator: Set<string>;
  readonly excluded: Map<ExclusionId, number>;
}

/** A count in which nobody is yet. */
export function newTally(rule: FigureRule): Tally {
  return {
    rule,
    numerator: 0,
    denominator: 0,
    open: 0,
    peopleInNumerator: 0,
    peopleInDenominator: 0,
    seenInNumerator: new Set(),
    seenInDenominator: new Set(),
    excluded: new Map(),
  };
}

/**
 * Adds one referral to a count.
 *
 * @param repeatedPatient the person's id where the cohort holds several referrals of theirs, else null
 */
export function addTo(tally: Tally, judgement: Judgement, repeatedPatient: string | null): void {
  switch (judgement.kind) {
    case 'excluded':
      tally.excluded.set(judgement.exclusion, (tally.excluded.get(judgement.exclusion) ?? 0) + 1);
      return;
    case 'open':
      tally.open += 1;
      return;
    case 'numerator':
      tally.numerator += 1;
      tally.denominator += 1;
      if (isNew(tally.seenInNumerator, repeatedPatient)) tally.peopleInNumerator += 1;
      if (isNew(tally.seenInDenominator, repeatedPatient)) tally.peopleInDenominator += 1;
      return;
    case 'not-numerator':
      tally.denominator += 1;
      if (isNew(tally.seenInDenominator, repeatedPatient)) tally.peopleInDenominator += 1;
      return;
  }
}

function isNew(seen: Set<string>, repeatedPatient: string | null): boolean {
  if (repeatedPatient === null) return true;
  if (seen.has(repeatedPatient)) return false;
  seen.add(repeatedPatient);
  return true;
}

/** The figure that a count makes. */
export function figureOf(tally: Tally): Figure {
  const { rule, numerator, denominator, open, excluded } = tally;
  return {
    id: rule.id,
    ruleId: rule.ruleId,
    title: rule.title,
    cohort: rule.cohort,
    numerator,
    denominator,
    excluded: exclusionsOf(excluded),
    open,
    people: { numerator: tally.peopleInNumerator, denominator: tally.peopleInDenominator },
    ...percentagesOf(numerator, denominator, open),
  };
}

function exclusionsOf(counts: ReadonlyMap<ExclusionId, number>): readonly Exclusion[] {
  return [...counts]
    .sort(([a], [b]) => placeOf(a) - placeOf(b))
    .map(([id, count]) => ({ id, reason: EXCLUSIONS[id], count }));
}

const PLACES: ReadonlyMap<string, number> = new Map(Object.keys(EXCLUSIONS).map((id, place) => [id, place]));

function placeOf(id: ExclusionId): number {
  return PLACES.get(id) ?? PLACES.size;
}

/**
 * Percentage, interval and bounds of a count. Percentages are 0 to 100, unrounded.
 *
 * @returns nulls where nothing is counted; bounds only where something is open
 * @example percentagesOf(6, 10, 0).percentage -> 60
 */
export function percentagesOf(
  numerator: number,
  denominator: number,
  open: number,
): Pick<Figure, 'percentage' | 'interval' | 'bounds'> {
  const interval = wilsonInterval(numerator, denominator);
  return {
    percentage: denominator === 0 ? null : (100 * numerator) / denominator,
    interval: interval === null ? null : { low: 100 * interval.low, high: 100 * interval.high },
    bounds:
      open === 0
        ? null
        : {
            worst: (100 * numerator) / (denominator + open),
            best: (100 * (numerator + open)) / (denominator + open),
          },
  };
}
