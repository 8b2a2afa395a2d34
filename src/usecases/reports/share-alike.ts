import type { ContactFacts, Result } from '../../domain/cohort/referral-facts.js';

/**
 * Keeps each of many equal values once: a national quarter holds the same result of a test and the same day of a class many
 * thousand times.
 *
 * @param contentOf a text that two values share only where they are equal
 * @returns gives back the first value with the same content
 */
export function shareAlike<Value>(contentOf: (value: Value) => string): (value: Value) => Value {
  const known = new Map<string, Value>();
  return (value) => {
    const content = contentOf(value);
    const first = known.get(content);
    if (first !== undefined) return first;
    known.set(content, value);
    return value;
  };
}

/** Everything that a contact says; none of its parts holds a space. */
export function contentOfContact({ heldOn, mode, isSupervised, outcome }: ContactFacts): string {
  return `${heldOn} ${mode} ${isSupervised} ${outcome}`;
}

/** Everything that a result says. Written by hand: as JSON it takes several times as long. */
export function contentOfResult({
  measureId,
  value,
  conditions,
  hadPracticeWalk,
  isCeiling,
}: Result): string {
  let content = `${measureId} ${value.numerator}/${value.denominator} ${hadPracticeWalk} ${isCeiling}`;
  for (const name in conditions) content += ` ${name}=${JSON.stringify(conditions[name])}`;
  return content;
}
