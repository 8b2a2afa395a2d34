import type { WorkGroup, WorkGroupId, WorkRole } from './work-list.js';

/** How each group is told of. */
export const GROUPS: Readonly<Record<WorkGroupId, WorkGroup>> = {
  triage: {
    title: 'Referrals to triage',
    explanation: 'Received, and nobody has decided whether the programme suits.',
    whenEmpty: 'Every referral has been triaged.',
  },
  booking: {
    title: 'People to book',
    explanation: 'Accepted, and no assessment is booked.',
    whenEmpty: 'Everybody who was accepted has an assessment booked.',
  },
  assessments: {
    title: 'Baseline assessments due',
    explanation: 'Booked for the next 14 days, or booked for a day that has passed.',
    whenEmpty: 'No baseline assessment is due in the next 14 days.',
  },
  starts: {
    title: 'Starts due',
    explanation: 'Assessed, and has not attended a first supervised session.',
    whenEmpty: 'Nobody who was assessed is waiting for a start in the next 14 days.',
  },
  classes: {
    title: 'Classes to register',
    explanation: 'Classes and contacts of today, and of the last eight weeks, with nobody on the register.',
    whenEmpty: 'Every class has its register.',
  },
  'discharge-assessments': {
    title: 'Discharge assessments due',
    explanation: 'The programme is over, or has two sessions or 14 days left.',
    whenEmpty: 'No discharge assessment is due.',
  },
  'pairs-at-risk': {
    title: 'Results lost, or about to be',
    explanation: 'In the programme without a baseline walk, or finished without a discharge test.',
    whenEmpty: 'Everybody in the programme can be measured at both ends.',
  },
  waits: {
    title: 'Waits near their target',
    explanation: 'Not started, and the last day that counts is near or has passed.',
    whenEmpty: 'No wait is near its target.',
  },
  closure: {
    title: 'Referrals to close',
    explanation: 'Nothing more is planned, and nobody has closed the referral.',
    whenEmpty: 'No referral is waiting to be closed.',
  },
  duplicates: {
    title: 'Records to compare',
    explanation: 'Another record of the team has the same family name and date of birth.',
    whenEmpty: 'No two records look like the same person.',
  },
};

/** Groups in the order in which a role works through them; every role has every group. */
export const GROUP_ORDER: Readonly<Record<WorkRole, readonly WorkGroupId[]>> = {
  admin: [
    'classes',
    'booking',
    'starts',
    'assessments',
    'waits',
    'discharge-assessments',
    'closure',
    'duplicates',
    'triage',
    'pairs-at-risk',
  ],
  clinician: [
    'triage',
    'assessments',
    'discharge-assessments',
    'classes',
    'pairs-at-risk',
    'starts',
    'waits',
    'closure',
    'booking',
    'duplicates',
  ],
  lead: [
    'waits',
    'pairs-at-risk',
    'discharge-assessments',
    'triage',
    'booking',
    'assessments',
    'starts',
    'classes',
    'closure',
    'duplicates',
  ],
};
