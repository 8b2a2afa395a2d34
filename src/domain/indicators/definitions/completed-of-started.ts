import { judgeCompleted } from '../completed.js';
import type { Indicator } from '../indicator.js';
import { JONES_2014 } from '../sources.js';

/** Completed, of those who started. */
export const COMPLETED_OF_STARTED: Indicator = {
  id: 'completed-of-started',
  version: 1,
  title: 'Completed, of those started',
  cohort: 'start',
  targetKey: 'completed-of-started',
  numerator: "Completed by the team's reading, at any time up to the data cut",
  denominator:
    'Started in the period, deaths, moves and transfers after the start included; open while completion is possible',
  exclusions: null,
  source: JONES_2014,
  judge: (course, { settings }) => judgeCompleted(course, settings.completionReading, 'started'),
};
