import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Stage } from '../../domain/pathway/stage.js';
import type { Diagnosis, SessionMode } from '../../domain/referral/closed-sets.js';
import type { StartStep } from '../../domain/work-list/rules/start-due.js';
import type { ReferralWorkGroupId, WorkGroup, WorkGroupId } from '../../domain/work-list/work-list.js';
import type { NamedAccount } from '../../storage/work-list/last-clinicians.js';

/** What is due, and how late. */
export interface WorkList {
  readonly asAt: PlainDate;
  /** Open referrals that the filters let through. */
  readonly openReferrals: number;
  /** Those of them for which nothing is due. */
  readonly quietReferrals: number;
  /** In the order in which the role works through them; a group with nothing in it stays. */
  readonly groups: readonly WorkListGroup[];
  /** Who last worked with the people of any open referral, by name: what the list can be narrowed to. */
  readonly clinicians: readonly NamedAccount[];
}

export interface WorkListGroup extends WorkGroup {
  readonly group: WorkGroupId;
  readonly count: number;
  /** Those of them due before today. */
  readonly late: number;
  /** The oldest first, as many as were asked for. */
  readonly entries: readonly WorkListEntry[];
  /** How many follow those shown. */
  readonly more: number;
}

export type WorkListEntry = ReferralEntry | ClassEntry;

interface EntryBase {
  /** Id of the referral or of the session: once in each group. */
  readonly id: string;
  readonly siteId: string;
  readonly reason: string;
  readonly dueOn: PlainDate;
  /** Days since the due day; 0 today, negative for days still left. */
  readonly daysLate: number;
}

/** Something due for one person. */
export interface ReferralEntry extends EntryBase {
  readonly kind: 'referral';
  readonly group: ReferralWorkGroupId;
  readonly patientId: string;
  readonly familyName: string;
  readonly givenName: string;
  readonly diagnosis: Diagnosis;
  readonly stage: Stage;
  /** What is next for somebody who awaits the start; null at every other stage. */
  readonly startStep: StartStep | null;
  readonly clinician: NamedAccount | null;
}

/** A class or contact with nobody on its register. */
export interface ClassEntry extends EntryBase {
  readonly kind: 'class';
  readonly group: 'classes';
  readonly mode: SessionMode;
  readonly isSupervised: boolean;
}
