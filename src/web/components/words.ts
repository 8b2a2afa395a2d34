import type { Choice } from './choices.js';

/** With a capital at the start. @example capital('did not attend') -> 'Did not attend' */
export function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

/** The values of a closed set as choices, in its order. */
export function choicesOf<Value extends string>(
  values: readonly Value[],
  words: Readonly<Record<Value, string>>,
): readonly Choice[] {
  return values.map((value) => ({ value, label: capital(words[value]) }));
}

/** A count with its noun. @example counted(1, 'class', 'classes') -> '1 class' */
export function counted(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}
