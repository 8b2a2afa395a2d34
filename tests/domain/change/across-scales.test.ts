import { describe, expect, it } from 'vitest';
import type { Comparison } from '../../../src/domain/change/change.js';
import { changesOf, rememberThresholds } from '../../../src/domain/change/course-changes.js';
import type { CourseChange } from '../../../src/domain/change/course-changes.js';
import { pairLossOf } from '../../../src/domain/change/pair-loss.js';
import type { Result } from '../../../src/domain/cohort/referral-facts.js';
import { toNumber } from '../../../src/domain/exact/fraction.js';
import { DEFAULT_TEAM_SETTINGS } from '../../../src/domain/settings/team-settings.js';
import { aCourse, anAssessment, anMrc, aResult, aSession } from '../../support/facts.js';

/*
 * The two scales of breathlessness differ by one grade: mMRC = MRC - 1 (Yorke 2022, Int J COPD 17:2289). A grade is the
 * MID of either. Expected numbers are counted by hand on these two rules.
 */
const MRC = 'mrc-dyspnoea';
const MMRC = 'mmrc-dyspnoea';

function anMmrc(grade: number): Result {
  return aResult('mmrc-dyspnoea', grade, { conditions: { questionnaire: 'mmrc-dyspnoea' } });
}

function courseOf(baseline: readonly Result[], discharge: readonly Result[], dischargeOn = '2026-06-15') {
  return aCourse({
    contacts: [aSession('2026-05-04')],
    assessments: [
      anAssessment('baseline', '2026-04-10', baseline),
      anAssessment('discharge', dischargeOn, discharge),
    ],
  });
}

function changes(
  baseline: readonly Result[],
  discharge: readonly Result[],
  dischargeOn?: string,
): ReadonlyMap<string, CourseChange> {
  const thresholdsFor = rememberThresholds(DEFAULT_TEAM_SETTINGS);
  return changesOf(courseOf(baseline, discharge, dischargeOn), thresholdsFor);
}

function pairOf(change: CourseChange | undefined): Extract<Comparison, { kind: 'pair' }> {
  if (change?.comparison.kind !== 'pair') throw new Error('There is no pair.');
  return change.comparison;
}

describe('breathlessness on the other scale at discharge', () => {
  it.each([
    ['MRC 4, then mMRC 2', anMrc(4), anMmrc(2), MRC, -1, 'improved'],
    ['MRC 5, then mMRC 4', anMrc(5), anMmrc(4), MRC, 0, 'little-change'],
    ['MRC 1, then mMRC 1', anMrc(1), anMmrc(1), MRC, 1, 'worse'],
    ['MRC 1, then mMRC 0', anMrc(1), anMmrc(0), MRC, 0, 'little-change'],
    ['mMRC 3, then MRC 3', anMmrc(3), anMrc(3), MMRC, -1, 'improved'],
    ['mMRC 0, then MRC 2', anMmrc(0), anMrc(2), MMRC, 1, 'worse'],
    ['mMRC 4, then MRC 1', anMmrc(4), anMrc(1), MMRC, -4, 'improved'],
  ] as const)('is a pair on the scale of the baseline: %s', (_name, before, after, scale, change, judged) => {
    const pair = pairOf(changes([before], [after]).get(scale));
    expect([toNumber(pair.change), pair.class]).toEqual([change, judged]);
  });

  it('keeps the pair from being like for like, and says what was converted by which source', () => {
    const pair = pairOf(changes([anMrc(4)], [anMmrc(2)]).get('mrc-dyspnoea'));
    expect(pair.isLikeForLike).toBe(false);
    expect(pair.differenceWords).toBe(
      'scale MRC (1 to 5) at baseline, mMRC (0 to 4) grade 2, read as MRC grade 3, at discharge ' +
        '(mMRC is MRC less 1: Yorke 2022, Int J COPD 17:2289, and common practice)',
    );
  });

  it('makes one pair, not two: the measure of the discharge says where it is compared', () => {
    const course = courseOf([anMrc(4)], [anMmrc(2)]);
    const found = changes([anMrc(4)], [anMmrc(2)]);
    const change = found.get('mmrc-dyspnoea');
    expect(change?.comparison).toMatchObject({
      kind: 'no-pair',
      reason: 'compared-on-other-scale',
      words: 'Compared on the scale of the baseline: MRC dyspnoea grade (1 to 5)',
    });
    expect(change?.discharge?.result.value).toEqual({ numerator: 2, denominator: 1 });
    expect(pairLossOf(course, change)).toBe('compared-on-other-scale');
    expect(pairLossOf(course, found.get('mrc-dyspnoea'))).toBe('not-like-for-like');
  });
});

describe('no grade is converted', () => {
  it.each([
    ['both at the baseline', [anMrc(4), anMmrc(3)], [anMmrc(2)], MMRC, MRC],
    ['both at discharge', [anMrc(4)], [anMrc(3), anMmrc(2)], MRC, MMRC],
  ] as const)('where a scale has a pair of its own: %s', (_name, before, after, paired, other) => {
    const found = changes(before, after);
    expect(pairOf(found.get(paired)).isLikeForLike).toBe(true);
    expect(found.get(other)?.comparison.kind).toBe('no-pair');
  });

  it('where the discharge was before the baseline', () => {
    const found = changes([anMrc(4)], [anMmrc(2)], '2026-04-01');
    expect(found.get('mrc-dyspnoea')?.comparison).toMatchObject({ reason: 'no-discharge-result' });
    expect(found.get('mmrc-dyspnoea')?.comparison).toMatchObject({ reason: 'no-baseline-result' });
  });

  it('that is on no scale', () => {
    const found = changes([anMrc(4)], [aResult('mmrc-dyspnoea', 5)]);
    expect(found.get('mrc-dyspnoea')?.comparison.kind).toBe('no-pair');
  });
});
