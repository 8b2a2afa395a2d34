import { fieldWords, valueWords } from '../components/value-words.js';

/** What happened, in words. @example actionWords('second-factor-removed') -> 'Second factor removed' */
export function actionWords(action: string): string {
  return fieldWords(action);
}

/** The details of an entry, a line each: what changed from what to what, the reason, what was read. */
export function detailLines(details: string): readonly string[] {
  const parsed = JSON.parse(details) as Readonly<Record<string, unknown>>;
  return Object.entries(parsed).flatMap(([name, value]) => {
    if (value === null) return [];
    if (name !== 'changes') return [`${fieldWords(name)}: ${valueWords(value)}`];
    return Object.entries(value as Readonly<Record<string, readonly [unknown, unknown]>>).map(
      ([field, [before, after]]) => `${fieldWords(field)}: ${valueWords(before)} \u2192 ${valueWords(after)}`,
    );
  });
}
