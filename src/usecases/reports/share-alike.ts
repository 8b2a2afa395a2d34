import type { ContactFacts, Result } from '../../domain/cohort/referral-facts.js';

/** When two values are equal: where both keys are, and the rest. */
export interface Likeness<Value> {
  /** Parts that tell most values apart, to find those that may be equal. */
  readonly keys: readonly [first: (value: Value) => unknown, second: (value: Value) => unknown];
  readonly isRestAlike: (one: Value, other: Value) => boolean;
}

/**
 * Keeps each of many equal values once: a national quarter holds the same result of a test and the same day of a class many
 * thousand times.
 *
 * @returns gives back the first value that is equal
 */
export function shareAlike<Value>({ keys, isRestAlike }: Likeness<Value>): (value: Value) => Value {
  const [firstOf, secondOf] = keys;
  const known = new Map<unknown, Map<unknown, Value[]>>();
  return (value) => {
    const ofFirst = getOrAdd(known, firstOf(value), () => new Map<unknown, Value[]>());
    const candidates = getOrAdd(ofFirst, secondOf(value), () => []);
    const found = candidates.find((candidate) => isRestAlike(candidate, value));
    if (found !== undefined) return found;
    candidates.push(value);
    return value;
  };
}

function getOrAdd<Value>(map: Map<unknown, Value>, key: unknown, make: () => Value): Value {
  const known = map.get(key);
  if (known !== undefined) return known;
  const made = make();
  map.set(key, made);
  return made;
}

/** Contacts are equal where everything is that they say. */
export const CONTACTS: Likeness<ContactFacts> = {
  keys: [({ heldOn }) => heldOn, ({ mode }) => mode],
  isRestAlike: (one, other) => one.isSupervised === other.isSupervised && one.outcome === other.outcome,
};

/** Results are equal where everything is that they say. */
export const RESULTS: Likeness<Result> = {
  keys: [({ measureId }) => measureId, ({ value }) => value.numerator],
  isRestAlike: (one, other) =>
    one.value.denominator === other.value.denominator &&
    one.hadPracticeWalk === other.hadPracticeWalk &&
    one.isCeiling === other.isCeiling &&
    holdsAll(one.conditions, other.conditions) &&
    holdsAll(other.conditions, one.conditions),
};

function holdsAll(one: Result['conditions'], other: Result['conditions']): boolean {
  for (const name in one) if (!(name in other) || one[name] !== other[name]) return false;
  return true;
}
