import type { ProtectedCount } from './protected-count.js';
import type { PrintedChange, ProtectedRelease } from './protected-release.js';

/**
 * A correction that states its difference: every count that it prints otherwise than the release that it corrects. A count
 * that is hidden in either is not compared, so that nothing is said that the two do not say by themselves.
 *
 * @example received 40 in release 1, 45 in its correction -> one change, from 40 to 45
 */
export function withChanges(release: ProtectedRelease, former: ProtectedRelease): ProtectedRelease {
  const { correction } = release;
  if (correction === null) return release;
  return { ...release, correction: { ...correction, changes: changesBetween(former, release) } };
}

function changesBetween(former: ProtectedRelease, now: ProtectedRelease): readonly PrintedChange[] {
  const before = new Map(printedIn(former).map((each) => [each.key, each.count]));
  return printedIn(now).flatMap(({ key, tableTitle, words, count }) => {
    const was = before.get(key);
    if (was?.kind !== 'shown' || count.kind !== 'shown' || was.value === count.value) return [];
    return [{ tableTitle, words, before: was, after: count }];
  });
}

interface Printed {
  readonly key: string;
  readonly tableTitle: string;
  readonly words: string;
  readonly count: ProtectedCount;
}

/** A group is the same in two releases when its table, its id and its words are. */
function printedIn({ totals, tables }: ProtectedRelease): readonly Printed[] {
  return [
    ...totals.map(({ universe, words, count }) => ({
      key: JSON.stringify(['total', universe]),
      tableTitle: 'Referrals counted',
      words,
      count,
    })),
    ...tables.flatMap(({ id: tableId, title, cells }) =>
      cells.map(({ id, words, count }) => ({
        key: JSON.stringify([tableId, id, words]),
        tableTitle: title,
        words,
        count,
      })),
    ),
  ];
}
