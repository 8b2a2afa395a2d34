/** What a column of the record holds, so that it can be told in words and checked when it comes back. */
export type ColumnKind =
  | { readonly type: 'id' }
  /** The id, or the number, of a row of another table. */
  | { readonly type: 'reference'; readonly table: string; readonly column: string }
  | { readonly type: 'text' }
  | { readonly type: 'code'; readonly codes: readonly string[] }
  | { readonly type: 'nhs-number' }
  | { readonly type: 'date' }
  /** UTC, with milliseconds. */
  | { readonly type: 'instant' }
  | { readonly type: 'number'; readonly min: number; readonly max: number; readonly unit: string }
  | { readonly type: 'yes-no' }
  /** JSON text; of lists and objects only the outermost form is known here. */
  | { readonly type: 'json'; readonly form: 'object' | 'list-of-texts' | 'list-of-numbers' }
  /** SHA-256, hexadecimal. */
  | { readonly type: 'digest' }
  /** A number that need not be whole. */
  | { readonly type: 'decimal' }
  /** A month, YYYY-MM. */
  | { readonly type: 'month' }
  /** Stands for an id: 32 hexadecimal digits that say nothing without the key. */
  | { readonly type: 'pseudonym' }
  /** Bytes: a file of its own beside the tables. */
  | { readonly type: 'file' };

/**
 * What a column gives away of somebody:
 * - `person`: says who somebody is
 * - `free-text`: typed by people, and may name anybody or anything
 * - `staff`: says who of the team did something
 */
export type Sensitivity = 'person' | 'free-text' | 'staff' | 'none';

/** One column of a table of the record, under the name that it has there: units end the name. */
export interface RecordColumn {
  readonly name: string;
  readonly kind: ColumnKind;
  /** Whether it may be empty. */
  readonly isOptional: boolean;
  readonly sensitivity: Sensitivity;
  readonly meaning: string;
}

/**
 * How the rows of one team are told from those of others: by a column that holds the team, or by one that leads to a table
 * which has such a column.
 */
export type Ownership =
  | { readonly by: 'team'; readonly column: string }
  | { readonly by: 'parent'; readonly column: string; readonly table: string; readonly parentColumn: string }
  /** Commissioners belong to no team: those that the team's record names. */
  | { readonly by: 'named-commissioners' };

/** A table of a file as its data dictionary tells of it. */
export interface DescribedTable {
  readonly name: string;
  /** What a row is, in words. */
  readonly holds: string;
  /** Empty where rows may be alike. */
  readonly key: readonly string[];
  readonly columns: readonly RecordColumn[];
}

/** One table of the record as it leaves the service, a row each as it is stored. */
export interface RecordTable extends DescribedTable {
  readonly owned: Ownership;
}

/** A value as it is stored: null for nothing. */
export type StoredValue = string | number | Uint8Array | null;

/** A row by column name. */
export type StoredRow = Readonly<Record<string, StoredValue>>;
