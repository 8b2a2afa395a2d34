import type { RestingValues } from '../assessment/assessment.js';
import type { Citation } from '../evidence/citation.js';
import type { SafetyStrength } from './safety-list.js';
import { ATS_2002_RESTING, COMMUNITY_CHECKLIST_2016, HOLLAND_2014_TABLE_4 } from './safety-sources.js';

/** The two published sets of limits for blood pressure at rest, the stricter first. */
export const RESTING_LIMITS_IDS = ['ats-2002', 'ers-ats-2014'] as const;
export type RestingLimitsId = (typeof RESTING_LIMITS_IDS)[number];

/** The two sets in words, for choosing. */
export const RESTING_LIMITS_TITLES: Readonly<Record<RestingLimitsId, string>> = {
  'ats-2002': 'American Thoracic Society 2002: above 180/100 mmHg, heart rate above 120 (the stricter)',
  'ers-ats-2014': 'ERS/ATS technical standard 2014: 200/120 mmHg',
};

/** A value at rest at which a test is not begun, or not without weighing it. */
export interface RestingLimit {
  /** Stable id; that of the checklist item where the limit is one. */
  readonly id: string;
  readonly field: keyof RestingValues;
  readonly label: string;
  readonly unit: string;
  /** As the source says it: a value equal to the limit counts only with `at-or-`. */
  readonly reachedWhen: 'above' | 'at-or-above' | 'below' | 'at-or-below';
  readonly value: number;
  readonly strength: SafetyStrength;
  /** Holds on room air only: with oxygen the test may be done. */
  readonly isOnRoomAirOnly: boolean;
  /** The sets to which it belongs. */
  readonly usedBy: readonly RestingLimitsId[];
  readonly note: string | null;
  readonly citation: Citation;
}

const SPO2 = { field: 'spo2Percent', label: 'SpO2 at rest', unit: '%' } as const;
const HEART_RATE = { field: 'heartRateBpm', label: 'Heart rate at rest', unit: 'beats/min' } as const;
const SYSTOLIC = { field: 'systolicMmHg', label: 'Systolic pressure at rest', unit: 'mmHg' } as const;
const DIASTOLIC = { field: 'diastolicMmHg', label: 'Diastolic pressure at rest', unit: 'mmHg' } as const;

const ATS_2002 = {
  strength: 'relative',
  isOnRoomAirOnly: false,
  usedBy: ['ats-2002'],
  note: null,
  citation: ATS_2002_RESTING,
} as const;

const ERS_ATS_2014 = {
  strength: 'relative',
  isOnRoomAirOnly: false,
  usedBy: ['ers-ats-2014'],
  note: 'For untreated high blood pressure. Printed without a sign: reaching the figure counts.',
  citation: HOLLAND_2014_TABLE_4,
} as const;

const COMMUNITY = {
  strength: 'local',
  isOnRoomAirOnly: false,
  usedBy: RESTING_LIMITS_IDS,
  note: 'From the checklist of one community programme.',
  citation: COMMUNITY_CHECKLIST_2016,
} as const;

/** Every limit; of two in one direction the one that says more stands first. */
export const RESTING_LIMITS: readonly RestingLimit[] = [
  {
    ...SPO2,
    id: 'resting-saturation-at-or-below-85',
    reachedWhen: 'at-or-below',
    value: 85,
    strength: 'absolute',
    isOnRoomAirOnly: true,
    usedBy: RESTING_LIMITS_IDS,
    note: 'On room air; the test may be done with supplemental oxygen.',
    citation: HOLLAND_2014_TABLE_4,
  },
  { ...SPO2, ...COMMUNITY, id: 'resting-saturation-below-91', reachedWhen: 'below', value: 91 },
  { ...HEART_RATE, ...ATS_2002, id: 'resting-heart-rate-above-120', reachedWhen: 'above', value: 120 },
  // The standard of 2014 has no figure for the heart rate: the programme's stands in. It is said once, by the lower limit.
  {
    ...HEART_RATE,
    ...COMMUNITY,
    id: 'resting-heart-rate-above-125',
    reachedWhen: 'above',
    value: 125,
    usedBy: ['ers-ats-2014'],
  },
  { ...HEART_RATE, ...COMMUNITY, id: 'resting-heart-rate-below-50', reachedWhen: 'below', value: 50 },
  { ...SYSTOLIC, ...ATS_2002, id: 'resting-systolic-above-180', reachedWhen: 'above', value: 180 },
  { ...SYSTOLIC, ...ERS_ATS_2014, id: 'resting-systolic-at-200', reachedWhen: 'at-or-above', value: 200 },
  { ...DIASTOLIC, ...ATS_2002, id: 'resting-diastolic-above-100', reachedWhen: 'above', value: 100 },
  { ...DIASTOLIC, ...ERS_ATS_2014, id: 'resting-diastolic-at-120', reachedWhen: 'at-or-above', value: 120 },
];

/** What resting values are judged by. */
export interface RestingOptions {
  readonly limits: RestingLimitsId;
  /** Oxygen during the test: 0 is room air; null is not recorded, and then nothing is taken to be lifted by oxygen. */
  readonly oxygenLPerMin: number | null;
}

/** A resting value beyond a limit. */
export interface RestingFinding {
  readonly limit: RestingLimit;
  readonly value: number;
}

/**
 * Which resting values lie beyond a limit.
 *
 * @param resting SpO2 in %, heart rate in beats/min, pressures in mmHg; null is not recorded and finds nothing
 * @returns for each value and direction the limit that says most, in the order of RESTING_LIMITS
 * @source The citation of each limit.
 * @example systolic 180 by ats-2002 -> nothing; 181 -> resting-systolic-above-180
 */
export function restingFindings(resting: RestingValues, options: RestingOptions): readonly RestingFinding[] {
  const isOnOxygen = options.oxygenLPerMin !== null && options.oxygenLPerMin > 0;
  const found = RESTING_LIMITS.flatMap((limit): readonly RestingFinding[] => {
    const value = resting[limit.field];
    if (value === null || !limit.usedBy.includes(options.limits)) return [];
    if (limit.isOnRoomAirOnly && isOnOxygen) return [];
    return isReached(limit, value) ? [{ limit, value }] : [];
  });
  return found.filter((finding, index) => found.findIndex((other) => isSameSide(finding, other)) === index);
}

/** Words for a limit. @example describeLimit of resting-systolic-at-200 -> 'at or above 200 mmHg' */
export function describeLimit(limit: RestingLimit): string {
  return `${limit.reachedWhen.replaceAll('-', ' ')} ${limit.value} ${limit.unit}`;
}

function isReached(limit: RestingLimit, value: number): boolean {
  switch (limit.reachedWhen) {
    case 'above':
      return value > limit.value;
    case 'at-or-above':
      return value >= limit.value;
    case 'below':
      return value < limit.value;
    case 'at-or-below':
      return value <= limit.value;
  }
}

function isSameSide(a: RestingFinding, b: RestingFinding): boolean {
  return a.limit.field === b.limit.field && isUpper(a.limit) === isUpper(b.limit);
}

function isUpper(limit: RestingLimit): boolean {
  return limit.reachedWhen === 'above' || limit.reachedWhen === 'at-or-above';
}
