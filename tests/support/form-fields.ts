/** What a browser would send of a form: every field with what stands in it, in lists where a name comes more than once. */
export type FormFields = Record<string, string | string[]>;

/** The forms of the content of a page that are sent by POST, as they are written. */
export function formsOf(html: string): readonly string[] {
  const main = /<main\b[\s\S]*<\/main>/.exec(html)?.[0] ?? '';
  return [...main.matchAll(/<form\b[^>]*method="post"[\s\S]*?<\/form>/g)].map(([form]) => form);
}

/** The fields of a form as they stand in it. */
export function fieldsOfForm(form: string): FormFields {
  const fields: Record<string, string[]> = {};
  const add = (name: string, value: string) => (fields[name] ??= []).push(value);
  const controls =
    /<input\b((?:[^">]|"[^"]*")*)>|<(select|textarea)\b((?:[^">]|"[^"]*")*)>\n?([\s\S]*?)<\/\2>/g;
  for (const [, input, kind, attributes = '', content = ''] of form.matchAll(controls)) {
    const name = attributeOf(input ?? attributes, 'name');
    if (name === null) continue;
    if (kind === 'textarea') add(name, plain(content));
    else if (kind === 'select') add(name, chosenOption(content));
    else if (isSent(input ?? '')) add(name, attributeOf(input ?? '', 'value') ?? '');
  }
  return Object.fromEntries(
    Object.entries(fields).map(([name, values]) => [name, values.length === 1 ? (values[0] ?? '') : values]),
  );
}

function isSent(input: string): boolean {
  const type = attributeOf(input, 'type') ?? 'text';
  return type !== 'file' && (!['radio', 'checkbox'].includes(type) || / checked(?:\s|\/|$)/.test(input));
}

function chosenOption(options: string): string {
  const all = [...options.matchAll(/<option\b((?:[^">]|"[^"]*")*)>/g)].map(([, text = '']) => text);
  const chosen = all.find((text) => / selected(?:\s|$)/.test(text)) ?? all[0] ?? '';
  return attributeOf(chosen, 'value') ?? '';
}

function attributeOf(attributes: string, name: string): string | null {
  const found = new RegExp(`(?:^|\\s)${name}="([^"]*)"`).exec(attributes)?.[1];
  return found === undefined ? null : plain(found);
}

function plain(text: string): string {
  return text
    .replaceAll('&#34;', '"')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&amp;', '&');
}
