import type { NewAuditEvent } from '../../domain/audit/audit-event.js';
import type { Actor, Context } from '../context.js';
import { notWritable } from '../not-writable.js';
import { recordEvent } from './record-event.js';

/** A reading that could not be told to the trail when it happened. */
export interface UntoldRead {
  readonly occurredAt: string;
  readonly actor: Actor;
  readonly event: NewAuditEvent;
}

/**
 * Readings that wait for the trail while the record cannot be written.
 *
 * A clinic must be able to read when a disk is full. So such a reading is kept here with its own time, and stands in the
 * log as ids, until the record can be written again; where no more can be kept, reading is refused as well.
 */
export interface UntoldReads {
  /** False when there is no room: the reading may not take place. */
  readonly keep: (read: UntoldRead) => boolean;
  readonly isEmpty: () => boolean;
  /** Hands over what waits, once at a time; it is forgotten when it has been told. */
  readonly tell: (append: (reads: readonly UntoldRead[]) => Promise<void>) => Promise<void>;
  /** Is called with each reading that is kept. */
  readonly listen: (listener: (read: UntoldRead) => void) => void;
}

/** Readings kept at most; each takes up to a few kilobytes of memory. */
const MOST_KEPT = 2000;

/** An empty store of readings. @param mostKept readings kept at most */
export function createUntoldReads(mostKept = MOST_KEPT): UntoldReads {
  const reads: UntoldRead[] = [];
  const listeners: ((read: UntoldRead) => void)[] = [];
  let telling: Promise<void> | null = null;
  return {
    keep: (read) => {
      if (reads.length >= mostKept) return false;
      reads.push(read);
      for (const listener of listeners) listener(read);
      return true;
    },
    isEmpty: () => reads.length === 0,
    tell: (append) => {
      const tellAll = async (): Promise<void> => {
        const batch = [...reads];
        await append(batch);
        reads.splice(0, batch.length);
      };
      telling ??= tellAll().finally(() => (telling = null));
      return telling;
    },
    listen: (listener) => {
      listeners.push(listener);
    },
  };
}

/**
 * Tells the trail of the readings that wait, each with its own time and in their order. Called before anything else is
 * written.
 *
 * @returns false while the record still cannot be written
 */
export async function tellUntoldReads(context: Context): Promise<boolean> {
  if (context.untold.isEmpty()) return true;
  try {
    await context.untold.tell((reads) =>
      context.db.transaction().execute(async (trx) => {
        for (const { occurredAt, actor, event } of reads) {
          const then = { ...context, clock: { ...context.clock, now: () => occurredAt } };
          await recordEvent(then, trx, actor, event);
        }
      }),
    );
    return true;
  } catch (error) {
    if (notWritable(error) === null) throw error;
    return false;
  }
}
