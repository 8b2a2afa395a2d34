import type { WorkRule } from '../work-list.js';

/** A person who may stand in the record twice: a second record would split what is counted of them. */
export const duplicatePending: WorkRule = ({ course, mayBeDuplicate }) =>
  mayBeDuplicate
    ? {
        dueOn: course.facts.receivedOn,
        reason: 'Another record has the same family name and date of birth',
      }
    : null;
