/** A frozen summary: what was released, and what it was made of. */
export interface ReleaseTable {
  number: number;
  team_id: string;
  commissioner_id: string;
  financial_year: string;
  /** Label of the period. */
  period: string;
  mode: string;
  corrects: number | null;
  /** Canonical JSON of what left the team. */
  document: string;
  /** SHA-256 of the document, hexadecimal. */
  digest: string;
  /** JSON of the counts as they were; never leaves the team. */
  counts: string;
  counts_digest: string;
  /** JSON of the result of the attack. */
  attack: string;
  attacked_at: string;
  released_at: string;
  released_by: string;
  withdrawn_at: string | null;
  withdrawn_by: string | null;
  withdrawal_reason: string | null;
}

/** The same release in another form, as it was written on the day. */
export interface ReleaseFileTable {
  number: number;
  form: string;
  content: Uint8Array;
  digest: string;
}
