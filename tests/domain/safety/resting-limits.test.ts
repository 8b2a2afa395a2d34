import { describe, expect, it } from 'vitest';
import type { RestingValues } from '../../../src/domain/assessment/assessment.js';
import { describeLimit, RESTING_LIMITS, restingFindings } from '../../../src/domain/safety/resting-limits.js';
import type { RestingLimitsId } from '../../../src/domain/safety/resting-limits.js';
import { DEFAULT_TEAM_SETTINGS } from '../../../src/domain/settings/team-settings.js';

const NOTHING: RestingValues = {
  spo2Percent: null,
  heartRateBpm: null,
  systolicMmHg: null,
  diastolicMmHg: null,
};

function found(
  values: Partial<RestingValues>,
  limits: RestingLimitsId = 'ats-2002',
  oxygenLPerMin: number | null = 0,
): readonly string[] {
  return restingFindings({ ...NOTHING, ...values }, { limits, oxygenLPerMin }).map(({ limit }) => limit.id);
}

describe('blood pressure and heart rate, each limit as its source says it', () => {
  it.each([
    ['ats-2002', 'systolicMmHg', 180, []],
    ['ats-2002', 'systolicMmHg', 181, ['resting-systolic-above-180']],
    ['ats-2002', 'systolicMmHg', 200, ['resting-systolic-above-180']],
    ['ats-2002', 'diastolicMmHg', 100, []],
    ['ats-2002', 'diastolicMmHg', 101, ['resting-diastolic-above-100']],
    ['ats-2002', 'heartRateBpm', 120, []],
    ['ats-2002', 'heartRateBpm', 121, ['resting-heart-rate-above-120']],
    ['ats-2002', 'heartRateBpm', 126, ['resting-heart-rate-above-120']],
    ['ats-2002', 'heartRateBpm', 50, []],
    ['ats-2002', 'heartRateBpm', 49, ['resting-heart-rate-below-50']],
    ['ers-ats-2014', 'systolicMmHg', 199, []],
    ['ers-ats-2014', 'systolicMmHg', 200, ['resting-systolic-at-200']],
    ['ers-ats-2014', 'diastolicMmHg', 119, []],
    ['ers-ats-2014', 'diastolicMmHg', 120, ['resting-diastolic-at-120']],
    ['ers-ats-2014', 'heartRateBpm', 125, []],
    ['ers-ats-2014', 'heartRateBpm', 126, ['resting-heart-rate-above-125']],
    ['ers-ats-2014', 'heartRateBpm', 50, []],
    ['ers-ats-2014', 'heartRateBpm', 49, ['resting-heart-rate-below-50']],
  ] as const)('%s: %s %i', (limits, field, value, expected) => {
    expect(found({ [field]: value }, limits)).toEqual(expected);
  });

  it('finds both pressures when both lie beyond', () => {
    expect(found({ systolicMmHg: 190, diastolicMmHg: 110 })).toEqual([
      'resting-systolic-above-180',
      'resting-diastolic-above-100',
    ]);
  });
});

describe('SpO2', () => {
  it.each([
    [85, 0, ['resting-saturation-at-or-below-85']],
    [86, 0, ['resting-saturation-below-91']],
    [90, 0, ['resting-saturation-below-91']],
    [91, 0, []],
    // Whether it was room air is not recorded: nothing is taken to be lifted.
    [85, null, ['resting-saturation-at-or-below-85']],
    // With oxygen the test may be done; the programme's limit for starting still stands.
    [85, 0.5, ['resting-saturation-below-91']],
    [91, 2, []],
  ])('%i %% with %s L/min', (spo2Percent, oxygenLPerMin, expected) => {
    expect(found({ spo2Percent }, 'ats-2002', oxygenLPerMin)).toEqual(expected);
    expect(found({ spo2Percent }, 'ers-ats-2014', oxygenLPerMin)).toEqual(expected);
  });
});

describe('resting limits', () => {
  it.each(['ats-2002', 'ers-ats-2014'] as const)('%s finds nothing where nothing is recorded', (limits) => {
    expect(found({}, limits, null)).toEqual([]);
  });

  it('are the stricter set until the team chooses', () => {
    expect(DEFAULT_TEAM_SETTINGS.restingLimits).toBe('ats-2002');
  });

  it('say in words whether the limit itself counts', () => {
    const words = new Map(RESTING_LIMITS.map((limit) => [limit.id, describeLimit(limit)]));
    expect(words.get('resting-systolic-at-200')).toBe('at or above 200 mmHg');
    expect(words.get('resting-systolic-above-180')).toBe('above 180 mmHg');
    expect(words.get('resting-saturation-at-or-below-85')).toBe('at or below 85 %');
    expect(words.get('resting-heart-rate-below-50')).toBe('below 50 beats/min');
  });

  it('give the value that lies beyond', () => {
    const [finding] = restingFindings(
      { ...NOTHING, systolicMmHg: 184 },
      { limits: 'ats-2002', oxygenLPerMin: null },
    );
    expect(finding?.value).toBe(184);
  });
});
