/** A tag within a page of this service, with its attributes as they are meant. */
export interface Tag {
  /** In lower case, with a slash before it where it ends an element. */
  readonly name: string;
  /** By name; null where an attribute has no value. */
  readonly attributes: ReadonlyMap<string, string | null>;
  readonly start: number;
  readonly end: number;
}

const TAG = /<(\/?[a-z][a-z0-9]*)((?:[^"'<>]|"[^"]*"|'[^']*')*)>/gi;
const ATTRIBUTE = /([^\s"'=/]+)(?:="([^"]*)")?/g;

/** Every tag of a page in order. What stands in an attribute is no tag. */
export function tagsOf(html: string): readonly Tag[] {
  return [...html.matchAll(TAG)].map((match) => {
    const [text, name = '', attributes = ''] = match;
    return {
      name: name.toLowerCase(),
      attributes: new Map(
        [...attributes.matchAll(ATTRIBUTE)].map(([, key = '', value]) => [
          key,
          value === undefined ? null : meant(value),
        ]),
      ),
      start: match.index,
      end: match.index + text.length,
    };
  });
}

/** A tag as it is written. */
export function written(name: string, attributes: Tag['attributes']): string {
  const parts = [...attributes].map(([key, value]) => (value === null ? key : `${key}="${escaped(value)}"`));
  return `<${[name, ...parts].join(' ')}>`;
}

/** Text as it is written in a page, within quotes too. */
export function escaped(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&#34;');
}

function meant(text: string): string {
  return text
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll(/&(?:#34|quot);/g, '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&');
}
