import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A PDF as another library reads it. */
export interface ReadPdf {
  readonly pages: readonly string[];
  /** Tags of the tree in the order in which they are read. */
  readonly tags: readonly string[];
  /** What stands in the place of drawings. */
  readonly alternatives: readonly string[];
  readonly bookmarks: readonly string[];
  readonly language: string | null;
  /** What the file says of itself, by name. */
  readonly properties: Readonly<Record<string, unknown>>;
  /** The same as XML, as it stands in the file. */
  readonly metadata: string;
}

interface Node {
  readonly role?: string;
  readonly alt?: string;
  readonly children?: readonly Node[];
}

export async function readPdf(file: Buffer): Promise<ReadPdf> {
  const loading = getDocument({ data: new Uint8Array(file), verbosity: 0 });
  const pdf = await loading.promise;
  const pages: string[] = [];
  const nodes: Node[] = [];
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const page = await pdf.getPage(number);
    const { items } = await page.getTextContent();
    pages.push(items.flatMap((item) => ('str' in item && item.str !== '' ? [item.str] : [])).join(' '));
    const tree = (await page.getStructTree()) as Node | null;
    if (tree !== null) nodes.push(...flat(tree));
  }
  const outline = (await pdf.getOutline()) as readonly { readonly title: string }[] | null;
  const { info, metadata } = await pdf.getMetadata();
  const properties = info as Readonly<Record<string, unknown>>;
  const language = properties['Language'];
  await loading.destroy();
  return {
    pages,
    tags: nodes.flatMap(({ role }) => role ?? []),
    alternatives: nodes.flatMap(({ alt }) => alt ?? []),
    bookmarks: outline?.map(({ title }) => title) ?? [],
    language: typeof language === 'string' ? language : null,
    properties,
    metadata: (metadata?.getRaw() as string) ?? '',
  };
}

function flat(node: Node): readonly Node[] {
  return [node, ...(node.children ?? []).flatMap(flat)];
}
