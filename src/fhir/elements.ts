import { v5 as namedId } from 'uuid';
import type { ExtensionField } from './extensions.js';
import { codeSystem, extensionUrl, LOINC_SYSTEM, UCUM_SYSTEM } from './vocabulary.js';

/** An element of FHIR as JSON; what is undefined is left out. */
export type Element = Readonly<Record<string, unknown>>;

/** A resource of a bundle. */
export interface Resource extends Element {
  readonly resourceType: string;
  /** A UUID, so that the resource is found in its bundle by `urn:uuid:`. */
  readonly id: string;
}

/** The namespace of ids that are derived from those of the record. */
const NAMESPACE = '3f0a6c52-0e7d-4b4e-9a55-2d9c1b7f6e10';

/**
 * The id of a resource that is no record of its own: the same whenever it is made.
 *
 * @param name what the resource is, unique over all records, such as `episode:` with the id of the referral
 */
export function derivedId(name: string): string {
  return namedId(name, NAMESPACE);
}

/** Points to a resource of the same bundle. */
export function referenceTo(id: string): Element {
  return { reference: `urn:uuid:${id}` };
}

/** A thing in words, with a LOINC code where there is a confirmed one. */
export function named(text: string, loinc?: string): Element {
  return loinc === undefined ? { text } : { coding: [{ system: LOINC_SYSTEM, code: loinc }], text };
}

/** An amount in a unit of UCUM. */
export function quantity(value: number, { unit, code }: { unit: string; code: string }): Element {
  return { value, unit, system: UCUM_SYSTEM, code };
}

/** A list, or nothing where it is empty: FHIR has no empty lists. */
export function listed<Item>(items: readonly Item[]): readonly Item[] | undefined {
  return items.length === 0 ? undefined : items;
}

/** The extensions that carry fields of a record; a field that is null is left out. */
export function extensionsOf<Field extends string>(
  fields: readonly ExtensionField<Field>[],
  record: Readonly<Record<Field, unknown>>,
): readonly Element[] {
  return fields.flatMap(({ field, name, element }) =>
    record[field] === null ? [] : [{ url: extensionUrl(name), [element]: record[field] }],
  );
}

/** A member of a closed set of ours, with its id as words. @example localCode('walking-aid', 'two-sticks') has the text 'two sticks' */
export function localCode(set: string, code: string): Element {
  return { coding: [{ system: codeSystem(set), code }], text: code.replaceAll('-', ' ') };
}
