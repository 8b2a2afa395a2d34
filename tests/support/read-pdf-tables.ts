import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { ReadTable } from './read-tables.js';

interface Node {
  readonly role?: string;
  readonly id?: string;
  readonly children?: readonly Node[];
}

/** The tables of a tagged PDF as somebody hears them: each named by the paragraph before it, put together across pages. */
export async function tablesInPdf(file: Buffer): Promise<readonly ReadTable[]> {
  const loading = getDocument({ data: new Uint8Array(file), verbosity: 0 });
  const pdf = await loading.promise;
  const tables: { readonly caption: string; readonly rows: string[][] }[] = [];
  let caption = '';
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const page = await pdf.getPage(number);
    const words = await wordsById(page);
    for (const node of blocksOf(await page.getStructTree())) {
      if (node.role !== 'Table') {
        caption = wordsIn(node, words);
        continue;
      }
      const cells = (node.children ?? []).map((row) =>
        (row.children ?? []).map((cell) => wordsIn(cell, words)),
      );
      // Rows that stand on another page are in the tree of this one as well, with nothing in them.
      const rows = cells.filter((row) => row.some((each) => each !== ''));
      if (rows.length === 0) continue;
      const last = tables[tables.length - 1];
      // On the next page a table goes on without a paragraph before it.
      if (last?.caption === caption) last.rows.push(...rows);
      else tables.push({ caption, rows });
    }
  }
  await loading.destroy();
  return tables.map((table) => ({
    caption: table.caption,
    heads: table.rows[0] ?? [],
    rows: table.rows.slice(1),
  }));
}

/** The text of each marked piece of a page, by its id. */
async function wordsById(page: PDFPageProxy): Promise<ReadonlyMap<string, string>> {
  const words = new Map<string, string>();
  let id = '';
  for (const item of (await page.getTextContent({ includeMarkedContent: true })).items) {
    if ('type' in item) id = item.id ?? '';
    else if (id !== '') words.set(id, `${words.get(id) ?? ''}${item.str}${item.hasEOL ? ' ' : ''}`);
  }
  return words;
}

/** Headings, paragraphs and tables in the order in which they are read. */
function blocksOf(node: Node | null): readonly Node[] {
  if (node === null) return [];
  if (node.role === 'Table' || /^(?:P|H\d)$/.test(node.role ?? '')) return [node];
  return (node.children ?? []).flatMap(blocksOf);
}

function wordsIn(node: Node, words: ReadonlyMap<string, string>): string {
  const own = node.id === undefined ? [] : [words.get(node.id) ?? ''];
  return [...own, ...(node.children ?? []).map((child) => wordsIn(child, words))]
    .join(' ')
    .replaceAll(/\s+/g, ' ')
    .trim();
}
