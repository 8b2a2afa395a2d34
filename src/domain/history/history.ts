import { changesBetween } from './field-change.js';
import type { FieldChange } from './field-change.js';

/** Somebody of the team, as the history names them. */
export interface Author {
  readonly accountId: string;
  readonly name: string;
}

/** How a version of a record came to be. */
export interface VersionOrigin {
  readonly version: number;
  /** UTC. */
  readonly changedAt: string;
  /** Null for a first version from before its author was kept. */
  readonly changedBy: Author | null;
  /** Null for the first version. */
  readonly reason: string | null;
}

/** A version of a record with what it held. */
export interface VersionState extends VersionOrigin {
  readonly state: object;
}

/** A version of a record with what changed from the one before; all that the first one held is a change. */
export interface HistoryEntry extends VersionOrigin {
  readonly changes: readonly FieldChange[];
}

/** What became of a record since the version that somebody has before their eyes. */
export interface Meanwhile {
  /** The version that the record now has. */
  readonly version: number;
  /** Each version since, earliest first. */
  readonly versions: readonly VersionOrigin[];
  /** What differs between the version they have and the present one. */
  readonly changes: readonly FieldChange[];
}

/**
 * The history of a record, first version first.
 *
 * @param states every version in order
 * @example two versions of { a: 1 } and { a: 2 } -> [a: null to 1], [a: 1 to 2]
 */
export function historyOf(states: readonly VersionState[]): readonly HistoryEntry[] {
  return states.map((present, index) => ({
    ...originOf(present),
    changes: changesBetween(states[index - 1]?.state ?? {}, present.state),
  }));
}

/**
 * What changed in a record since a version of it.
 *
 * @param states every version in order, the present one last
 * @param since the version somebody has; one that the record never had differs from nothing that could be told
 */
export function meanwhileSince(states: readonly VersionState[], since: number): Meanwhile {
  const present = states.at(-1);
  const former = states.find((each) => each.version === since);
  return {
    version: present?.version ?? 0,
    versions: former === undefined ? [] : states.filter((each) => each.version > since).map(originOf),
    changes: present === undefined || former === undefined ? [] : changesBetween(former.state, present.state),
  };
}

function originOf({ version, changedAt, changedBy, reason }: VersionOrigin): VersionOrigin {
  return { version, changedAt, changedBy, reason };
}
