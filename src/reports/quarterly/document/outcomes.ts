import type { Block, Section, Table } from '../../../documents/document-model.js';
import { changeBars } from '../../../plots/change-bars.js';
import { dotPlot } from '../../../plots/dot-plot.js';
import type { Figure } from '../../../domain/indicators/figure.js';
import type { MeasureOutcomes, PairsSummary, QuarterlyReport } from '../report-model.js';
import type { Distribution } from '../section-models.js';
import { placesFor, range, rounded } from '../text-numbers.js';
import {
  count,
  figureLink,
  figureTable,
  interval,
  number,
  percentage,
  text,
  withTrueMinus,
} from './cells.js';
import type { FigureRow } from './cells.js';
import { midOf, perMid } from './mid.js';

/** Of fewer pairs than this their spread is not drawn. */
const LEAST_TO_DRAW = 5;

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
        figure: outcome.likeForLikePairsOverStarters,
      },
      { outcome, who: 'all pairs', pairs: outcome.allPairs, figure: outcome.pairsOverStarters },
      ...(outcome.atHome === null
        ? []
        : [
            {
              outcome,
              who: 'like for like, both tests at home',
              pairs: outcome.atHome,
              figure: outcome.likeForLikePairsOverStarters,
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
  const missing: Block = { kind: 'table', table: missingPairsTable(outcomes) };
  if (rows.length === 0) return [{ kind: 'table', table }, missing];
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
  return [{ kind: 'plot', title, plot, table }, missing];
}

/** What the missing pairs could make of the share who reached the threshold: none of them had, or all. */
function missingPairsTable(outcomes: readonly MeasureOutcomes[]): Table {
  return {
    caption: 'Reached the MID like for like, if none or all of those not measured again had',
    columns: [
      { head: 'Measure', kind: 'text' },
      { head: 'Reached it', kind: 'number' },
      { head: 'Measured again', kind: 'number' },
      { head: '%', kind: 'number' },
      { head: 'With a baseline', kind: 'number' },
      { head: '% if none or all of the missing', kind: 'interval' },
      { head: 'Measured again, %', kind: 'number' },
      { head: 'What may be said', kind: 'text' },
      { head: 'Figure id', kind: 'text', isForSheetsOnly: true },
    ],
    rows: outcomes.flatMap(({ shortName, responders, likeForLike: { midReached } }) => {
      if (responders === null || responders.eligible === 0 || midReached === null) return [];
      const { achieved, measured, eligible, worst, best, measuredShare, fewMeasured } = responders;
      return [
        [
          text(shortName),
          count(achieved, figureLink(midReached.id)),
          count(measured),
          percentage(midReached),
          count(eligible),
          interval(worst === null || best === null ? null : { low: worst, high: best }, 1),
          number(measuredShare, 1),
          text(fewMeasured ? 'little: fewer than 70 % were measured again' : ''),
          text(midReached.id),
        ],
      ];
    }),
  };
}

interface PairsRow {
  readonly outcome: MeasureOutcomes;
  readonly who: string;
  readonly pairs: PairsSummary;
  /** Opens to the people of the pairs. */
  readonly figure: Figure;
}

function pairsTable(caption: string, rows: readonly PairsRow[]): Table {
  return {
    caption,
    columns: [
      { head: 'Measure', kind: 'text' },
      { head: 'Who', kind: 'text' },
      { head: 'Unit', kind: 'text' },
      { head: 'Pairs', kind: 'number' },
      { head: 'Baseline, mean', kind: 'number' },
      { head: 'SD', kind: 'number' },
      { head: 'Discharge, mean', kind: 'number' },
      { head: 'SD', kind: 'number' },
      { head: 'Change, mean', kind: 'number' },
      { head: '95 % interval', kind: 'interval' },
      { head: 'Change, median', kind: 'number' },
      { head: 'Quartiles', kind: 'interval' },
      { head: 'Standardised response mean', kind: 'number' },
      { head: 'Measure id', kind: 'text', isForSheetsOnly: true },
    ],
    rows: rows.map(({ outcome: { measureId, shortName, unit }, who, pairs, figure }) => {
      const places = placesFor(unit);
      const { baseline, discharge, change, changeSummary } = pairs;
      const { lowerQuartile: low, upperQuartile: high } = changeSummary;
      return [
        text(shortName),
        text(who),
        text(unit),
        count(pairs.pairs, figureLink(figure.id)),
        number(baseline.mean, places),
        number(baseline.sd, places),
        number(discharge.mean, places),
        number(discharge.sd, places),
        number(change.mean, places),
        interval(change.interval, places),
        number(changeSummary.median, places),
        interval(low === null || high === null ? null : { low, high }, places),
        number(change.standardisedResponseMean, 2),
        text(measureId),
      ];
    }),
  };
}

function measureBlocks(outcome: MeasureOutcomes): readonly Block[] {
  const { name, shortName, unit, betterWhen, distribution } = outcome;
  const blocks: readonly Block[] = [
    ...(distribution === null ? [] : spreadBlocks(outcome, distribution)),
    {
      kind: 'table',
      table: figureTable(`${shortName}: pairs, and who reached the MID`, figureRows(outcome)),
    },
    ...remarks(outcome).map((remark) => ({ kind: 'paragraph' as const, text: remark })),
  ];
  const heading = `${name} (${shortName}): ${unit}, ${betterWhen} is better`;
  return [{ kind: 'part', id: outcome.measureId, title: heading, blocks }];
}

/** How the changes spread: of too few pairs there is nothing to draw. */
function spreadBlocks(outcome: MeasureOutcomes, distribution: Distribution): readonly Block[] {
  const { measureId, shortName, unit, betterWhen, likeForLike } = outcome;
  const mid = midOf(outcome);
  const table = distributionTable(`${shortName}: pairs by change`, distribution, unit);
  if (likeForLike.pairs < LEAST_TO_DRAW) {
    const few = `Fewer than ${LEAST_TO_DRAW} pairs like for like: how they spread is not drawn, since a drawing would seem to show more than is known.`;
    return [
      { kind: 'paragraph', text: few },
      { kind: 'table', table },
    ];
  }
  const title = `${shortName}: how ${likeForLike.pairs} like-for-like changes spread`;
  const at = betterWhen === 'higher' ? mid : mid === null ? null : -mid;
  const plot = changeBars({
    id: `plot-spread-${measureId}`,
    title,
    classes: distribution.classes.map(({ from, to, pairs }) => ({ from, to, count: pairs })),
    betterWhen,
    mid: at === null ? null : { at, label: withTrueMinus(`MID ${at} ${unit}`) },
    axis: `change, ${unit}`,
  });
  return [{ kind: 'plot', title, plot, table }];
}

function distributionTable(caption: string, { classes, holdsEnd }: Distribution, unit: string): Table {
  const [from, to] = holdsEnd === 'lower' ? ['from', 'to below'] : ['above', 'up to'];
  return {
    caption,
    columns: [
      { head: `Change ${from}, ${unit}`, kind: 'number' },
      { head: to, kind: 'number' },
      { head: 'Pairs', kind: 'number' },
    ],
    rows: classes.map((each) => [
      number(each.from, placesOf(each.from)),
      number(each.to, placesOf(each.to)),
      count(each.pairs),
    ]),
  };
}

/** Decimal places that the end of a class needs. */
function placesOf(value: number): number {
  return (String(value).split('.')[1] ?? '').length;
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

function remarks(outcome: MeasureOutcomes): readonly string[] {
  const { responders, differences, practiceWalkDiffers, pairsAtCeiling, marks, thresholds } = outcome;
  return [
    ...(responders === null || responders.eligible === 0
      ? []
      : [
          `Reached the MID if none, or all, of those not measured again had: ${rounded(responders.worst, 1)} to ` +
            `${rounded(responders.best, 1)} % (${responders.measured} of ${responders.eligible} with a baseline were measured again ` +
            `like for like${responders.fewMeasured ? '; fewer than 70 %, so the share says little' : ''}).`,
        ]),
    ...(differences.length === 0
      ? []
      : [
          `Pairs not like for like by: ${differences.map(({ name, pairs }) => `${name} ${pairs}`).join(', ')}.`,
        ]),
    ...(practiceWalkDiffers === null || practiceWalkDiffers === 0
      ? []
      : [`Pairs with a practice walk at one end only: ${practiceWalkDiffers}.`]),
    ...(pairsAtCeiling === 0 ? [] : [`Pairs at the ceiling of the test: ${pairsAtCeiling}.`]),
    ...(thresholds.length === 0 ? ['No threshold is known: the change is shown and not judged.'] : []),
    ...(marks.length === 0 ? [] : [`Thresholds used here are marked: ${marks.join('; ')}.`]),
  ];
}
