import type { Indicator } from '../indicator.js';
import { counts, countsNot, leftOut, stillOpen } from '../judge.js';
import { RCP_SERVICES_2017 } from '../sources.js';

/** Left with a written exercise plan, of those discharged who completed. */
export const EXERCISE_PLAN_GIVEN: Indicator = {
  id: 'exercise-plan-given',
  version: 1,
  title: 'Written exercise plan given',
  cohort: 'discharge',
  targetKey: 'exercise-plan-given',
  numerator: 'Written exercise plan given, up to the data cut',
  denominator:
    "Discharged in the period and completed by the team's reading; open while completion, or the plan of a person " +
    'not closed, is still to come',
  exclusions: 'Did not start; did not complete',
  source: RCP_SERVICES_2017,
  judge: (course, { settings }) => {
    if (course.completion === null) return leftOut('did-not-start', 'Did not start');
    const completion = course.completion[settings.completionReading];
    switch (completion.kind) {
      case 'not-completed':
        return leftOut('did-not-complete', completion.reason);
      case 'open':
        return stillOpen(completion.reason);
      case 'completed':
        if (course.facts.exercisePlanGivenOn !== null) return counts('Plan given');
        if (course.facts.closure !== null) return countsNot('Closed without a plan');
        return stillOpen('Completed and not closed, no plan yet');
    }
  },
};
