import type { Block, Cell, Document, Link, Table } from '../../src/documents/document-model.js';

/** A number of a document that counts somebody, with where it stands and how it opens. */
export interface CountInDocument {
  readonly where: string;
  readonly head: string;
  readonly value: number;
  /** Null where it stands beside a number of its row that opens. */
  readonly link: Link | null;
  /** The link of the number before it in its row that opens. */
  readonly rowLink: Link | null;
}

/** Numbers that count nobody of the team: days, values and targets, and the people of a paper. */
const COUNTS_NOBODY = ['Days', 'Longest still waiting, days', 'Published n', 'Value'];

/** Every whole number in the tables of a document that counts referrals, people or pairs. */
export function countsIn({ sections }: Document): readonly CountInDocument[] {
  return sections.flatMap(({ id, blocks }) =>
    blocks.flatMap(tablesOf).flatMap((table) => countsOf(id, table)),
  );
}

/** Every table of a document, those of drawings too. */
export function tablesIn({ sections }: Document): readonly Table[] {
  return sections.flatMap(({ blocks }) => blocks.flatMap(tablesOf));
}

function tablesOf(block: Block): readonly Table[] {
  if (block.kind === 'part') return block.blocks.flatMap(tablesOf);
  return block.kind === 'table' || block.kind === 'plot' ? [block.table] : [];
}

function countsOf(section: string, { caption, columns, rows }: Table): readonly CountInDocument[] {
  return rows.flatMap((cells) => {
    return cells.flatMap((cell, index): readonly CountInDocument[] => {
      const head = columns[index]?.head ?? '';
      if (cell.kind !== 'number' || cell.value === null || COUNTS_NOBODY.includes(head)) return [];
      if (cell.places !== 0 || isEndOfClass(columns, index)) return [];
      const before = cells.slice(0, index).findLast((each) => linkOf(each)?.kind === 'figure');
      const where = `${section} / ${caption} / ${cells[0]?.text ?? ''} / ${head}`;
      return [
        {
          where,
          head,
          value: cell.value,
          link: linkOf(cell),
          rowLink: before === undefined ? null : linkOf(before),
        },
      ];
    });
  });
}

/** The first two columns of a table of classes are changes, not people. */
function isEndOfClass(columns: Table['columns'], index: number): boolean {
  return /^Change (?:from|above), /.test(columns[0]?.head ?? '') && index < 2;
}

function linkOf(cell: Cell): Link | null {
  return cell.kind === 'interval' ? null : (cell.link ?? null);
}
