import type { IntegerSystem, Known, Sum, Unknown } from './system.js';

/** Parts of a system that share no unknown: what is known of one says nothing of another. */
export interface Components {
  /** The part that a sum's unknowns belong to; several parts together where the sum spans them. */
  readonly of: (sum: Sum) => IntegerSystem;
}

/** Splits a system into its independent parts. */
export function componentsOf({ known }: IntegerSystem): Components {
  const parents = new Map<Unknown, Unknown>();
  const rootOf = (unknown: Unknown): Unknown => {
    let root = unknown;
    for (let up = parents.get(root); up !== undefined && up !== root; up = parents.get(root)) root = up;
    parents.set(unknown, root);
    return root;
  };
  for (const { sum } of known) {
    const [first, ...others] = [...sum.keys()].map(rootOf);
    if (first !== undefined) for (const other of others) parents.set(other, first);
  }
  const parts = new Map<Unknown, Known[]>();
  for (const each of known) {
    const [first] = each.sum.keys();
    if (first === undefined) continue;
    const root = rootOf(first);
    const part = parts.get(root) ?? [];
    part.push(each);
    parts.set(root, part);
  }
  const systems = new Map([...parts].map(([root, part]) => [root, { known: part }]));
  return {
    of: (sum) => {
      const roots = [...new Set([...sum.keys()].map(rootOf))];
      const [only] = roots;
      if (roots.length === 1 && only !== undefined) return systems.get(only) ?? { known: [] };
      return { known: roots.flatMap((root) => parts.get(root) ?? []) };
    },
  };
}
