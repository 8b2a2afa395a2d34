import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { ExtensionField } from '../extensions.js';
import { extensionUrl } from '../vocabulary.js';
import { memberAt, needed, notTaken } from './fields.js';
import type { Gathered } from './fields.js';
import type { OpenElement } from './reading.js';

/** The extensions of an element, asked for by the field that they carry. What is absent or cannot be taken reads as null. */
export interface OpenExtensions<Field extends string> {
  readonly code: <Member extends string>(field: Field, members: readonly Member[]) => Member | null;
  /** As code, and a fault where it is absent. */
  readonly neededCode: <Member extends string>(field: Field, members: readonly Member[]) => Member | null;
  readonly whole: (field: Field, limits: { readonly min: number; readonly max: number }) => number | null;
  readonly date: (field: Field) => PlainDate | null;
  /** As date, and a fault where it is absent. */
  readonly neededDate: (field: Field) => PlainDate | null;
  /** One that carries no such field, by its address. */
  readonly other: (url: string) => OpenElement | null;
  /** Whatever was not asked for is not kept; to be called last. */
  readonly leaveRest: () => void;
}

/**
 * Opens the extensions of an element. Where each field stands is noted, so that a rule that it breaks can point to it.
 *
 * @param part pointer of the entry that the fields belong to, such as `/patient`
 */
export function openExtensions<Field extends string>(
  element: OpenElement,
  fields: readonly ExtensionField<Field>[],
  { part, gathered }: { readonly part: string; readonly gathered: Gathered },
): OpenExtensions<Field> {
  const waiting = element.parts('extension').map((extension) => ({ extension, url: extension.text('url') }));
  for (const { field } of fields) gathered.places.set(`${part}/${field}`, element.at('extension'));

  const take = (url: string): OpenElement | null => {
    const found = waiting.filter((each) => each.url === url);
    for (const each of found) waiting.splice(waiting.indexOf(each), 1);
    const [first, second] = found;
    if (second !== undefined) notTaken(gathered, second.extension.pointer, 'This extension stands twice.');
    return first?.extension ?? null;
  };
  const find = (field: Field): { extension: OpenElement; element: string; pointer: string } | null => {
    const known = fields.find((each) => each.field === field);
    const extension = known === undefined ? null : take(extensionUrl(known.name));
    if (known === undefined || extension === null) return null;
    const pointer = extension.at(known.element);
    gathered.places.set(`${part}/${field}`, pointer);
    if (!extension.has(known.element)) {
      needed(gathered, pointer, `Give the value as ${known.element}.`);
      extension.leave();
      return null;
    }
    return { extension, element: known.element, pointer };
  };
  const code = <Member extends string>(field: Field, members: readonly Member[]): Member | null => {
    const found = find(field);
    const value = found?.extension.text(found.element) ?? null;
    if (found === null || value === null) return null;
    return memberAt(gathered, members, { value, pointer: found.pointer });
  };
  const date = (field: Field): PlainDate | null => {
    const found = find(field);
    return found === null ? null : found.extension.date(found.element);
  };
  const tellNeeded = (field: Field): void => {
    const url = extensionUrl(fields.find((each) => each.field === field)?.name ?? field);
    if (waiting.every((each) => each.url !== url)) {
      needed(gathered, element.at('extension'), `Give the extension ${url}.`);
    }
  };
  return {
    code,
    date,
    neededCode: (field, members) => {
      tellNeeded(field);
      return code(field, members);
    },
    neededDate: (field) => {
      tellNeeded(field);
      return date(field);
    },
    whole: (field, { min, max }) => {
      const found = find(field);
      const value = found?.extension.whole(found.element) ?? null;
      if (found === null || value === null || (value >= min && value <= max)) return value;
      return notTaken(gathered, found.pointer, `Give a whole number from ${min} to ${max}.`);
    },
    other: take,
    leaveRest: () => waiting.forEach(({ extension }) => extension.leave()),
  };
}
