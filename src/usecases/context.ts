import type { PlainDate } from '../domain/calendar/plain-date.js';
import type { UnchainedEvent } from '../storage/audit/audit-trail.js';
import type { Executor } from '../storage/connection.js';
import type { Role } from '../domain/account/role.js';
import type { RequestKey } from '../storage/request-keys/request-keys.js';
import type { UntoldReads } from './audit/untold-reads.js';
import type { Trials } from './imports/trials.js';
import type { ReleaseMaker } from './releases/release-maker.js';
import type { ReportMaker } from './reports/report-maker.js';

/** Where the program learns the time. */
export interface Clock {
  /** This instant, UTC ISO text. */
  readonly now: () => string;
  /** The calendar date in London. */
  readonly today: () => PlainDate;
}

/** What every use case works with. */
export interface Context {
  readonly db: Executor;
  /** Reads on a connection of their own, so that a long report does not hold up a write. */
  readonly reader: Executor;
  /** Makes reports, each from the record as it stands at one moment. */
  readonly reports: ReportMaker;
  /** Makes releases, each from the record as it stands at one moment. */
  readonly releases: ReleaseMaker;
  readonly clock: Clock;
  /** A new id that sorts by the time at which it was made. */
  readonly newId: () => string;
  /** Readings that wait for the trail while the record cannot be written. */
  readonly untold: UntoldReads;
  /** Sheets that were judged, or are being, on their way into the record. */
  readonly trials: Trials;
  /** Takes what would be told to the trail, where what happens is only tried. */
  readonly tellInstead?: (event: UnchainedEvent) => void;
}

/** A person or program of a team who is signed in. */
export interface TeamMember {
  readonly accountId: string;
  readonly role: Exclude<Role, 'commissioner'>;
  readonly teamId: string;
  /** Set where the request carries a key by which it may be sent again. */
  readonly requestKey?: RequestKey;
}

/** Somebody who pays, and sees nothing but what was released to them. */
export interface CommissionerReader {
  readonly accountId: string;
  readonly role: 'commissioner';
  readonly commissionerId: string;
  readonly requestKey?: RequestKey;
}

export type Actor = TeamMember | CommissionerReader;
