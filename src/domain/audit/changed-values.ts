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
  const former: Readonly<Record<string, unknown>> = { ...before };
  const present: Readonly<Record<string, unknown>> = { ...after };
  const changes: Record<string, ChangedValue> = {};
  for (const name of Object.keys({ ...former, ...present })) {
    const old = former[name] ?? null;
    const fresh = present[name] ?? null;
    if (isSame(old, fresh)) continue;
    changes[name] = notRepeated.includes(name) ? [marked(old), marked(fresh)] : [old, fresh];
  }
  return changes;
}

/** In whatever order the fields of a part were written. */
function isSame(one: unknown, other: unknown): boolean {
  if (!isPart(one) || !isPart(other)) return one === other;
  return JSON.stringify(inOrder(one)) === JSON.stringify(inOrder(other));
}

function isPart(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}

function inOrder(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(inOrder);
  if (!isPart(value)) return value;
  const fields = Object.entries(value).sort(([one], [other]) => (one < other ? -1 : 1));
  return Object.fromEntries(fields.map(([name, part]) => [name, inOrder(part)]));
}

/** Stands for a value that is not repeated. */
const MARK = '(not repeated)';

function marked(value: unknown): string | null {
  return value === null ? null : MARK;
}
