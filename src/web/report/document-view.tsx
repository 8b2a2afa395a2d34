import { columnsToRead } from '../../documents/columns-to-read.js';
import type {
  Block,
  Cell,
  Document,
  Link,
  Section,
  Table as DocumentTable,
} from '../../documents/document-model.js';
import { attributeText } from '../components/field.js';
import { Figure } from '../components/parts.js';
import { Table, Text } from '../components/table.js';

/** Where a link of the document leads. */
export type AddressOf = (link: Link) => string;

/** The sections of a document, with a list of contents. */
export function DocumentView({
  document,
  addressOf,
}: {
  readonly document: Document;
  readonly addressOf: AddressOf;
}): JSX.Element {
  return (
    <>
      <nav class="contents" aria-label="Contents">
        <ol>
          {document.sections.map(({ id, title }) => (
            <li>
              <a href={`#${id}`} safe>
                {title}
              </a>
            </li>
          ))}
        </ol>
      </nav>
      {document.sections.map((section) => (
        <SectionView section={section} addressOf={addressOf} />
      ))}
    </>
  );
}

function SectionView({
  section,
  addressOf,
}: {
  readonly section: Section;
  readonly addressOf: AddressOf;
}): JSX.Element {
  const { id, title, blocks } = section;
  return (
    <section aria-labelledby={id}>
      <h2 id={id} safe>
        {title}
      </h2>
      {blocks.map((block) => (
        <BlockView block={block} addressOf={addressOf} />
      ))}
    </section>
  );
}

/** A table of more columns than this stands below its drawing, not beside it. */
const MOST_COLUMNS_BESIDE = 6;

function BlockView({
  block,
  addressOf,
}: {
  readonly block: Block;
  readonly addressOf: AddressOf;
}): JSX.Element {
  switch (block.kind) {
    case 'heading':
      return <h3 safe>{block.text}</h3>;
    case 'paragraph':
      return <p safe>{block.text}</p>;
    case 'sentences':
      return (
        <ul class="sentences">
          {block.items.map(({ text, links }) => (
            <li>
              <span safe>{text}</span>
              {links.map(({ words, to }) => (
                <>
                  {' '}
                  <a class="small not-printed" href={attributeText(addressOf(to))} safe>
                    {words}
                  </a>
                </>
              ))}
            </li>
          ))}
        </ul>
      );
    case 'part':
      return (
        <details class="part">
          <summary>
            <h3 safe>{block.title}</h3>
          </summary>
          {block.blocks.map((inner) => (
            <BlockView block={inner} addressOf={addressOf} />
          ))}
        </details>
      );
    case 'table':
      return <TableView table={block.table} addressOf={addressOf} />;
    case 'plot': {
      const isNarrow = columnsToRead(block.table).length <= MOST_COLUMNS_BESIDE;
      return (
        <Figure title={block.title} plot={block.plot.svg} table={isNarrow ? 'beside' : 'below'}>
          <TableView table={block.table} addressOf={addressOf} />
        </Figure>
      );
    }
  }
}

function TableView({
  table,
  addressOf,
}: {
  readonly table: DocumentTable;
  readonly addressOf: AddressOf;
}): JSX.Element {
  const { caption, columns, rows } = table;
  if (rows.length === 0) return <p safe>{`${caption}: none.`}</p>;
  const indexes = columnsToRead(table);
  return (
    <Table
      caption={caption}
      columns={indexes.map((index) => ({
        head: columns[index]?.head ?? '',
        isNumber: columns[index]?.kind !== 'text',
      }))}
      rows={rows.map((cells) =>
        indexes.map((index) => <CellView cell={cells[index]} addressOf={addressOf} />),
      )}
    />
  );
}

function CellView({
  cell,
  addressOf,
}: {
  readonly cell: Cell | undefined;
  readonly addressOf: AddressOf;
}): JSX.Element {
  if (cell === undefined) return '';
  const link = cell.kind === 'interval' ? undefined : cell.link;
  if (link === undefined || cell.text === '-') return <Text value={cell.text} />;
  return (
    <a href={attributeText(addressOf(link))} safe>
      {cell.text}
    </a>
  );
}
