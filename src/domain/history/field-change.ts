/** A field of a record before and after a change; null where there was, or is, nothing. */
export interface FieldChange {
  /** Name of the field; parts of a whole are joined by a dot, such as `triage.decision`. */
  readonly field: string;
  readonly former: unknown;
  readonly present: unknown;
}

/**
 * The fields of a state of a record, each with its value.
 *
 * Parts of an object stand by their own; a list is one value. What is not recorded (null, or an empty list) is left
 * out, so that a field that came with a later version of the program differs from nothing.
 *
 * @example fieldsOf({ a: 1, b: { c: 2, d: null } }) -> a: 1, b.c: 2
 */
function fieldsOf(state: object): ReadonlyMap<string, unknown> {
  const fields = new Map<string, unknown>();
  collect(state, '', fields);
  return fields;
}

function collect(state: object, prefix: string, fields: Map<string, unknown>): void {
  for (const [name, value] of Object.entries(state) as readonly (readonly [string, unknown])[]) {
    if (value === null || value === undefined) continue;
    if (Array.isArray(value)) {
      if (value.length > 0) fields.set(prefix + name, value);
    } else if (typeof value === 'object') collect(value, `${prefix}${name}.`, fields);
    else fields.set(prefix + name, value);
  }
}

/**
 * What differs between two states of a record, by field.
 *
 * @returns fields of the former state in its order, then those that are new
 * @example changesBetween({ a: 1, b: 2 }, { a: 1, b: 3 }) -> [{ field: 'b', former: 2, present: 3 }]
 */
export function changesBetween(former: object, present: object): readonly FieldChange[] {
  const before = fieldsOf(former);
  const after = fieldsOf(present);
  const names = new Set([...before.keys(), ...after.keys()]);
  return [...names].flatMap((field) => {
    const change = { field, former: before.get(field) ?? null, present: after.get(field) ?? null };
    return isSame(change.former, change.present) ? [] : [change];
  });
}

function isSame(former: unknown, present: unknown): boolean {
  if (former === present) return true;
  return Array.isArray(former) && JSON.stringify(former) === JSON.stringify(present);
}
