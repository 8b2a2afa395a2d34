import type { PlainDate } from '../calendar/plain-date.js';
import type { Role } from '../account/role.js';
import type { Course } from '../pathway/course.js';
import type { Stage } from '../pathway/stage.js';
import type { TeamSettings } from '../settings/team-settings.js';

/** What can be due, in the order of the pathway; ids are stable. */
export const WORK_GROUPS = [
  'triage',
  'booking',
  'assessments',
  'starts',
  'classes',
  'discharge-assessments',
  'pairs-at-risk',
  'waits',
  'closure',
  'duplicates',
] as const;
export type WorkGroupId = (typeof WORK_GROUPS)[number];

/** Groups whose entries are about a referral; the others are about a class. */
export type ReferralWorkGroupId = Exclude<WorkGroupId, 'classes'>;

/** One thing that is due for one referral. */
export interface Due {
  readonly dueOn: PlainDate;
  /** Why, in words, without any result: administrators read it too. */
  readonly reason: string;
}

/** What a rule looks at. */
export interface WorkInput {
  /** The course of an open referral as at today. */
  readonly course: Course;
  readonly stage: Stage;
  readonly settings: TeamSettings;
  /** Whether another record of the team has the same family name and date of birth. */
  readonly mayBeDuplicate: boolean;
}

/** Says what is due in one group; null where nothing is. */
export type WorkRule = (input: WorkInput) => Due | null;

/** How a group is told of. */
export interface WorkGroup {
  readonly title: string;
  /** What stands in the group, in one sentence. */
  readonly explanation: string;
  /** Stands in the place of an empty list. */
  readonly whenEmpty: string;
}

/** The roles that have a work list. */
export type WorkRole = Exclude<Role, 'commissioner'>;
