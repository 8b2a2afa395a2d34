import { placesFor } from '../../../domain/measures/shown-value.js';
import { PAIR_FIGURE_IDS } from '../../../domain/indicators/pair-figures.js';
import type { Block, Section, Table } from '../../../documents/document-model.js';
import { dotPlot } from '../../../plots/dot-plot.js';
import type { MeasureOutcomes, QuarterlyReport } from '../report-model.js';
import { range, rounded } from '../text-numbers.js';
import { count, figureTable, membersLink, text, withTrueMinus } from './cells.js';
import type { FigureRow } from './cells.js';
import { midOf, perMid } from './mid.js';
import { headingOf, headlineTable, missingPairsTable, pairsTable } from './pairs-tables.js';
import { spreadBlocks } from './spread.js';

/** Outcomes of the discharge cohort: every measure against its threshold, then each with its spread. */
export function outcomesSection({ outcomes }: QuarterlyReport): Section {
  const none: Block = { kind: 'paragraph', text: 'Nothing was measured in the period.' };
  return {
    id: 'outcomes',
    title: 'Outcomes',
    sheetName: 'Outcomes',
    blocks: [
      {
        kind: 'paragraph',
        text: 'Of the discharge cohort, those who had started. A change is discharge minus baseline. The headline uses pairs measured like for like; all pairs stand beside it.',
      },
      ...(outcomes.length === 0 ? [none] : allMeasures(outcomes)),
      ...outcomes.flatMap(measureBlocks),
    ],
  };
}

function allMeasures(outcomes: readonly MeasureOutcomes[]): readonly Block[] {
  const title = 'Mean change of each measure as a multiple of its minimal important difference (MID)';
  const table = pairsTable(
    'Both ends and the change, by measure',
    outcomes.flatMap((outcome) => [
      {
        outcome,
        who: 'like for like (headline)',
        pairs: outcome.likeForLike,
        figureId: outcome.likeForLikePairsOverStarters.id,
      },
      { outcome, who: 'all pairs', pairs: outcome.allPairs, figureId: outcome.pairsOverStarters.id },
      ...(outcome.atHome === null
        ? []
        : [
            {
              outcome,
              who: 'like for like, both tests at home',
              pairs: outcome.atHome,
              figureId: PAIR_FIGURE_IDS.atHome(outcome.measureId),
            },
          ]),
    ]),
  );
  const rows = outcomes.flatMap((outcome) => {
    const { shortName, unit, likeForLike } = outcome;
    const { mean, interval: ends, n } = likeForLike.change;
    const mid = midOf(outcome);
    if (mid === null || mean === null) return [];
    const limits = ends === null ? '' : ` (${range(ends, placesFor(unit))})`;
    const words = withTrueMinus(`${rounded(mean, placesFor(unit))}${limits} ${unit}, n = ${n}`);
    return [{ label: shortName, words, ...perMid(outcome, mid, mean, ends) }];
  });
  const all: readonly Block[] = [
    { kind: 'table', table },
    { kind: 'table', table: missingPairsTable(outcomes) },
  ];
  if (rows.length === 0) return all;
  const plot = dotPlot({
    id: 'plot-change',
    title,
    rows,
    lines: [
      { at: 0, label: 'no change' },
      { at: 1, label: 'MID' },
    ],
    domain: [-0.5, 1.5],
    axis: 'mean improvement in MIDs; better to the right',
  });
  return [{ kind: 'plot', title, plot, table: headlineTable(outcomes) }, ...all];
}

function measureBlocks(outcome: MeasureOutcomes): readonly Block[] {
  const { shortName, distribution } = outcome;
  const blocks: readonly Block[] = [
    ...(distribution === null ? [] : spreadBlocks(outcome, distribution)),
    {
      kind: 'table',
      table: figureTable(`${shortName}: pairs, and who reached the MID`, figureRows(outcome)),
    },
    ...markedPairs(outcome),
    ...remarks(outcome).map((remark) => ({ kind: 'paragraph' as const, text: remark })),
  ];
  return [{ kind: 'part', id: outcome.measureId, title: headingOf(outcome), blocks }];
}

function figureRows({
  pairsOverStarters,
  likeForLikePairsOverStarters,
  likeForLike,
  allPairs,
  practiceWalk,
}: MeasureOutcomes): readonly FigureRow[] {
  return [
    { figure: pairsOverStarters, label: 'Pairs over starters' },
    { figure: likeForLikePairsOverStarters, label: 'Like-for-like pairs over starters' },
    ...[
      { label: 'Reached the MID, like for like', figure: likeForLike.midReached },
      { label: 'Little change, like for like', figure: likeForLike.littleChange },
      { label: 'Worse, like for like', figure: likeForLike.worse },
      { label: 'Reached the MID, all pairs', figure: allPairs.midReached },
      { label: 'Little change, all pairs', figure: allPairs.littleChange },
      { label: 'Worse, all pairs', figure: allPairs.worse },
      { label: 'Practice walk at baseline', figure: practiceWalk?.baseline ?? null },
      { label: 'Practice walk at discharge', figure: practiceWalk?.discharge ?? null },
    ].flatMap(({ label, figure }) => (figure === null ? [] : [{ label, figure }])),
  ];
}

/** What is marked of how many pairs; nothing where no pair is. */
function markedPairs(outcome: MeasureOutcomes): readonly Block[] {
  const { measureId, shortName, differences, practiceWalkDiffers, pairsAtCeiling } = outcome;
  const marks = [
    ...differences.map(({ name, figureId, pairs }) => ({
      words: `not like for like by ${name}`,
      figureId,
      pairs,
    })),
    {
      words: 'practice walk at one end only',
      figureId: PAIR_FIGURE_IDS.practiceWalkDiffers(measureId),
      pairs: practiceWalkDiffers ?? 0,
    },
    {
      words: 'at the ceiling of the test',
      figureId: PAIR_FIGURE_IDS.atCeiling(measureId),
      pairs: pairsAtCeiling,
    },
  ].filter(({ pairs }) => pairs > 0);
  if (marks.length === 0) return [];
  const table: Table = {
    caption: `${shortName}: what is marked of its pairs; one pair may have several marks`,
    columns: [
      { head: 'Mark', kind: 'text' },
      { head: 'Pairs', kind: 'number' },
    ],
    rows: marks.map(({ words, figureId, pairs }) => [
      text(words),
      count(pairs, membersLink(figureId, 'numerator')),
    ]),
  };
  return [{ kind: 'table', table }];
}

function remarks(outcome: MeasureOutcomes): readonly string[] {
  const { responders, marks, thresholds } = outcome;
  return [
    ...(responders === null || responders.eligible === 0
      ? []
      : [
          `Reached the MID if none, or all, of those not measured again had: ${rounded(responders.worst, 1)} to ` +
            `${rounded(responders.best, 1)} % (${responders.measured} of ${responders.eligible} with a baseline were measured again ` +
            `like for like${responders.fewMeasured ? '; fewer than 70 %, so the share says little' : ''}).`,
        ]),
    ...(thresholds.length === 0 ? ['No threshold is known: the change is shown and not judged.'] : []),
    ...(marks.length === 0 ? [] : [`Thresholds used here are marked: ${marks.join('; ')}.`]),
  ];
}
