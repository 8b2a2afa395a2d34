import { readSheets, tablesOf } from './sheets.js';

/** A table as it was read back from any form: what names it, its heads, and its cells as texts. */
export interface ReadTable {
  readonly caption: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** The tables of a page. */
export function tablesInPage(html: string): readonly ReadTable[] {
  return [...html.matchAll(/<table\b[^>]*>([\s\S]*?)<\/table>/g)].map(([, table = '']) => {
    const [heads = [], ...rows] = parts(table, /<tr\b[^>]*>([\s\S]*?)<\/tr>/g).map((row) =>
      parts(row, /<t[hd]\b[^>]*>([\s\S]*?)<\/t[hd]>/g).map(wordsOf),
    );
    return { caption: wordsOf(parts(table, /<caption\b[^>]*>([\s\S]*?)<\/caption>/g)[0] ?? ''), heads, rows };
  });
}

/** The tables of a spreadsheet. */
export async function tablesInSheets(file: Buffer): Promise<readonly ReadTable[]> {
  return tablesOf(await readSheets(file)).map(({ caption, rows }) => ({
    caption,
    heads: Object.keys(rows[0] ?? {}),
    rows: rows.map((row) => Object.values(row).map((cell) => (cell === null ? '' : String(cell)))),
  }));
}

function parts(text: string, pattern: RegExp): readonly string[] {
  return [...text.matchAll(pattern)].map(([, inner = '']) => inner);
}

function wordsOf(html: string): string {
  return html
    .replaceAll(/<[^>]*>/g, '')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&#34;', '"')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&')
    .replaceAll(/\s+/g, ' ')
    .trim();
}
