import type { Cell, Table } from './document-model.js';

/** The columns that people read, by their place: none that is for sheets only, and none that may go where it is empty. */
export function columnsToRead({ columns, rows }: Table): readonly number[] {
  return columns.flatMap(({ isForSheetsOnly, isLeftOutWhenEmpty }, index) => {
    if (isForSheetsOnly === true) return [];
    const isEmpty = rows.every((cells) => hasNothing(cells[index]));
    return isLeftOutWhenEmpty === true && isEmpty ? [] : [index];
  });
}

function hasNothing(cell: Cell | undefined): boolean {
  switch (cell?.kind) {
    case undefined:
      return true;
    case 'text':
      return cell.text === '';
    case 'number':
      return cell.value === null || cell.value === 0;
    case 'interval':
      return cell.low === null;
  }
}
