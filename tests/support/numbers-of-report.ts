import type { Figure } from '../../src/domain/indicators/figure.js';
import { isFigure } from './reported.js';

/** What is said around a number, by the names of the model: of the objects that hold it, the inner ones first. */
export type Around = Readonly<Record<string, string | number>>;

/** A number of the model that is no part of a counted share, or the place of one that cannot be worked out. */
export interface NumberOfReport {
  /** Which number it is, wherever it comes again: its path without indexes, such as `/waits[]/reached`. */
  readonly kind: string;
  readonly value: number | null;
  readonly around: Around;
}

/** A counted share of the model, with what is said around it. */
export interface FigureOfReport {
  readonly kind: string;
  readonly figure: Figure;
  readonly around: Around;
}

export interface NumbersOfReport {
  readonly numbers: readonly NumberOfReport[];
  readonly figures: readonly FigureOfReport[];
}

/** Objects whose names are data: each of their parts is of one kind. */
const KEYED = ['/cohorts'];

/**
 * Every number of a report, found by walking over whatever is in it.
 *
 * @param report as JSON has it
 * @returns where an object with numbers can be null, each of these numbers as null
 */
export function numbersOfReport(report: object): NumbersOfReport {
  const found: Found = { numbers: [], figures: [], nulls: [] };
  walk(report, '', {}, found);
  const kinds = [...new Set(found.numbers.map(({ kind }) => kind))];
  const missing = found.nulls.flatMap(({ kind, around }) =>
    kinds
      .filter(
        (each) => each === kind || (each.startsWith(`${kind}/`) && !each.slice(kind.length).includes('[]')),
      )
      .map((each) => ({ kind: each, value: null, around })),
  );
  return { numbers: [...found.numbers, ...missing], figures: found.figures };
}

interface Found {
  readonly numbers: NumberOfReport[];
  readonly figures: FigureOfReport[];
  readonly nulls: Omit<NumberOfReport, 'value'>[];
}

function walk(value: unknown, kind: string, around: Around, found: Found): void {
  if (typeof value === 'number') found.numbers.push({ kind, value, around });
  if (value === null) found.nulls.push({ kind, around });
  if (Array.isArray(value)) {
    value.forEach((part, index) => walk(part, `${kind}[]`, { ...around, number: index + 1 }, found));
  } else if (typeof value === 'object' && value !== null) {
    if (isFigure(value)) found.figures.push({ kind, figure: value, around });
    else walkParts(value, kind, { ...around, ...saidIn(value) }, found);
  }
}

function walkParts(value: object, kind: string, around: Around, found: Found): void {
  for (const [name, part] of partsOf(value)) {
    walk(part, `${kind}/${KEYED.includes(kind) ? '*' : name}`, around, found);
  }
}

/** The texts and numbers of an object by their names, those of its parts as `part.name`. */
function saidIn(value: object): Around {
  const own = saidOf(value);
  const inner = partsOf(value).flatMap(([name, part]) =>
    typeof part === 'object' && part !== null && !Array.isArray(part)
      ? saidOf(part).map(([each, said]): Said => [`${name}.${each}`, said])
      : [],
  );
  return Object.fromEntries([...inner, ...own]);
}

type Said = readonly [name: string, said: string | number];

function saidOf(value: object): readonly Said[] {
  return partsOf(value).flatMap(([name, part]): Said[] =>
    typeof part === 'string' || typeof part === 'number' ? [[name, part]] : [],
  );
}

function partsOf(value: object): readonly (readonly [string, unknown])[] {
  return Object.entries(value);
}
