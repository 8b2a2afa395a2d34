/** One line of the table that a run prints. */
export interface Line {
  readonly name: string;
  readonly value: string;
  readonly baseline: string;
  readonly ratio: string;
  readonly goal: string;
  readonly isMet: boolean;
  readonly howMeasured: string;
}

const HEADINGS = ['measurement', 'value', 'baseline', 'ratio (least to greatest)', 'goal', 'met'] as const;

/** The lines as a table in columns, with how each was measured below it. */
export function renderTable(lines: readonly Line[]): string {
  const rows = lines.map((line) => [
    line.name,
    line.value,
    line.baseline,
    line.ratio,
    line.goal,
    line.isMet ? 'yes' : 'NO',
  ]);
  const widths = HEADINGS.map((heading, column) =>
    Math.max(heading.length, ...rows.map((row) => row[column]?.length ?? 0)),
  );
  const render = (cells: readonly string[]): string =>
    cells
      .map((cell, column) => cell.padEnd(widths[column] ?? 0))
      .join('  ')
      .trimEnd();
  return [
    render(HEADINGS),
    render(widths.map((width) => '-'.repeat(width))),
    ...rows.map(render),
    '',
    'How measured',
    ...lines.map((line) => `- ${line.name}: ${line.howMeasured}`),
  ].join('\n');
}
