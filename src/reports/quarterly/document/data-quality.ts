import { ENTRY_KINDS } from '../../../domain/history/entered-in-error.js';
import { GRADES_CONVERTED_BY } from '../../../domain/measures/mrc-scales.js';
import { PAIR_FIGURE_IDS } from '../../../domain/indicators/pair-figures.js';
import type { Block, Section, Table } from '../../../documents/document-model.js';
import type { QuarterlyReport } from '../report-model.js';
import type { ConvertedPairs, PairsLost } from '../section-models.js';
import { count, figureTable, membersLink, text } from './cells.js';

/** How far the record can be trusted, and what to mend first. */
export function dataQualitySection({ dataQuality }: QuarterlyReport): Section {
  const { mendFirst, completeness, entry, confirmedValues, pairsLost, gradesConverted, entriesInError } =
    dataQuality;
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
              rows: mendFirst.map(({ figureId, members, words, referrals }) => [
                text(words, membersLink(figureId, members)),
                count(referrals, membersLink(figureId, members)),
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
          'When it was entered, assessments beyond the first, and values confirmed beyond the usual range',
          [...entry, confirmedValues].map((figure) => ({ figure })),
        ),
      },
      { kind: 'table', table: pairsLostTable(pairsLost) },
      ...convertedBlocks(gradesConverted),
      ...inErrorBlocks(entriesInError),
    ],
  };
}

function inErrorBlocks(counts: QuarterlyReport['dataQuality']['entriesInError']): readonly Block[] {
  const kinds = ENTRY_KINDS.filter((kind) => counts[kind] > 0);
  const words: Block = { kind: 'paragraph', text: `${counts.words}.` };
  if (kinds.length === 0) return [words];
  const table: Table = {
    caption: 'Entries in error, dated in the period and of the whole team: they count in no figure',
    columns: [
      { head: 'Kept out', kind: 'text' },
      { head: 'Entries', kind: 'number' },
    ],
    rows: kinds.map((kind) => [text(kind), count(counts[kind], { kind: 'entries-in-error', of: kind })]),
  };
  return [words, { kind: 'table', table }];
}

/** Pairs for which a grade of breathlessness was converted; nothing where breathlessness was not measured. */
function convertedBlocks(converted: readonly ConvertedPairs[]): readonly Block[] {
  if (converted.length === 0) return [];
  const table: Table = {
    caption: `Pairs only by a grade of breathlessness at discharge converted to the scale of the baseline (${GRADES_CONVERTED_BY}); none is like for like`,
    columns: [
      { head: 'Scale of the baseline', kind: 'text' },
      { head: 'Pairs by a converted grade', kind: 'number' },
      { head: 'of all its pairs', kind: 'number' },
    ],
    rows: converted.map(({ shortName, figureId, pairs, ofPairs }) => [
      text(shortName),
      count(pairs, membersLink(figureId, 'numerator')),
      count(ofPairs, membersLink(figureId, 'counted')),
    ]),
  };
  return [{ kind: 'table', table }];
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
    rows: pairsLost.map(({ measureId, shortName, figureId, starters, pairs, lost }) => [
      text(shortName),
      count(starters, membersLink(figureId, 'counted')),
      count(pairs, membersLink(figureId, 'numerator')),
      ...reasons.map(([reason]) => {
        const referrals = lost.find((each) => each.reason === reason)?.referrals ?? 0;
        return count(referrals, membersLink(PAIR_FIGURE_IDS.lost(measureId, reason), 'numerator'));
      }),
      text(figureId),
    ]),
  };
}
