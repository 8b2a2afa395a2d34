import { COMPLETION_RULES } from '../pathway/completion.js';
import { COMPLETION_READINGS } from '../settings/team-settings.js';
import type { CompletionReading } from '../settings/team-settings.js';
import { COMPLETION_DENOMINATORS, judgeCompleted, judgeCompletedWithoutDeathsAndMoves } from './completed.js';
import type { CompletionDenominator } from './completed.js';
import type { FigureRule } from './indicator.js';

/** One cell of the completion table, counted with and without those who died, moved or were transferred. */
export interface CompletionCell {
  readonly reading: CompletionReading;
  readonly of: CompletionDenominator;
  readonly all: FigureRule;
  readonly withoutDeathsAndMoves: FigureRule;
}

/** One text for the whole table, because a rule is printed once. */
const DENOMINATOR =
  'Those started in the period; those assessed, and those referred, of the referrals received in the period';
const EXCLUSIONS =
  'Of assessed: no baseline assessment by the data cut. Of assessed and of referred: died, moved away or transferred ' +
  'before the start. In rows without deaths and moves: the same after the start, before completion';

/** The completion table: four readings over three denominators, never one without the others. */
export const COMPLETION_CELLS: readonly CompletionCell[] = COMPLETION_READINGS.flatMap((reading) =>
  COMPLETION_DENOMINATORS.map((of) => completionCell(reading, of)),
);

function completionCell(reading: CompletionReading, of: CompletionDenominator): CompletionCell {
  const rule = COMPLETION_RULES[reading];
  const all: FigureRule = {
    id: `completion.of-${of}.${reading}`,
    ruleId: rule.ruleId,
    title: `${rule.title}, of those ${of}`,
    cohort: of === 'started' ? 'start' : 'referral',
    numerator: rule.text,
    denominator: DENOMINATOR,
    exclusions: EXCLUSIONS,
    source: rule.source,
    judge: (course) => judgeCompleted(course, reading, of),
  };
  return {
    reading,
    of,
    all,
    withoutDeathsAndMoves: {
      ...all,
      id: `${all.id}.without-deaths-and-moves`,
      title: `${all.title}, without deaths and moves`,
      judge: (course) => judgeCompletedWithoutDeathsAndMoves(course, reading, of),
    },
  };
}
