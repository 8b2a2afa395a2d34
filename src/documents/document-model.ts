import type { Plot } from '../plots/svg.js';

/**
 * A document as its renderers take it: sections of paragraphs, tables and plots. Every number stands in it twice, unrounded
 * for whoever computes with it and as text for whoever reads it, so that all forms show the same.
 */
export interface Document {
  readonly title: string;
  /** Under the title: what it covers, the data cut, whether it may still move. */
  readonly subtitle: readonly string[];
  /** On every page of a printed form, such as `Data cut 25 November 2026`. */
  readonly footer: string;
  readonly sections: readonly Section[];
}

export interface Section {
  /** For links within the document, such as `waiting`. */
  readonly id: string;
  readonly title: string;
  /** At most 31 characters, for spreadsheets. */
  readonly sheetName: string;
  readonly blocks: readonly Block[];
}

export type Block =
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'paragraph'; readonly text: string }
  /** Sentences that each rest on figures. */
  | { readonly kind: 'sentences'; readonly items: readonly Sentence[] }
  | { readonly kind: 'table'; readonly table: Table }
  /** What belongs together, and may stand on a page of its own. */
  | Part
  /** A drawing with the table that has its numbers. */
  | {
      readonly kind: 'plot';
      readonly title: string;
      readonly plot: Plot;
      readonly table: Table;
      /** What is drawn of each row of the table, where it can be drawn within the table to save paper. */
      readonly strip?: Strip;
    };

/** Values with intervals on one axis, one for each row of a table. */
export interface Strip {
  readonly domain: readonly [number, number];
  readonly axis: string;
  /** Lines across all rows, with their names. */
  readonly lines: readonly { readonly at: number; readonly label: string }[];
  /** As many as the table has rows; null where there is nothing to draw. */
  readonly rows: readonly StripRow[];
}

export interface StripRow {
  readonly value: number | null;
  readonly interval: { readonly low: number; readonly high: number } | null;
}

export interface Part {
  readonly kind: 'part';
  /** In an address; no other part of the section has it. */
  readonly id: string;
  readonly title: string;
  readonly blocks: readonly Block[];
}

export interface Sentence {
  readonly text: string;
  readonly links: readonly { readonly words: string; readonly to: Link }[];
}

export interface Table {
  readonly caption: string;
  readonly columns: readonly Column[];
  /** One cell a column; the first that is read names the row. */
  readonly rows: readonly (readonly Cell[])[];
  /** Rows that belong together, from the first row to the last, where people read; sheets say it in each row. */
  readonly groups?: readonly RowGroup[];
  /** What its marks say, below it where people read. */
  readonly note?: string;
  /** For whoever computes: a sheet keeps each row on one line, and the heads in sight. */
  readonly isList?: boolean;
}

/** Rows one after another under a head of their own. */
export interface RowGroup {
  readonly title: string;
  readonly rowCount: number;
}

export interface Column {
  readonly head: string;
  readonly kind: Cell['kind'];
  /** Left out where people read: ids for whoever computes. */
  readonly isForSheetsOnly?: boolean;
  /** Left out there too where no row has anything in it. */
  readonly isLeftOutWhenEmpty?: boolean;
}

/** What can be followed from a cell, where the form has links. */
export type Link =
  | {
      readonly kind: 'figure';
      readonly figureId: string;
      /** The period that it is of, and its cut, where they are not those of the document. */
      readonly of?: { readonly period: string; readonly asAt: string };
      /** Those who count so alone, such as `not-numerator`; everybody where it is left out. */
      readonly members?: string;
    }
  | { readonly kind: 'referral'; readonly referralId: string }
  /** What is kept out of the document's period because it was entered in error; by what it is. */
  | { readonly kind: 'entries-in-error'; readonly of: string };

export type Cell = TextCell | NumberCell | IntervalCell;

export interface TextCell {
  readonly kind: 'text';
  readonly text: string;
  /** It stands in the place of a number, such as a mark for one that is hidden. */
  readonly isInPlaceOfNumber?: boolean;
  readonly link?: Link;
}

/** A number, unrounded and as it is read; null where there is none, and then the text says so. */
export interface NumberCell {
  readonly kind: 'number';
  readonly text: string;
  readonly value: number | null;
  readonly places: number;
  readonly link?: Link;
}

/** Both ends of an interval; a spreadsheet has them in two columns. */
export interface IntervalCell {
  readonly kind: 'interval';
  readonly text: string;
  readonly low: number | null;
  readonly high: number | null;
  readonly places: number;
}
