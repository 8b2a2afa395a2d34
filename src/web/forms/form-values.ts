import { z } from 'zod';

/** What was typed into a form: every field with the texts sent under its name. */
export type FormValues = ReadonlyMap<string, readonly string[]>;

const Body = z.record(z.string(), z.union([z.string(), z.array(z.string())]));

/** The fields of a form as they were sent; none when the body is no form. */
export function readForm(body: unknown): FormValues {
  // A parsed form has no prototype; the copy has an ordinary one, which the check needs.
  const read = Body.safeParse(typeof body === 'object' && body !== null ? { ...body } : body);
  if (!read.success) return new Map();
  return new Map(
    Object.entries(read.data).map(([name, value]) => [name, typeof value === 'string' ? [value] : value]),
  );
}

/** The text of a field, trimmed, with line ends as the record keeps them; empty where there is none. */
export function textOf(form: FormValues, name: string): string {
  return typedOf(form, name).replaceAll('\r\n', '\n').trim();
}

/** The text of a field exactly as it was typed, such as a passphrase. */
export function typedOf(form: FormValues, name: string): string {
  return form.get(name)?.[0] ?? '';
}

/** Every value that was chosen under a name. */
export function chosenOf(form: FormValues, name: string): readonly string[] {
  return form.get(name) ?? [];
}

/** Whether a box was ticked. */
export function isTicked(form: FormValues, name: string): boolean {
  return form.has(name);
}

/**
 * A whole number as it was typed; null where the text is none.
 *
 * @example wholeNumberOf of '12' -> 12; of '' or '1.5' or '0x10' -> null
 */
export function wholeNumberOf(form: FormValues, name: string): number | null {
  const text = textOf(form, name).replaceAll(/[\s,]/g, '');
  return /^[-\u2212]?\d{1,9}$/.test(text) ? Number(text.replace('\u2212', '-')) : null;
}

/** A number with or without decimals as it was typed; null where the text is none. */
export function numberOf(form: FormValues, name: string): number | null {
  const text = textOf(form, name).replaceAll(/\s/g, '').replace('\u2212', '-');
  return /^-?\d{1,9}(?:\.\d{1,9})?$/.test(text) ? Number(text) : null;
}
