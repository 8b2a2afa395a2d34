import { QUESTIONNAIRES, SIT_TO_STAND_TESTS, WALK_TESTS } from '../measures/registered.js';
import type { WalkTest } from '../measures/walk-test.js';
import { TIMEPOINTS } from '../referral/closed-sets.js';
import type { Timepoint } from '../referral/closed-sets.js';

/** Fields of an assessment beside its tests and scores, each with a column of its own, by the group that they form. */
export const PERSON_FIELDS = {
  own: ['heightCm', 'weightKg'],
  spirometry: ['fev1L', 'fev1PercentPredicted', 'fev1FvcPercent'],
  resting: ['spo2Percent', 'heartRateBpm', 'systolicMmHg', 'diastolicMmHg'],
} as const;

type PersonField = (typeof PERSON_FIELDS)[keyof typeof PERSON_FIELDS][number];

/** Ids of the columns of an assessment at one timepoint. */
export interface AssessmentColumnIds {
  readonly assessedOn: string;
  readonly site: string;
  readonly fields: Readonly<Record<PersonField, string>>;
  readonly walks: readonly {
    readonly test: WalkTest;
    readonly attempts: readonly [string, string];
    readonly speedLevel: string;
  }[];
  /** Of every walk of the timepoint. */
  readonly walkConditions: Readonly<Record<'courseLengthM' | 'walkingAid' | 'oxygenLPerMin', string>>;
  readonly stands: readonly { readonly test: string; readonly isTimed: boolean; readonly id: string }[];
  readonly questionnaires: readonly {
    readonly questionnaire: string;
    readonly form: string;
    readonly scores: readonly { readonly measure: string; readonly id: string }[];
  }[];
}

/** The ids by timepoint: put together once, since a sheet asks for each of them in every row. */
const IDS = new Map(TIMEPOINTS.map((timepoint) => [timepoint, idsOf(timepoint)]));

/** Ids of the columns of an assessment at a timepoint. @example assessmentColumnIds('baseline').site -> 'baseline.site' */
export function assessmentColumnIds(timepoint: Timepoint): AssessmentColumnIds {
  return IDS.get(timepoint) ?? idsOf(timepoint);
}

function idsOf(timepoint: Timepoint): AssessmentColumnIds {
  const at = (part: string): string => `${timepoint}.${part}`;
  return {
    assessedOn: at('assessedOn'),
    site: at('site'),
    fields: {
      heightCm: at('heightCm'),
      weightKg: at('weightKg'),
      fev1L: at('fev1L'),
      fev1PercentPredicted: at('fev1PercentPredicted'),
      fev1FvcPercent: at('fev1FvcPercent'),
      spo2Percent: at('spo2Percent'),
      heartRateBpm: at('heartRateBpm'),
      systolicMmHg: at('systolicMmHg'),
      diastolicMmHg: at('diastolicMmHg'),
    },
    walks: WALK_TESTS.map((test) => ({
      test,
      attempts: [at(`walk.${test.id}.1`), at(`walk.${test.id}.2`)],
      speedLevel: at(`walk.${test.id}.speedLevel`),
    })),
    walkConditions: {
      courseLengthM: at('walk.courseLengthM'),
      walkingAid: at('walk.walkingAid'),
      oxygenLPerMin: at('walk.oxygenLPerMin'),
    },
    stands: SIT_TO_STAND_TESTS.map((test) => ({
      test: test.id,
      isTimed: test.measure.unit === 's',
      id: at(`stand.${test.id}`),
    })),
    questionnaires: QUESTIONNAIRES.map(({ id, measures }) => ({
      questionnaire: id,
      form: at(`form.${id}`),
      scores: measures.map((measure) => ({ measure: measure.id, id: at(`score.${measure.id}`) })),
    })),
  };
}
