import { secondsBetween } from '../../domain/calendar/instant.js';
import type { Context } from '../../usecases/context.js';

/** What was typed to find somebody, kept in memory so that it stands in no address. */
export interface KeptSearch {
  readonly typed: string;
  readonly accountId: string;
  readonly at: string;
}

const KEPT_S = 30 * 60;
const MOST_KEPT = 2000;

/** Searches by the id that their address holds; they are forgotten after half an hour. */
export interface KeptSearches {
  /** Keeps what was typed. @returns the id by which it is found */
  readonly keep: (accountId: string, typed: string) => string;
  /** What was typed; null where it was somebody else's, or is forgotten. */
  readonly find: (accountId: string, id: string) => string | null;
}

/** Keeps searches of a running service; a restart forgets them. */
export function keptSearches({ clock, newId }: Pick<Context, 'clock' | 'newId'>): KeptSearches {
  const kept = new Map<string, KeptSearch>();
  const isOver = ({ at }: KeptSearch): boolean => secondsBetween(at, clock.now()) > KEPT_S;
  const forget = (): void => {
    // The oldest come first.
    for (const [id, search] of kept) {
      if (!isOver(search) && kept.size < MOST_KEPT) return;
      kept.delete(id);
    }
  };
  return {
    keep: (accountId, typed) => {
      forget();
      const id = newId();
      kept.set(id, { typed, accountId, at: clock.now() });
      return id;
    },
    find: (accountId, id) => {
      const search = kept.get(id);
      return search === undefined || search.accountId !== accountId || isOver(search) ? null : search.typed;
    },
  };
}
