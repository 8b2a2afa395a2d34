import { describe, expect, it } from 'vitest';
import { listsForPercentages } from '../../../src/domain/release/lists-for-percentages.js';
import type { ReleaseMode } from '../../../src/domain/release/policy.js';
import type { TableChoices } from '../../../src/domain/release/settle.js';
import { countedRelease } from '../../support/random-service.js';

const START = {
  'within-90': 25,
  later: 1,
  left: 12,
  'not-by-90': 0,
  waiting: 15,
  'died-or-moved': 0,
};

/** Choices for referrals that came so far, nothing else being known of them. */
function choicesFor(
  start: Readonly<Record<string, number>>,
  choices: TableChoices = {},
  mode: ReleaseMode = 'rounded',
): TableChoices {
  const received = Object.entries(start).flatMap(([category, count]) =>
    Array.from({ length: count }, () => ({
      start: category,
      'first-assessment': 'assessed',
      pathway: 'stable',
      source: 'general-practice',
      diagnosis: 'copd',
      age: '60-69',
      deprivation: 'fifth-1',
    })),
  );
  const quarter = { received, assessed: [], started: [], discharged: [] };
  const period = { label: '2026-27-Q1', kind: 'quarter' } as const;
  return listsForPercentages(
    (lists) => countedRelease([quarter], { ref: '1', mode, period }, lists),
    choices,
  );
}

describe('a table that nobody chose the groups of', () => {
  it('is merged as far as its percentage with a target needs, where a small count would take it away', () => {
    expect(choicesFor(START)).toEqual({ start: 'medium' });
    expect(choicesFor(START, {}, 'exact')).toEqual({ start: 'medium' });
  });

  it('stays as fine as it is where all its percentages can be printed', () => {
    expect(choicesFor({ ...START, later: 9, 'not-by-90': 8 })).toEqual({});
  });

  it('stays as fine as it is where no list of groups would print one', () => {
    expect(choicesFor({ ...START, 'within-90': 3 })).toEqual({});
    expect(choicesFor({ 'within-90': 10, later: 1, left: 8 }, {}, 'exact')).toEqual({});
  });

  it('is printed as the lead chose', () => {
    expect(choicesFor(START, { start: 'fine' })).toEqual({ start: 'fine' });
    expect(choicesFor(START, { start: 'left-out' })).toEqual({ start: 'left-out' });
  });
});
