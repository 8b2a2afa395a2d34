import type { Assessment } from '../../domain/assessment/assessment.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Attendance } from '../../domain/pathway/programme.js';
import type { Stage } from '../../domain/pathway/stage.js';
import type { Patient } from '../../domain/patient/patient.js';
import type { Referral } from '../../domain/referral/referral.js';
import type { Session } from '../../domain/session/session.js';

/** Everything of one person's course that a bundle tells, as it stood on a day. */
export interface CourseToSend {
  readonly patient: Patient;
  readonly referral: Referral;
  readonly stage: Stage;
  readonly asAt: PlainDate;
  /** UTC. */
  readonly writtenAt: string;
  readonly teamName: string;
  readonly siteNames: ReadonlyMap<string, string>;
  readonly commissionerNames: ReadonlyMap<string, string>;
  /** Those that stand, earliest first. */
  readonly assessments: readonly Assessment[];
  /** Sessions attended, earliest first; those known by their counts only are in `attendance` alone. */
  readonly sessions: readonly Session[];
  /** Supervised sessions by what became of them. */
  readonly attendance: Attendance;
}
