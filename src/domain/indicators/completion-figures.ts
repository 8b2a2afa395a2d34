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

const DENOMINATOR_WORDS: Readonly<Record<CompletionDenominator, string>> = {
  started: 'Started in the period',
  assessed: 'Referrals received in the period with a baseline assessment',
  referred: 'Referrals received in the period',
};

const EXCLUSION_WORDS: Readonly<Record<CompletionDenominator, string | null>> = {
  started: null,
  assessed: 'No baseline assessment as at the cut; died, moved away or transferred before the start',
  referred: 'Died, moved away or transferred before the start',
};

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
    denominator: DENOMINATOR_WORDS[of],
    exclusions: EXCLUSION_WORDS[of],
    source: rule.source,
    judge: (course) => judgeCompleted(course, reading, of),
  };
  const afterStart = 'Died, moved away or transferred after the start before completion';
  return {
    reading,
    of,
    all,
    withoutDeathsAndMoves: {
      ...all,
      id: `${all.id}.without-deaths-and-moves`,
      title: `${all.title}, without deaths and moves`,
      exclusions: all.exclusions === null ? afterStart : `${all.exclusions}; ${afterStart.toLowerCase()}`,
      judge: (course) => judgeCompletedWithoutDeathsAndMoves(course, reading, of),
    },
  };
}
