import { placesFor } from '../../../domain/measures/shown-value.js';
import type { RowGroup, Table } from '../../../documents/document-model.js';
import { PAIR_FIGURE_IDS } from '../../../domain/indicators/pair-figures.js';
import type { MeasureOutcomes, PairsSummary } from '../report-model.js';
import { middleCells, middleColumns } from './for-sheets.js';
import { count, figureLink, interval, membersLink, number, percentage, text } from './cells.js';
import { orNone } from './marks.js';

/** Pairs of a measure that are counted together. */
export interface PairsRow {
  readonly outcome: MeasureOutcomes;
  readonly who: string;
  readonly pairs: PairsSummary;
  /** Opens to the people of the pairs. */
  readonly figureId: string;
}

/** What is drawn: the mean change of the headline pairs, with both ends. */
export function headlineTable(outcomes: readonly MeasureOutcomes[]): Table {
  return {
    caption: 'Like for like (headline): both ends and the mean change',
    columns: [
      { head: 'Measure', kind: 'text' },
      { head: 'Unit', kind: 'text' },
      { head: 'Pairs', kind: 'number' },
      { head: 'Baseline, mean', kind: 'number' },
      { head: 'Discharge, mean', kind: 'number' },
      { head: 'Change, mean', kind: 'number' },
      { head: '95 % interval', kind: 'interval' },
    ],
    rows: outcomes.map(
      ({ shortName, unit, likeForLike: { pairs, baseline, discharge, change }, ...outcome }) => {
        const places = placesFor(unit);
        return [
          text(shortName),
          text(unit),
          count(pairs, membersLink(outcome.likeForLikePairsOverStarters.id, 'numerator')),
          orNone(pairs, number(baseline.mean, places)),
          orNone(pairs, number(discharge.mean, places)),
          orNone(pairs, number(change.mean, places)),
          orNone(pairs, interval(change.interval, places)),
        ];
      },
    ),
  };
}

/** Both ends and the change of every measure: its pairs like for like, all of them, and those at home. */
export function pairsTable(caption: string, rows: readonly PairsRow[]): Table {
  return {
    caption,
    groups: groupsOf(rows),
    columns: [
      { head: 'Measure', kind: 'text', isForSheetsOnly: true },
      { head: 'Who', kind: 'text' },
      { head: 'Unit', kind: 'text', isForSheetsOnly: true },
      { head: 'Pairs', kind: 'number' },
      { head: 'Baseline, mean', kind: 'number' },
      { head: 'Baseline, SD', kind: 'number' },
      { head: 'Discharge, mean', kind: 'number' },
      { head: 'Discharge, SD', kind: 'number' },
      { head: 'Change, mean', kind: 'number' },
      { head: '95 % interval', kind: 'interval' },
      { head: 'Change, median', kind: 'number' },
      { head: 'Quartiles', kind: 'interval' },
      { head: 'Standardised response mean', kind: 'number' },
      { head: 'Measure id', kind: 'text', isForSheetsOnly: true },
      ...middleColumns('Baseline'),
      ...middleColumns('Discharge'),
      { head: 'Change, SD', kind: 'number', isForSheetsOnly: true },
    ],
    rows: rows.map(({ outcome: { measureId, shortName, unit }, who, pairs, figureId }) => {
      const places = placesFor(unit);
      const { baseline, discharge, change, changeSummary } = pairs;
      const { lowerQuartile: low, upperQuartile: high } = changeSummary;
      return [
        text(shortName),
        text(who),
        text(unit),
        count(pairs.pairs, membersLink(figureId, 'numerator')),
        ...[
          number(baseline.mean, places),
          number(baseline.sd, places),
          number(discharge.mean, places),
          number(discharge.sd, places),
          number(change.mean, places),
          interval(change.interval, places),
          number(changeSummary.median, places),
          interval(low === null || high === null ? null : { low, high }, places),
          number(change.standardisedResponseMean, 2),
        ].map((cell) => orNone(pairs.pairs, cell)),
        text(measureId),
        ...middleCells(baseline, places),
        ...middleCells(discharge, places),
        number(change.sd, places),
      ];
    }),
  };
}

function groupsOf(rows: readonly PairsRow[]): readonly RowGroup[] {
  const measures = [...new Set(rows.map(({ outcome }) => outcome))];
  return measures.map((measure) => ({
    title: headingOf(measure),
    rowCount: rows.filter(({ outcome }) => outcome === measure).length,
  }));
}

/** A measure by both of its names, with its unit. @example 'COPD Assessment Test total (CAT): points, lower is better' */
export function headingOf({
  name,
  shortName,
  unit,
  betterWhen,
}: Pick<MeasureOutcomes, 'name' | 'shortName' | 'unit' | 'betterWhen'>): string {
  const both = name === shortName || name.startsWith(`${shortName} `) ? name : `${name} (${shortName})`;
  return `${both}: ${unit}, ${betterWhen} is better`;
}

/** What the missing pairs could make of the share who reached the threshold: none of them had, or all. */
export function missingPairsTable(outcomes: readonly MeasureOutcomes[]): Table {
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
    rows: outcomes.flatMap(({ measureId, shortName, responders, likeForLike: { midReached } }) => {
      if (responders === null || responders.eligible === 0 || midReached === null) return [];
      const { achieved, measured, eligible, worst, best, measuredShare, fewMeasured } = responders;
      return [
        [
          text(shortName),
          count(achieved, figureLink(midReached.id)),
          count(measured, membersLink(midReached.id, 'counted')),
          percentage(midReached),
          count(eligible, membersLink(PAIR_FIGURE_IDS.withBaseline(measureId), 'numerator')),
          interval(worst === null || best === null ? null : { low: worst, high: best }, 1),
          number(measuredShare, 1),
          text(fewMeasured ? 'little: fewer than 70 % were measured again' : ''),
          text(midReached.id),
        ],
      ];
    }),
  };
}
