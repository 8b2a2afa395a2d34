import type { ProtectedRelease } from '../../domain/release/protected-release.js';
import { countText, headLines, hidingWords } from './release-words.js';

/** A release as rows for whoever computes: one value a row, ids beside words. It takes protected values and nothing else. */
export function releaseRows(release: ProtectedRelease): readonly (readonly (string | number | null)[])[] {
  const { number } = release;
  const row = (
    kind: string,
    table: string,
    id: string,
    words: string,
    value: string | number | null,
    unit: string,
  ): readonly (string | number | null)[] => [number, kind, table, id, words, value, unit];
  return [
    ['release', 'kind', 'table', 'id', 'words', 'value', 'unit'],
    ...headLines(release).map((line) => row('about', '', '', line, null, '')),
    ...hidingWords(release).map((line) => row('about', '', '', line, null, '')),
    ...release.totals.map(({ universe, words, count }) =>
      row('total', '', universe, words, countText(count), 'referrals'),
    ),
    ...release.tables.flatMap((table) => [
      ...table.cells.map((cell) =>
        row(cell.role, table.id, cell.id, cell.words, countText(cell.count), 'referrals'),
      ),
      ...table.shares.map((share) =>
        row('percentage', table.id, share.id, share.title, share.percent, 'percent'),
      ),
    ]),
    ...release.summaries.map(({ id, title, value, unit, kind }) => row(kind, '', id, title, value, unit)),
    ...(release.correction?.changes ?? []).map(({ tableTitle, words, before }) =>
      row('before-correction', '', '', `${tableTitle}: ${words}`, countText(before), 'referrals'),
    ),
  ];
}
