import { DEFAULT_DISCLOSURE } from '../release/policy.js';
import type { DisclosureSettings } from '../release/policy.js';
import type { DesaturationDefinitionId } from '../safety/desaturation.js';
import type { RestingLimitsId } from '../safety/resting-limits.js';

/** The four published readings of "completed". */
export const COMPLETION_READINGS = [
  'assessment',
  'sessions',
  'sessions-and-assessment',
  'session-count',
] as const;
export type CompletionReading = (typeof COMPLETION_READINGS)[number];

export const SECOND_FACTOR_RULES = ['optional', 'required'] as const;
export type SecondFactorRule = (typeof SECOND_FACTOR_RULES)[number];

/** A team's choices, stored as numbered versions; a report prints the version it used. */
export interface TeamSettings {
  readonly completionReading: CompletionReading;
  /** Planned supervised sessions where a referral does not say otherwise. */
  readonly plannedSessions: number;
  readonly plannedWeeks: number;
  /** Chosen prediction equation by measure id. */
  readonly equations: Readonly<Record<string, string>>;
  /** Chosen improvement threshold by measure id; where absent the default of the catalogue applies. */
  readonly thresholds: Readonly<Record<string, string>>;
  /** Threshold by measure id and diagnosis, written `measure-id/diagnosis`; overrides `thresholds`. */
  readonly thresholdsByDiagnosis: Readonly<Record<string, string>>;
  /** Target in percent by indicator id, with where it comes from. */
  readonly targets: Readonly<Record<string, { readonly percent: number; readonly source: string }>>;
  /** Limits beyond which resting values raise a caution: two published sets differ. */
  readonly restingLimits: RestingLimitsId;
  /** What counts as desaturation during a walk: there is no single meaning. */
  readonly desaturationDefinition: DesaturationDefinitionId;
  /** Whether leads must show a second factor when they sign in. */
  readonly leadSecondFactor: SecondFactorRule;
  /** Whole years for which a record is kept after its last contact; then it may be deleted. */
  readonly retentionYears: number;
  /** What summaries for commissioners hide, round and leave out. */
  readonly disclosure: DisclosureSettings;
}

/** Settings of a new team. Targets: Royal College of Physicians report on services of 2017 (85 % and 70 %). */
export const DEFAULT_TEAM_SETTINGS: TeamSettings = {
  completionReading: 'sessions-and-assessment',
  plannedSessions: 12,
  plannedWeeks: 6,
  equations: {
    'six-minute-walk-distance': 'enright-sherrill-1998',
    'incremental-shuttle-walk-distance': 'probst-2012',
  },
  thresholds: {},
  thresholdsByDiagnosis: {},
  // The stricter of the two sets.
  restingLimits: 'ats-2002',
  // Judged by the lowest SpO2 alone, and the more cautious of the meanings that can be.
  desaturationDefinition: 'nadir-below-90',
  leadSecondFactor: 'optional',
  // Common practice in England for records of adults, from memory: check before use. Local policy decides.
  retentionYears: 8,
  disclosure: DEFAULT_DISCLOSURE,
  targets: {
    'started-within-90-days': {
      percent: 85,
      source:
        'Royal College of Physicians, Pulmonary rehabilitation: an exercise in improvement (services of 2017)',
    },
    'completed-of-assessed': {
      percent: 70,
      source:
        'Royal College of Physicians, Pulmonary rehabilitation: an exercise in improvement (services of 2017)',
    },
  },
};
