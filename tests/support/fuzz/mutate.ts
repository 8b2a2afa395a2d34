import { pick, wholeBetween } from '../../../seeds/random.js';
import type { Random } from '../../../seeds/random.js';
import { hostileValue } from './hostile.js';

type Path = readonly (string | number)[];

/** The same JSON value, wrong in one place: something is taken away, doubled, added, or is something else. */
export function mutate(random: Random, value: unknown): unknown {
  const paths = pathsIn(value);
  const path = pick(random, paths);
  const kind = wholeBetween(random, 0, 9);
  return changedAt(value, path, (former) => {
    if (kind <= 4) return hostileValue(random);
    if (kind === 5) return undefined;
    if (kind === 6) return [former];
    if (kind === 7) return { value: former };
    if (Array.isArray(former)) {
      const copies = Array.from({ length: wholeBetween(random, 2, 40) }, () => former as unknown[]);
      return copies.flat();
    }
    if (typeof former === 'object' && former !== null) {
      const name = pick(random, ['extra', '__proto__', 'id', 'teamId', 'version', 'role', '']);
      return Object.fromEntries([...Object.entries(former), [name, hostileValue(random)]]);
    }
    if (typeof former === 'number')
      return pick(random, [former + 1, -former, former / 3, former * 1000, String(former)]);
    if (typeof former === 'string')
      return pick(random, [former + former, former.toUpperCase(), ` ${former} `, former.slice(1)]);
    return former === null ? 0 : null;
  });
}

/** Every place in a JSON value, the whole included. */
function pathsIn(value: unknown, base: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [base];
  const parts = Array.isArray(value) ? [...value.keys()] : Object.keys(value);
  const held = value as Readonly<Record<string | number, unknown>>;
  return [base, ...parts.flatMap((part) => pathsIn(held[part], [...base, part]))];
}

function changedAt(value: unknown, [part, ...rest]: Path, change: (former: unknown) => unknown): unknown {
  if (part === undefined) return change(value);
  const copy = (Array.isArray(value) ? [...(value as unknown[])] : { ...(value as object) }) as Record<
    string | number,
    unknown
  >;
  copy[part] = changedAt(copy[part], rest, change);
  return copy;
}
