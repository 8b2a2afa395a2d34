import type { z } from 'zod';
import type { ReleaseEntry } from '../../domain/release/kept-release.js';
import { countOf } from '../../domain/release/issued.js';
import type { ProtectedRelease } from '../../domain/release/protected-release.js';
import { universeOf } from '../../domain/release/universes.js';
import type { ReleaseDraft } from '../../usecases/releases/draft-release.js';
import type { ReleaseDocumentShown, ReleaseEntryShown, ReleasePreviewShown } from './release-schema.js';

/** An entry of the list, field by field. */
export function presentEntry(entry: ReleaseEntry): z.output<typeof ReleaseEntryShown> {
  return {
    number: entry.number,
    teamName: entry.teamName,
    commissionerId: entry.commissionerId,
    commissionerName: entry.commissionerName,
    period: entry.period,
    mode: entry.mode,
    releasedAt: entry.releasedAt,
    digest: entry.digest,
    corrects: entry.corrects,
    correctedBy: entry.correctedBy,
    withdrawn: entry.withdrawn,
  };
}

/** What left, or would leave, the team: protected values in copies that may be written out. */
export function presentDocument(release: ProtectedRelease): z.output<typeof ReleaseDocumentShown> {
  return {
    ...release,
    correction:
      release.correction === null
        ? null
        : { ...release.correction, changes: [...release.correction.changes] },
    totals: [...release.totals],
    tables: release.tables.map((table) => ({ ...table, cells: [...table.cells], shares: [...table.shares] })),
    summaries: [...release.summaries],
    leftOut: [...release.leftOut],
    definitions: [...release.definitions],
  };
}

/** A draft with the counts that are hidden in it. */
export function presentDraft(draft: ReleaseDraft): z.output<typeof ReleasePreviewShown> {
  const { issued, attack, release, choices } = draft;
  const inTables = issued.tables.flatMap((table) =>
    table.cells.flatMap((cell) => {
      const because = table.hidden[cell.id];
      if (because === undefined) return [];
      const { id, words } = cell;
      return [{ tableId: table.tableId, cellId: id, words, count: countOf(table, cell), because }];
    }),
  );
  const inTotals = issued.totals.flatMap(({ universe, count, hidden }) =>
    hidden === null
      ? []
      : [{ tableId: 'total', cellId: universe, words: universeOf(universe).words, count, because: hidden }],
  );
  return {
    document: presentDocument(release),
    hidden: [...inTotals, ...inTables],
    tables: { ...choices },
    attack: {
      isPassed: attack.isPassed,
      targets: attack.targets,
      releases: [...attack.releases],
      trouble: attack.trouble,
      exposures: attack.exposures.map(({ tableId, tableTitle, figures, low, high, remedy }) => ({
        tableId,
        tableTitle,
        figures,
        low,
        high,
        remedy: { kind: remedy.kind, words: remedy.words },
      })),
    },
  };
}
