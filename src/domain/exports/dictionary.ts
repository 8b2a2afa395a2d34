import type { ColumnKind, DescribedTable, RecordColumn, Sensitivity } from './record-table.js';

/** The headings of a data dictionary as a table. */
export const DICTIONARY_HEADINGS = [
  'table',
  'column',
  'type',
  'unit',
  'may_be_empty',
  'codes',
  'says_of_people',
  'meaning',
] as const;

/** A data dictionary as a table: a row for each column, under its headings. */
export function dictionaryRows(tables: readonly DescribedTable[]): readonly (readonly string[])[] {
  return tables.flatMap((table) =>
    table.columns.map((column) => [
      table.name,
      column.name,
      typeWords(column.kind),
      unitOf(column.kind),
      column.isOptional ? 'yes' : 'no',
      column.kind.type === 'code' ? column.kind.codes.join('; ') : '',
      SENSITIVITY_WORDS[column.sensitivity],
      column.meaning,
    ]),
  );
}

/** The same in prose, to be read: a heading for each table, a line for each column. */
export function dictionaryText(tables: readonly DescribedTable[]): string {
  return tables
    .map(({ name, holds, key, columns }) =>
      [
        `${name}.csv`,
        `  ${holds}.`,
        ...(key.length === 0 ? [] : [`  Key: ${key.join(', ')}.`]),
        '',
        ...columns.map(columnLine),
        '',
      ].join('\r\n'),
    )
    .join('\r\n');
}

function columnLine(column: RecordColumn): string {
  const unit = unitOf(column.kind);
  const also = [
    typeWords(column.kind),
    ...(unit === '' ? [] : [`in ${unit}`]),
    ...(column.isOptional ? ['may be empty'] : []),
    ...(column.kind.type === 'code' ? [`one of: ${column.kind.codes.join(', ')}`] : []),
    ...(column.sensitivity === 'none' ? [] : [SENSITIVITY_WORDS[column.sensitivity]]),
  ];
  return `  - ${column.name}: ${column.meaning} (${also.join('; ')})`;
}

const SENSITIVITY_WORDS: Readonly<Record<Sensitivity, string>> = {
  person: 'says who somebody is',
  'free-text': 'free text, may name anybody',
  staff: 'says who of the team',
  none: '',
};

function unitOf(kind: ColumnKind): string {
  return kind.type === 'number' ? kind.unit : '';
}

function typeWords(kind: ColumnKind): string {
  switch (kind.type) {
    case 'id':
      return 'id';
    case 'reference':
      return `${kind.column} of ${kind.table}`;
    case 'text':
      return 'text';
    case 'code':
      return 'code';
    case 'nhs-number':
      return 'NHS number';
    case 'date':
      return 'date, YYYY-MM-DD';
    case 'instant':
      return 'instant, UTC';
    case 'number':
      return `whole number, ${kind.min} to ${kind.max}`;
    case 'yes-no':
      return '1 for yes, 0 for no';
    case 'json':
      return 'JSON';
    case 'digest':
      return 'SHA-256, hexadecimal';
    case 'decimal':
      return 'number';
    case 'month':
      return 'month, YYYY-MM';
    case 'pseudonym':
      return 'pseudonym';
    case 'file':
      return 'name of a file beside the tables';
  }
}
