/** Marks an entry that should not have been made: it stays readable and counts in no figure. */
export interface EnteredInError {
  /** UTC. */
  readonly markedAt: string;
  /** Id of the account. */
  readonly markedBy: string;
  readonly reason: string;
}
