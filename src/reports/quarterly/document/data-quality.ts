import type { Section, Table } from '../../../documents/document-model.js';
import type { QuarterlyReport } from '../report-model.js';
import type { PairsLost } from '../section-models.js';
import { count, figureLink, figureTable, lackingLink, text } from './cells.js';

/** How far the record can be trusted, and what to mend first. */
export function dataQualitySection({ dataQuality }: QuarterlyReport): Section {
  const { mendFirst, completeness, entry, confirmedValues, pairsLost, entriesInError } = dataQuality;
  return {
    id: 'data-quality',
    title: 'Quality of the record',
    sheetName: 'Data quality',
    blocks: [
      mendFirst.length === 0
        ? { kind: 'paragraph', text: 'There is nothing to mend.' }
        : {
            kind: 'table',
            table: {
              caption: 'What to mend first: what is missing for most referrals',
              columns: [
                { head: 'What', kind: 'text' },
                { head: 'Referrals', kind: 'number' },
                { head: 'Figure id', kind: 'text', isForSheetsOnly: true },
              ],
              rows: mendFirst.map(({ figureId, words, referrals }) => [
                text(words, lackingLink(figureId)),
                count(referrals, lackingLink(figureId)),
                text(figureId),
              ]),
            },
          },
      {
        kind: 'table',
        table: figureTable(
          'Completeness of each field',
          completeness.map((figure) => ({ figure })),
          { first: 'Recorded' },
        ),
      },
      {
        kind: 'table',
        table: figureTable(
          'When it was entered, and values confirmed beyond the usual range',
          [...entry, confirmedValues].map((figure) => ({ figure })),
        ),
      },
      { kind: 'table', table: pairsLostTable(pairsLost) },
      { kind: 'paragraph', text: `${entriesInError.words}.` },
    ],
  };
}

function pairsLostTable(pairsLost: readonly PairsLost[]): Table {
  const reasons = [
    ...new Map(pairsLost.flatMap(({ lost }) => lost.map(({ reason, words }) => [reason, words] as const))),
  ];
  return {
    caption: 'Pairs lost on the way, of those of the discharge cohort who had started',
    columns: [
      { head: 'Measure', kind: 'text' },
      { head: 'Started', kind: 'number' },
      { head: 'Like-for-like pairs', kind: 'number' },
      ...reasons.map(([, words]) => ({ head: words, kind: 'number' as const })),
      { head: 'Figure id', kind: 'text', isForSheetsOnly: true },
    ],
    rows: pairsLost.map(({ shortName, figureId, starters, pairs, lost }) => [
      text(shortName),
      count(starters, figureLink(figureId)),
      count(pairs, figureLink(figureId)),
      ...reasons.map(([reason]) => {
        const referrals = lost.find((each) => each.reason === reason)?.referrals ?? 0;
        return referrals === 0 ? count(0) : count(referrals, lackingLink(figureId));
      }),
      text(figureId),
    ]),
  };
}
