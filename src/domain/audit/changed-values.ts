import type { ChangedValue } from './audit-event.js';

/**
 * What differs between two states of a record, by field.
 *
 * Free text, and what says who somebody is, is named as changed and not repeated: it stands once, in the record's own
 * history.
 *
 * @param notRepeated names of fields whose values are not repeated
 * @returns each field that differs, with the value before and after
 * @example changedValues({ a: 1, b: 2 }, { a: 1, b: 3 }, []) -> { b: [2, 3] }
 */
export function changedValues(
  before: object,
  after: object,
  notRepeated: readonly string[],
): Readonly<Record<string, ChangedValue>> {
  const former: ReadonlyMap<string, unknown> = new Map(Object.entries(before));
  const present: ReadonlyMap<string, unknown> = new Map(Object.entries(after));
  const changes: Record<string, ChangedValue> = {};
  for (const name of new Set([...former.keys(), ...present.keys()])) {
    const old = former.get(name) ?? null;
    const fresh = present.get(name) ?? null;
    if (isSame(old, fresh)) continue;
    changes[name] = notRepeated.includes(name) ? [marked(old), marked(fresh)] : [old, fresh];
  }
  return changes;
}

/** In whatever order the fields of a part were written. */
function isSame(one: unknown, other: unknown): boolean {
  return one === other || JSON.stringify(inOrder(one)) === JSON.stringify(inOrder(other));
}

function inOrder(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(inOrder);
  if (typeof value !== 'object' || value === null) return value;
  const fields = Object.entries(value).sort(([one], [other]) => (one < other ? -1 : 1));
  return Object.fromEntries(fields.map(([name, part]) => [name, inOrder(part)]));
}

/** Stands for a value that is not repeated. */
const MARK = '(not repeated)';

function marked(value: unknown): string | null {
  return value === null ? null : MARK;
}
