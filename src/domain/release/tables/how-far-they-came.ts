import { isCompeting, leftBeforeStart } from '../../pathway/leaving.js';
import { COMPLETED_OF_ASSESSED } from '../../indicators/definitions/completed-of-assessed.js';
import { COMPLETED_OF_STARTED } from '../../indicators/definitions/completed-of-started.js';
import { EXERCISE_PLAN_GIVEN } from '../../indicators/definitions/exercise-plan-given.js';
import { STARTED_WITHIN_28_DAYS_OF_HOSPITAL_DISCHARGE as WITHIN_28_DAYS } from '../../indicators/definitions/started-within-28-days-of-hospital-discharge.js';
import { STARTED_WITHIN_90_DAYS as WITHIN_90_DAYS } from '../../indicators/definitions/started-within-90-days.js';
import { UPTAKE } from '../../indicators/definitions/uptake.js';
import type { Indicator } from '../../indicators/indicator.js';
import { ruleOf } from '../../indicators/indicator.js';
import { asTheyAre, gathered, tree } from '../code-lists.js';
import type { Category, ShareDefinition, TableDefinition } from '../table-definition.js';

const JUDGED: readonly Category[] = [
  { id: 'yes', words: 'yes' },
  { id: 'no', words: 'no' },
  { id: 'open', words: 'not decided' },
  { id: 'left-out', words: 'left out' },
];

/** How far people came on the pathway. Each table sorts everybody of its universe, so that no two overlap in part. */

export const START: TableDefinition = {
  id: 'start',
  title: 'How soon people started',
  explanation:
    'From receipt of the referral to the first supervised session. People who are still waiting, and people who left, are counted too.',
  universe: 'received',
  categories: [
    { id: 'within-90', words: 'started within 90 days' },
    { id: 'later', words: 'started later' },
    { id: 'left', words: 'left before a start' },
    { id: 'not-by-90', words: 'not started by day 90: still waiting, or died or moved away later' },
    { id: 'waiting', words: 'waiting, day 90 not yet reached' },
    { id: 'died-or-moved', words: 'died or moved away by day 90' },
  ],
  categoryOf: (course, context) => {
    const byDay90 = WITHIN_90_DAYS.judge(course, context).kind;
    if (course.startedOn !== null) return byDay90 === 'numerator' ? 'within-90' : 'later';
    if (byDay90 === 'open') return 'waiting';
    if (byDay90 === 'excluded') return 'died-or-moved';
    const left = leftBeforeStart(course);
    return left !== null && !isCompeting(left.reason) ? 'left' : 'not-by-90';
  },
  codeLists: [
    gathered('fine', [
      ['within-90', 'started within 90 days', 'within-90'],
      ['later', 'started later', 'later'],
      ['left', 'declined, did not reply, not suitable, or left otherwise', 'left'],
      ['not-by-90', 'not started by day 90', 'not-by-90'],
      ['undecided', 'day 90 not yet reached, or died or moved away by then', 'waiting', 'died-or-moved'],
    ]),
    gathered('medium', [
      ['within-90', 'started within 90 days', 'within-90'],
      ['not-within-90', 'started later, not started by day 90, or left', 'later', 'left', 'not-by-90'],
      ['undecided', 'day 90 not yet reached, or died or moved away by then', 'waiting', 'died-or-moved'],
    ]),
    gathered('coarse', [
      ['started', 'started', 'within-90', 'later'],
      ['not-started', 'not started', 'left', 'not-by-90', 'waiting', 'died-or-moved'],
    ]),
  ],
  shares: [
    share(WITHIN_90_DAYS, ['within-90'], ['within-90', 'later', 'left', 'not-by-90']),
    share(UPTAKE, ['within-90', 'later'], ['within-90', 'later', 'left']),
  ],
  periods: 'every',
  needs: null,
};

export const FIRST_ASSESSMENT: TableDefinition = {
  id: 'first-assessment',
  title: 'Who came to a first assessment',
  explanation: 'Before the programme people are measured and it is checked that exercise is safe for them.',
  universe: 'received',
  categories: [
    { id: 'assessed', words: 'assessed' },
    { id: 'not-assessed', words: 'not assessed at the data cut' },
  ],
  categoryOf: ({ assessedOn }) => (assessedOn === null ? 'not-assessed' : 'assessed'),
  codeLists: [
    gathered('fine', [
      ['assessed', 'assessed', 'assessed'],
      ['not-assessed', 'not assessed at the data cut', 'not-assessed'],
    ]),
  ],
  shares: [],
  periods: 'every',
  needs: null,
};

