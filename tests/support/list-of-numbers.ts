import type { Figure } from '../../src/domain/indicators/figure.js';
import type { FigureOfReport, NumberOfReport } from './numbers-of-report.js';
import type { PlaceInList } from './places-of-numbers.js';

/** A row of the list of all numbers, read back from a file: by its columns; null where a cell is empty. */
export type ListRow = Readonly<Record<string, string | number | null>>;

/** Finds rows of the list, those of a figure or of a title without going through all of them. */
export interface ListOfNumbers {
  readonly rowsAt: (is: PlaceInList['is']) => readonly ListRow[];
}

export function listOfNumbers(rows: readonly ListRow[]): ListOfNumbers {
  const indexes = ['figureId', 'title'].map((column) => ({ column, byText: grouped(rows, column) }));
  return {
    rowsAt: (is) => {
      const index = indexes.find(({ column }) => is[column] !== undefined);
      const among = index === undefined ? rows : (index.byText.get(is[index.column] ?? '') ?? []);
      return among.filter((row) => Object.entries(is).every(([column, text]) => says(row[column], text)));
    },
  };
}

/** What of a number is not as the model has it; null where it stands in its place in each row that has it. */
export function faultOf(
  { rowsAt }: ListOfNumbers,
  { kind, value, around }: NumberOfReport,
  { column, is }: PlaceInList,
): string | null {
  const asked = Object.fromEntries(Object.entries(is).map(([name, text]) => [name, filled(text, around)]));
  const rows = rowsAt(asked);
  const found = [...new Set(rows.map((row) => row[column] ?? null))];
  const isThere =
    value === null ? found.every((each) => each === null) : found.length === 1 && found[0] === value;
  return isThere
    ? null
    : `${kind} is ${value}; ${column} of ${JSON.stringify(asked)} is ${JSON.stringify(found)}`;
}

/** The same of a counted share: every number of it. */
export function faultOfFigure(
  { rowsAt }: ListOfNumbers,
  { kind, figure, around }: FigureOfReport,
): string | null {
  const isEarlier = kind.endsWith('/then');
  const group = isEarlier ? { group: filled('{period.label}, data cut {asAt}', around) } : {};
  const rows = rowsAt({ figureId: figure.id, statistic: 'share', ...group }).filter(
    ({ section }) => (section === 'comparisons') === isEarlier,
  );
  const expected = columnsOf(figure);
  const wrong = rows.flatMap((row) =>
    Object.entries(expected).flatMap(([column, value]) =>
      (row[column] ?? null) === value ? [] : [`${column} is ${row[column]} and not ${value}`],
    ),
  );
  if (rows.length === 0) wrong.push('it has no row');
  return wrong.length === 0 ? null : `${kind} ${figure.id}: ${[...new Set(wrong)].join(', ')}`;
}

function columnsOf(figure: Figure): Readonly<Record<string, string | number | null>> {
  const { ruleId, numerator, denominator, open, excluded, people, percentage, interval, bounds } = figure;
  return {
    ruleId,
    n: denominator,
    numerator,
    denominator,
    open,
    excluded: excluded.reduce((sum, { count }) => sum + count, 0),
    excludedBecause:
      excluded.length === 0 ? null : excluded.map(({ count, reason }) => `${count} ${reason}`).join('; '),
    peopleInNumerator: people.numerator,
    peopleInDenominator: people.denominator,
    value: percentage,
    low: interval?.low ?? null,
    high: interval?.high ?? null,
    worst: bounds?.worst ?? null,
    best: bounds?.best ?? null,
  };
}

function filled(template: string, around: NumberOfReport['around']): string {
  return template.replaceAll(/\{([\w.]+)\}/g, (_, name: string) => {
    const said = around[name];
    if (said === undefined)
      throw new Error(`The model says no ${name} around this: ${Object.keys(around).join(', ')}`);
    return String(said);
  });
}

function says(cell: string | number | null | undefined, text: string): boolean {
  if (text.endsWith('*')) return String(cell ?? '').startsWith(text.slice(0, -1));
  return String(cell ?? '') === text;
}

function grouped(rows: readonly ListRow[], column: string): ReadonlyMap<string, readonly ListRow[]> {
  const found = new Map<string, ListRow[]>();
  for (const row of rows) {
    const text = String(row[column] ?? '');
    const group = found.get(text);
    if (group === undefined) found.set(text, [row]);
    else group.push(row);
  }
  return found;
}
