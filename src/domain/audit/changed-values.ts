import type { ChangedValue } from './audit-event.js';

/**
 * What differs between two states of a record, by field.
 *
 * Free text is named as changed and not repeated: it stands once, in the record's own history.
 *
 * @param freeText names of fields whose text is not repeated
 * @returns each field that differs, with the value before and after
 * @example changedValues({ a: 1, b: 2 }, { a: 1, b: 3 }, []) -> { b: [2, 3] }
 */
export function changedValues(
  before: object,
  after: object,
  freeText: readonly string[],
): Readonly<Record<string, ChangedValue>> {
  const former: ReadonlyMap<string, unknown> = new Map(Object.entries(before));
  const present: ReadonlyMap<string, unknown> = new Map(Object.entries(after));
  const changes: Record<string, ChangedValue> = {};
  for (const name of new Set([...former.keys(), ...present.keys()])) {
    const old = former.get(name) ?? null;
    const fresh = present.get(name) ?? null;
    if (old === fresh || (old !== null && JSON.stringify(old) === JSON.stringify(fresh))) continue;
    changes[name] = freeText.includes(name) ? [textMark(old), textMark(fresh)] : [old, fresh];
  }
  return changes;
}

/** Stands for a text that is not repeated. */
const TEXT_MARK = '(text)';

function textMark(value: unknown): string | null {
  return value === null ? null : TEXT_MARK;
}
