import type { Citation } from '../evidence/citation.js';
import { JONES_2014 } from '../indicators/sources.js';
import {
  BONDARENKO_2024,
  BOUTOU_2014,
  LEICESTER_2023,
  NATIONAL_REPORT_2016,
  STONE_2021,
} from './benchmark-sources.js';

/** A published percentage that may stand beside a team's own figure: context, never a target. */
export interface Benchmark {
  readonly id: string;
  /** The figure of the report it stands beside. */
  readonly figureId: string;
  readonly title: string;
  /** As printed; derived ones say so by their source. */
  readonly percent: number;
  /** People behind it; null where the source does not say. */
  readonly n: number | null;
  readonly population: string;
  /** Why the two may differ by definition. */
  readonly caution: string;
  readonly source: Citation;
}

const OTHER_DEFINITION = 'What the source counts as completed may differ from the reading of this team';
const TRIALS = 'People in trials, international, not a service; low to moderate certainty';

/** Every published figure that is shown, each with its n and its source. No figure of a UK service for the MID was found. */
export const BENCHMARKS: readonly Benchmark[] = [
  {
    id: 'uptake-leicester-2023',
    figureId: 'uptake',
    title: 'Started, of those referred',
    percent: 56,
    n: 313,
    population: 'one English service, 2022 to 2023 (175 of 313)',
    caution: 'Deaths, moves and transfers before the start may be counted otherwise',
    source: LEICESTER_2023,
  },
  {
    id: 'started-within-90-days-national-2016',
    figureId: 'started-within-90-days',
    title: 'Waited no longer than three months',
    percent: 63,
    n: 7413,
    population: 'people enrolled in 210 services of England and Wales, 2015 (37 % waited longer)',
    caution:
      'Of those enrolled only: people still waiting and people who left are not in it. Three months are 89 to 92 days',
    source: NATIONAL_REPORT_2016,
  },
  {
    id: 'completed-of-started-stone-2021',
    figureId: 'completed-of-started',
    title: 'Completed, of those enrolled',
    percent: 66,
    n: 7060,
    population: 'people enrolled in UK services, January to March 2017 (4635 of 7060)',
    caution: OTHER_DEFINITION,
    source: STONE_2021,
  },
  {
    id: 'completed-of-started-leicester-2023',
    figureId: 'completed-of-started',
    title: 'Completed, of those who started',
    percent: 65,
    n: 175,
    population: 'one English service, 2022 to 2023 (114 of 175)',
    caution: OTHER_DEFINITION,
    source: LEICESTER_2023,
  },
  {
    id: 'completed-by-both-boutou-2014',
    figureId: 'completion.of-started.sessions-and-assessment',
    title: 'At least 75 % of visits and the follow-up test',
    percent: 57.1,
    n: 787,
    population: 'people with COPD in eight London centres',
    caution: 'Of those who began; visits may be counted otherwise',
    source: BOUTOU_2014,
  },
  {
    id: 'completed-of-assessed-national-2016',
    figureId: 'completed-of-assessed',
    title: 'Completed, of those assessed',
    percent: 60,
    n: 7413,
    population: 'people in 210 services of England and Wales, 2015 (40 % of those assessed did not)',
    caution: OTHER_DEFINITION,
    source: NATIONAL_REPORT_2016,
  },
  {
    id: 'completed-of-referred-jones-2014',
    figureId: 'completed-of-referred',
    title: 'Completed, of those referred',
    percent: 49,
    n: 90,
    population: 'people referred after a hospital admission, one London service (44 of 90; by division)',
    caution: OTHER_DEFINITION,
    source: JONES_2014,
  },
  {
    id: 'exercise-plan-national-2016',
    figureId: 'exercise-plan-given',
    title: 'Written exercise plan given',
    percent: 74,
    n: 7413,
    population: 'people in 210 services of England and Wales, 2015 (26 % left without)',
    caution: 'Of whom the source counts is not known',
    source: NATIONAL_REPORT_2016,
  },
  trials('six-minute-walk-distance', 'six-minute walk', 47),
  trials('crq-dyspnoea', 'dyspnoea', 43),
  trials('crq-fatigue', 'fatigue', 48),
  trials('crq-emotional-function', 'emotional function', 37),
];

function trials(measureId: string, words: string, percent: number): Benchmark {
  return {
    id: `mid-reached-trials-${measureId}`,
    figureId: `mid-reached.${measureId}`,
    title: `Reached the MID: ${words}`,
    percent,
    n: null,
    population: 'people given rehabilitation in 49 trials',
    caution: TRIALS,
    source: BONDARENKO_2024,
  };
}
