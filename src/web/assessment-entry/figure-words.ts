import type { RunningFigure } from '../../domain/assessment/running-figures.js';
import { findMeasure, findWalkTest } from '../../domain/measures/catalogue.js';
import { equationName } from '../../domain/prediction/equation-name.js';
import { shownChange, shownValue } from '../../domain/measures/shown-value.js';
import { distanceToLevel } from '../../domain/measures/shuttles.js';
import type { EntryPreview } from '../../usecases/assessments/entry-sheet.js';
import { slotOf } from './field-of.js';
import type { ReadEntry } from './read-entry.js';
import { UNIT_SPACE } from '../../domain/text/unit-space.js';

/** Lines that stand beside a test, by the part of the page. */
export type FigureLines = Readonly<Record<string, readonly string[]>>;

/** The figures of an entry in words, for the page and for the script that keeps it up to date. */
export function figureLines(read: ReadEntry, preview: EntryPreview): FigureLines {
  const lines: Record<string, string[]> = {};
  const add = (slot: string, line: string): void => {
    (lines[slot] ??= []).push(line);
  };
  preview.distancesM.forEach((distanceM, index) => {
    const attempt = read.attempts[index];
    const walk = read.entry.walkTests[index];
    if (attempt !== undefined && walk !== undefined && distanceM !== null) {
      add(attempt, distanceWords(walk.test, distanceM));
    }
  });
  for (const figure of preview.figures) add(slotOf(read, figure.pointer), figureWords(figure));
  for (const { text } of preview.cautions) add('cautions', text);
  for (const { measure, reason } of preview.notScored) {
    const owner = read.questionnaires.find(({ measures }) => measures.some(({ id }) => id === measure));
    if (owner !== undefined) add(`q.${owner.id}`, `${shortName(measure)}: no score. ${reason}.`);
    const test = read.physicalTests.find(({ measures }) => measures.some(({ id }) => id === measure));
    if (test !== undefined) add(`p.${test.id}`, `${shortName(measure)}: no result. ${reason}.`);
  }
  return lines;
}

/** @example an ISWT of 200 m -> '200 m: level 5, 2 shuttles' */
function distanceWords(testId: string, distanceM: number): string {
  const test = findWalkTest(testId);
  if (test === undefined || test.levels === null || test.records !== 'shuttles')
    return `${distanceM}${UNIT_SPACE}m`;
  const at = distanceToLevel(distanceM, test.levels);
  return at.kind === 'level'
    ? `${distanceM}${UNIT_SPACE}m: level ${at.level}, ${at.shuttlesInLevel} shuttles`
    : `${distanceM}${UNIT_SPACE}m`;
}

function figureWords({ measureId, value, predicted, change }: RunningFigure): string {
  const parts = [`${shortName(measureId)} ${valueWords(measureId, value)}`];
  if (predicted !== null) {
    parts.push(
      predicted.percent === null
        ? `no prediction: ${predicted.reason ?? ''}`
        : `${Math.round(predicted.percent)}${UNIT_SPACE}% of predicted (${equationName(predicted.equationId)})`,
    );
  }
  if (change !== null) parts.push(changeOf(measureId, change), `baseline ${before(measureId, change)}`);
  return parts.join('; ');
}

/** The same for a table: measure, result, share of predicted, baseline, change. */
export function figureColumns({ measureId, value, predicted, change }: RunningFigure): readonly string[] {
  const percent = predicted?.percent ?? null;
  return [
    shortName(measureId),
    valueWords(measureId, value),
    percent === null ? '' : `${Math.round(percent)}${UNIT_SPACE}%`,
    change === null ? '' : before(measureId, change),
    change === null ? '' : changeOf(measureId, change),
  ];
}

type Change = NonNullable<RunningFigure['change']>;

/** @example a baseline of MRC grade 4 beside a modified grade -> '3 (recorded as MRC (1 to 5) grade 4)' */
function before(measureId: string, { baseline, recordedAs }: Change): string {
  const value = valueWords(measureId, baseline);
  return recordedAs === null ? value : `${value} (recorded as ${recordedAs})`;
}

/** @example +50 m of the ISWT, MID 47.5 m -> '+50 m, better by the MID or more' */
function changeOf(measureId: string, { difference, direction, class: kind, thresholds }: Change): string {
  const shown = shownChange(difference, unitNameOf(measureId), thresholds);
  if (direction === 'same') return 'no change';
  const judged = {
    improved: 'better by the MID or more',
    worse: 'worse by the MID or more',
    'little-change': 'less than the MID',
    'change-only': direction,
  };
  return `${shown}${unitOf(measureId)}, ${judged[kind]}`;
}

/** A value with its unit, such as what was measured at baseline. */
export function valueWords(measureId: string, value: number): string {
  return `${shownValue(value, unitNameOf(measureId))}${unitOf(measureId)}`;
}

function shortName(measureId: string): string {
  return findMeasure(measureId)?.shortName ?? measureId;
}

function unitNameOf(measureId: string): string {
  return findMeasure(measureId)?.unit ?? 'points';
}

function unitOf(measureId: string): string {
  const unit = unitNameOf(measureId);
  return ['points', 'grade', 'utility', 'mean item score'].includes(unit) ? '' : `${UNIT_SPACE}${unit}`;
}
