/** Widest line of the text report. */
const TEXT_WIDTH = 100;

/**
 * Breaks a text into lines between words.
 *
 * @param indent spaces before every line; continuation lines get two more
 * @returns at least one line, none wider than the report, unless a single word is
 */
export function wrap(text: string, indent = 0): readonly string[] {
  const lines: string[] = [];
  let line = ' '.repeat(indent);
  let isFresh = true;
  for (const word of text.split(' ')) {
    if (!isFresh && line.length + 1 + word.length > TEXT_WIDTH) {
      lines.push(line);
      line = ' '.repeat(indent + 2);
      isFresh = true;
    }
    line = isFresh ? line + word : `${line} ${word}`;
    isFresh = false;
  }
  return [...lines, line];
}

/** A column of a text table. */
export interface Column {
  readonly width: number;
  readonly align: 'left' | 'right';
}

/**
 * Writes one row of a table. The first cell is broken over lines where it is too wide; any other takes room from the gap
 * before it, and pushes the rest on where there is none.
 */
export function row(columns: readonly Column[], cells: readonly string[]): readonly string[] {
  const [first, ...rest] = columns;
  if (first === undefined) return [];
  const [lead = '', ...more] = breakAt(cells[0] ?? '', first.width);
  const line = rest.reduce(
    (text, column, index) => `${text} ${fit(cells[index + 1] ?? '', column)}`,
    fit(lead, first),
  );
  return [fitLine(line.trimEnd()), ...more];
}

/** Takes the spaces that a line is too long by from its last gaps; at least one stays in each. */
function fitLine(line: string): string {
  let fitted = line;
  while (fitted.length > TEXT_WIDTH) {
    const gap = /(?<=\S) {2,}(?=\S)(?!.*\S {2,}\S)/.exec(fitted);
    if (gap === null) return fitted;
    fitted = fitted.slice(0, gap.index) + fitted.slice(gap.index + 1);
  }
  return fitted;
}

/** A heading with a line under it. */
export function heading(text: string): readonly string[] {
  return ['', text.toUpperCase(), '-'.repeat(TEXT_WIDTH)];
}

function fit(text: string, { width, align }: Column): string {
  return align === 'left' ? text.padEnd(width) : text.padStart(width);
}

/** Continuation lines stand two further in than the first. */
function breakAt(text: string, width: number): readonly string[] {
  const words = text.trimStart();
  const indent = text.length - words.length;
  const lines: string[] = [];
  let line = '';
  for (const word of words.split(' ')) {
    const room = width - indent - (lines.length > 0 ? 2 : 0);
    if (line !== '' && line.length + 1 + word.length > room) {
      lines.push(line);
      line = word;
    } else {
      line = line === '' ? word : `${line} ${word}`;
    }
  }
  return [...lines, line].map((each, index) => ' '.repeat(indent + (index > 0 ? 2 : 0)) + each);
}
