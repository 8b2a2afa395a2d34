/** Why an import may be refused, by a stable code. */
export type ImportRefusal =
  /** The file is no table that can be read; the message says why. */
  | { readonly code: 'file-refused'; readonly message: string }
  /** Something must be said of the columns first. */
  | { readonly code: 'questions-open'; readonly questions: readonly string[] }
  /** Brought in, discarded or undone already. */
  | { readonly code: 'import-over' }
  /** All rows were asked for or none, and some are refused. */
  | { readonly code: 'rows-refused'; readonly refusedRows: number }
  /** Something was built on what was brought in. */
  | { readonly code: 'import-built-on' }
  /** A sheet of the team is being brought in, and is not whole yet. */
  | { readonly code: 'import-underway' };
