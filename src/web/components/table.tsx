import type { Children, PropsWithChildren } from '@kitajs/html';
import { attributeText } from './field.js';

/** A column of a table. */
export interface Column {
  readonly head: string;
  /** Numbers stand to the right, in figures of one width. */
  readonly isNumber?: boolean;
}

interface TableProps {
  /** What the table shows, and for whom; every table has one. */
  readonly caption: string;
  readonly columns: readonly Column[];
  /** One entry a column; a text must have been escaped by an element with `safe`. */
  readonly rows: readonly (readonly JSX.Element[])[];
  /** Whether the first entry of a row names the row. */
  readonly hasRowHeads?: boolean;
  /** Whether a phone shows each row as a block, every entry under the head of its column. */
  readonly isStacked?: boolean;
}

/** A table; on a narrow screen it moves sideways, by keyboard too, or is stacked. */
export function Table(props: TableProps): JSX.Element {
  const { caption, columns, rows, hasRowHeads = true, isStacked = false } = props;
  const heads = columns.map((column) => (
    <th scope="col" class={numberClass(column)} safe>
      {column.head}
    </th>
  ));
  const body = rows.map((cells) => (
    <tr>
      {cells.map((cell, index) => (
        <Cell column={columns[index]} isHead={hasRowHeads && index === 0} isStacked={isStacked}>
          {cell}
        </Cell>
      ))}
    </tr>
  ));
  return (
    <TableFrame
      caption={caption}
      look={isStacked ? 'stacked' : undefined}
      heads={heads}
      bodies={<tbody>{body}</tbody>}
    />
  );
}

interface TableFrameProps {
  readonly caption: string;
  /** A class of the table. */
  readonly look?: string | undefined;
  /** `th` elements. */
  readonly heads: JSX.Element[];
  /** What marks of it say, below it. */
  readonly note?: string | undefined;
  /** `tbody` elements. */
  readonly bodies: JSX.Element;
}

/** What is around the rows of a table: the region that moves sideways, the caption, the heads. */
export function TableFrame({ caption, look, heads, bodies, note }: TableFrameProps): JSX.Element {
  return (
    <div class="table" role="region" aria-label={attributeText(caption)} tabindex="0">
      <table class={look}>
        <caption safe>{caption}</caption>
        <thead>
          <tr>{heads}</tr>
        </thead>
        {bodies}
      </table>
      {note === undefined ? (
        ''
      ) : (
        <p class="muted small" safe>
          {note}
        </p>
      )}
    </div>
  );
}

type CellProps = PropsWithChildren<{
  readonly column: Column | undefined;
  readonly isHead: boolean;
  readonly isStacked: boolean;
}>;

function Cell({ column, isHead, isStacked, children }: CellProps): JSX.Element {
  const className = numberClass(column);
  return isHead ? (
    <th scope="row" class={className}>
      {children}
    </th>
  ) : (
    <td
      class={className}
      data-head={isStacked && column !== undefined ? attributeText(column.head) : undefined}
    >
      {children}
    </td>
  );
}

/** A text for a cell of a table, a list or a definition, escaped. */
export function Text({ value }: { readonly value: string }): JSX.Element {
  return <span safe>{value}</span>;
}

interface DefinitionsProps {
  readonly items: readonly { readonly term: string; readonly value: Children }[];
}

/** Facts by name. A value is JSX, or a text in `Text`. */
export function Definitions({ items }: DefinitionsProps): JSX.Element {
  return (
    <dl class="facts">
      {items.map(({ term, value }) => (
        <>
          <dt safe>{term}</dt>
          <dd>{value}</dd>
        </>
      ))}
    </dl>
  );
}

function numberClass(column: Column | undefined): string | undefined {
  return column?.isNumber === true ? 'number' : undefined;
}
