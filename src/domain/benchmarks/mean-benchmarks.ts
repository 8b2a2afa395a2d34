import type { Citation } from '../evidence/citation.js';
import { SINGH_2008, SMID_2017, ZATLOUKAL_2019 } from '../measures/shared-sources.js';
import type { Interval } from '../statistics/interval.js';

/** A published mean change that may stand beside a team's own: context, never a target. */
export interface MeanBenchmark {
  readonly id: string;
  readonly measureId: string;
  /** Discharge minus baseline, in the unit of the measure, as printed. */
  readonly mean: number;
  /** Of the changes; null where it is not printed. */
  readonly sd: number | null;
  /** 95 % interval of the mean; null where it is not printed. */
  readonly interval: Interval | null;
  readonly n: number;
  readonly population: string;
  /** Why the two may differ. */
  readonly caution: string;
  readonly source: Citation;
}

const CAUTION = 'People with COPD who were measured at both ends; this team has other diagnoses too';

/** Every published mean change that is shown, each with its n and its source. */
export const MEAN_BENCHMARKS: readonly MeanBenchmark[] = [
  {
    id: 'mean-change-singh-2008',
    measureId: 'incremental-shuttle-walk-distance',
    mean: 65.9,
    sd: null,
    interval: { low: 58.9, high: 72.9 },
    n: 372,
    population: 'people with COPD after seven weeks of rehabilitation',
    caution: CAUTION,
    source: SINGH_2008,
  },
  {
    id: 'mean-change-iswt-zatloukal-2019',
    measureId: 'incremental-shuttle-walk-distance',
    mean: 61.8,
    sd: null,
    interval: { low: 56, high: 67.5 },
    n: 531,
    population: 'people with COPD after six weeks of rehabilitation',
    caution: CAUTION,
    source: ZATLOUKAL_2019,
  },
  {
    id: 'mean-change-eswt-zatloukal-2019',
    measureId: 'endurance-shuttle-walk-time',
    mean: 342,
    sd: 347.4,
    interval: { low: 312.4, high: 371.6 },
    n: 531,
    population: 'people with COPD after six weeks of rehabilitation',
    caution: CAUTION,
    source: ZATLOUKAL_2019,
  },
  smid('cat-total', -3, 6.8),
  smid('sgrq-total', -9.1, 14),
  smid('hads-anxiety', -1.7, 3.7),
  smid('hads-depression', -2.1, 3.7),
];

function smid(measureId: string, mean: number, sd: number): MeanBenchmark {
  return {
    id: `mean-change-${measureId}-smid-2017`,
    measureId,
    mean,
    sd,
    interval: null,
    n: 419,
    population: 'people with COPD in one Dutch cohort',
    caution: CAUTION,
    source: SMID_2017,
  };
}
