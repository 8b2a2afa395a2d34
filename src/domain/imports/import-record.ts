/** How far an import has come. */
export const IMPORT_STATES = ['draft', 'done', 'discarded', 'undone'] as const;
export type ImportState = (typeof IMPORT_STATES)[number];

/** What an import can bring into the record. */
export const IMPORTED_KINDS = ['patient', 'referral', 'triage', 'sessions', 'assessment', 'closure'] as const;
export type ImportedKind = (typeof IMPORTED_KINDS)[number];

/** Something that an import has brought in, and the row that it came from. */
export interface ImportedPart {
  readonly kind: ImportedKind;
  /** Id of the patient, the referral or the assessment; a triage, sessions and a closure are named by their referral. */
  readonly subjectId: string;
  readonly rowNumber: number;
}
