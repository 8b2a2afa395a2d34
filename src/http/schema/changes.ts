/** Whether a correction names anything that is to change. */
export function hasSomeChange(changes: object): boolean {
  return Object.keys(changes).length > 0;
}

/** What is said of a correction that changes nothing. */
export const NO_CHANGE = 'Name at least one field that is to change.';
