import { readReleased } from '../../domain/release/canonical.js';
import { attackLedger, ledgerOf } from '../../domain/release/ledger/ledger.js';
import { reportOf } from '../../domain/release/protect-release.js';
import { presentRelease } from '../../domain/release/present-release.js';
import { digestOf } from '../../storage/releases/releases.js';
import { releasesToVerify } from '../../storage/releases/releases-to-verify.js';
import type { KeptRelease } from '../../storage/releases/releases-to-verify.js';
import type { Context } from '../context.js';

/** What was found of one release; empty where all holds. */
export interface VerifiedRelease {
  readonly number: number;
  readonly faults: readonly string[];
}

/**
 * Checks every release of the record: its digests, that it shows what the counts behind it allow, and the attack on all
 * releases of its team and financial year up to it.
 */
export async function verifyReleases({ reader }: Context): Promise<readonly VerifiedRelease[]> {
  const releases = await releasesToVerify(reader);
  return releases.map((release) => ({
    number: release.number,
    faults: [...digestFaults(release), ...countFaults(release), ...attackFaults(release, releases)],
  }));
}

/** What of a release no longer has the digest that was taken of it, in words. */
export function digestFaults({
  document,
  digest,
  counts,
  countsDigest,
  files,
}: KeptRelease): readonly string[] {
  return [
    ...(digestOf(document) === digest ? [] : ['the document does not have its digest']),
    ...(digestOf(counts) === countsDigest ? [] : ['the counts do not have their digest']),
    ...files.flatMap((file) =>
      digestOf(file.content) === file.digest ? [] : [`the ${file.form} file does not have its digest`],
    ),
  ];
}

/** The kept counts, protected again, must give the very counts that were released. */
function countFaults({ document, issued }: KeptRelease): readonly string[] {
  const released = readReleased(document);
  const again = presentRelease(issued, released, released.summaries, {});
  const countsOf = ({ tables, totals }: Pick<typeof released, 'tables' | 'totals'>): string =>
    JSON.stringify([
      totals.map(({ universe, count }) => [universe, plain(count)]),
      tables.map(({ id, cells }) => [id, cells.map((cell) => [cell.id, plain(cell.count)])]),
    ]);
  return countsOf(released) === countsOf(again) ? [] : ['the document does not show what its counts allow'];
}

function plain(count: { readonly kind: string; readonly value?: number }): number | null {
  return count.kind === 'shown' ? (count.value ?? null) : null;
}

function attackFaults(release: KeptRelease, all: readonly KeptRelease[]): readonly string[] {
  const earlier = all
    .filter(
      ({ teamId, financialYear, number }) =>
        teamId === release.teamId && financialYear === release.financialYear && number < release.number,
    )
    .map(({ issued }) => issued);
  const result = attackLedger(ledgerOf([...earlier, release.issued]));
  const { isPassed, trouble, exposures } = reportOf(result, release.issued, earlier);
  if (isPassed) return [];
  if (trouble !== null) return [trouble];
  return exposures.map(({ tableTitle, figures }) => `${tableTitle}: ${figures} can be worked out`);
}
