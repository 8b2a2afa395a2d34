/** Whether a correction names anything that is to change. */
export function hasSomeChange(changes: object): boolean {
  return Object.keys(changes).length > 0;
}

/** What is said of a correction that changes nothing, where nothing else is wrong with it. */
export const NO_CHANGE = {
  message: 'Name at least one field that is to change.',
  when: ({ issues }: { readonly issues: readonly unknown[] }) => issues.length === 0,
};
