/** Turns by name: who asks for a name that somebody has waits until it is passed on. */
export function turnsByName(): (name: string) => Promise<() => void> {
  const held = new Map<string, Promise<void>>();
  return async (name) => {
    for (let other = held.get(name); other !== undefined; other = held.get(name)) await other;
    let free: () => void = () => {};
    held.set(name, new Promise<void>((resolve) => (free = resolve)));
    return () => {
      held.delete(name);
      free();
    };
  };
}