export const PATHWAY: TableDefinition = {
  id: 'pathway',
  title: 'Stable disease, or after an exacerbation',
  explanation:
    'People who were in hospital with a sudden worsening should start within four weeks of going home.',
  universe: 'received',
  categories: [
    { id: 'stable', words: 'stable disease' },
    { id: 'within-28', words: 'after an exacerbation, started within 28 days of hospital discharge' },
    { id: 'not-within-28', words: 'after an exacerbation, not started within 28 days' },
    { id: 'undecided', words: 'after an exacerbation, not decided or not known' },
  ],
  categoryOf: (course, context) => {
    if (course.facts.pathway === 'stable') return 'stable';
    const { kind } = WITHIN_28_DAYS.judge(course, context);
    return kind === 'numerator' ? 'within-28' : kind === 'not-numerator' ? 'not-within-28' : 'undecided';
  },
  codeLists: [
    tree('fine', [
      { group: ['stable', 'stable disease', 'stable'], parts: [] },
      {
        group: ['after-exacerbation', 'after an exacerbation', 'within-28', 'not-within-28', 'undecided'],
        parts: [
          ['within-28', 'started within 28 days of hospital discharge', 'within-28'],
          ['not-within-28', 'not started within 28 days', 'not-within-28'],
          ['undecided', 'day 28 not yet reached, or not known', 'undecided'],
        ],
      },
    ]),
    gathered('coarse', [
      ['stable', 'stable disease', 'stable'],
      ['after-exacerbation', 'after an exacerbation', 'within-28', 'not-within-28', 'undecided'],
    ]),
  ],
  shares: [share(WITHIN_28_DAYS, ['within-28'], ['within-28', 'not-within-28'])],
  periods: 'every',
  needs: null,
};

export const COMPLETION_OF_ASSESSED: TableDefinition = {
  ...judged(
    COMPLETED_OF_ASSESSED,
    'completion-of-assessed',
    'Who completed, of those assessed',
    'Completed by the rule printed with the table: usually most sessions attended and measured again at the end.',
  ),
  universe: 'assessed',
  codeLists: [
    gathered('fine', [
      ['completed', 'completed', 'yes'],
      ['not-completed', 'did not complete', 'no'],
      ['undecided', 'still open, or died or moved away before a start', 'open', 'left-out'],
    ]),
    gathered('coarse', [
      ['completed', 'completed', 'yes'],
      ['not-completed', 'did not complete, or still open', 'no', 'open', 'left-out'],
    ]),
  ],
};

export const COMPLETION: TableDefinition = {
  ...judged(
    COMPLETED_OF_STARTED,
    'completion',
    'Who completed, of those who started',
    'Completed by the rule printed with the table. Those who died or moved away after the start count as not completed.',
  ),
  universe: 'started',
  codeLists: [
    gathered('fine', [
      ['completed', 'completed', 'yes'],
      ['not-completed', 'did not complete', 'no'],
      ['undecided', 'still open', 'open', 'left-out'],
    ]),
    gathered('coarse', [
      ['completed', 'completed', 'yes'],
      ['not-completed', 'did not complete, or still open', 'no', 'open', 'left-out'],
    ]),
  ],
};

export const EXERCISE_PLAN: TableDefinition = {
  ...judged(
    EXERCISE_PLAN_GIVEN,
    'exercise-plan',
    'Who left with a written exercise plan',
    'Of those who completed; the others are counted so that the table holds everybody.',
  ),
  universe: 'discharged',
  codeLists: [
    gathered('fine', [
      ['given', 'plan given', 'yes'],
      ['not-given', 'no plan given', 'no'],
      ['undecided', 'did not complete, or still open', 'open', 'left-out'],
    ]),
    gathered('coarse', [
      ['given', 'plan given', 'yes'],
      ['not-given', 'no plan given, did not complete, or still open', 'no', 'open', 'left-out'],
    ]),
  ],
};

/** A table of an indicator's four judgements. */
function judged(
  indicator: Indicator,
  id: string,
  title: string,
  explanation: string,
): Omit<TableDefinition, 'universe'> {
  return {
    id,
    title,
    explanation,
    categories: JUDGED,
    categoryOf: (course, context) => {
      switch (indicator.judge(course, context).kind) {
        case 'numerator':
          return 'yes';
        case 'not-numerator':
          return 'no';
        case 'open':
          return 'open';
        case 'excluded':
          return 'left-out';
      }
    },
    codeLists: [asTheyAre(JUDGED)],
    shares: [share(indicator, ['yes'], ['yes', 'no'])],
    periods: 'every',
    needs: null,
  };
}

function share(
  indicator: Indicator,
  numerator: readonly string[],
  denominator: readonly string[],
): ShareDefinition {
  const { id, title, targetKey } = indicator;
  return { id, title, numerator, denominator, ruleId: ruleOf(indicator).ruleId, targetKey };
}
