/**
 * Lets callers have something to themselves, one after the other, in the order in which they asked.
 *
 * @returns asks for a turn; it resolves, when the turn has come, to the function that passes it on
 */
export function takeTurns(): () => Promise<() => void> {
  let former: Promise<void> = Promise.resolve();
  return async () => {
    const before = former;
    let pass: () => void = () => {};
    former = new Promise((resolve) => {
      pass = resolve;
    });
    await before;
    return pass;
  };
}
