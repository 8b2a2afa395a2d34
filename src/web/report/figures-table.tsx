import { columnsToRead } from '../../documents/columns-to-read.js';
import type { Cell, Link, RowGroup, Table } from '../../documents/document-model.js';
import { attributeText } from '../components/field.js';
import { TableFrame } from '../components/table.js';

interface FiguresTableProps {
  readonly table: Table;
  readonly addressOf: (link: Link) => string;
}

/** A table of a report. Nearly all of its cells are numbers, so that words are what is marked: a report has thousands. */
export function FiguresTable({ table, addressOf }: FiguresTableProps): JSX.Element {
  const { caption, columns, rows, groups, note } = table;
  if (rows.length === 0) return <p safe>{`${caption}: none.`}</p>;
  const shown = columnsToRead(table);
  const heads = shown.map((index) => (
    <th scope="col" class={lookOf(columns[index]?.kind)} safe>
      {columns[index]?.head ?? ''}
    </th>
  ));
  const body = rows.map((cells) => (
    <tr>{shown.map((index, place) => cellView(cells[index], place === 0, addressOf))}</tr>
  ));
  const bodies = groups === undefined ? <tbody>{body}</tbody> : groupedBodies(groups, body, shown.length);
  return <TableFrame caption={caption} look="numbers" heads={heads} bodies={bodies} note={note} />;
}

/** Each group is a body of its own, under a head that runs across it. */
function groupedBodies(
  groups: readonly RowGroup[],
  body: readonly JSX.Element[],
  columnCount: number,
): JSX.Element {
  let at = 0;
  return (
    <>
      {groups.map(({ title, rowCount }) => {
        const rows = body.slice(at, at + rowCount);
        at += rowCount;
        return (
          <tbody>
            <tr class="group">
              <th scope="rowgroup" colspan={columnCount}>
                <span safe>{title}</span>
              </th>
            </tr>
            {rows}
          </tbody>
        );
      })}
    </>
  );
}

function cellView(
  cell: Cell | undefined,
  isHead: boolean,
  addressOf: FiguresTableProps['addressOf'],
): JSX.Element {
  if (cell === undefined) return <td></td>;
  const isEmpty = cell.kind === 'number' && cell.value === null;
  const link = cell.kind === 'interval' || isEmpty ? undefined : cell.link;
  const look = isHead ? lookOfRowHead(cell.kind) : lookOfCell(cell);
  if (link !== undefined) {
    const anchor = (
      <a href={attributeText(addressOf(link))} safe>
        {cell.text}
      </a>
    );
    return isHead ? (
      <th scope="row" class={look}>
        {anchor}
      </th>
    ) : (
      <td class={look}>{anchor}</td>
    );
  }
  return isHead ? (
    <th scope="row" class={look} safe>
      {cell.text}
    </th>
  ) : (
    <td class={look} safe>
      {cell.text}
    </td>
  );
}

/** The first cell of a row names it, mostly in words. */
function lookOfRowHead(kind: Cell['kind']): 'number' | undefined {
  return kind === 'text' ? undefined : 'number';
}

function lookOfCell(cell: Cell): 'words' | undefined {
  return cell.kind === 'text' && cell.isInPlaceOfNumber === true ? undefined : lookOf(cell.kind);
}

function lookOf(kind: Cell['kind'] | undefined): 'words' | undefined {
  return kind === 'text' ? 'words' : undefined;
}
