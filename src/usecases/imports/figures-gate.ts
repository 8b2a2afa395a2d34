import { turnsByName } from '../requests/turns.js';

/** Keeps figures of a team and the bringing in of a large sheet of it apart: nobody counts half a sheet. */
export interface FiguresGate {
  /**
   * Lets somebody read figures of a team.
   *
   * @returns to be called once they are read; null while a sheet is being brought in
   */
  readonly enter: (teamId: string) => (() => void) | null;
  /** Lets nobody in any more, and waits until those who read figures have read them. */
  readonly close: (teamId: string) => Promise<ClosedGate>;
}

/** A gate that somebody has closed. */
export interface ClosedGate {
  readonly open: () => void;
  /** Leaves it shut until somebody else has closed and opened it. */
  readonly leaveShut: () => void;
}

/** A gate that is open for every team. */
export function createFiguresGate(): FiguresGate {
  const nextTurn = turnsByName();
  const closed = new Set<string>();
  const readers = new Map<string, number>();
  const waiting = new Map<string, () => void>();
  const leave = (teamId: string): void => {
    const left = (readers.get(teamId) ?? 1) - 1;
    readers.set(teamId, left);
    if (left === 0) waiting.get(teamId)?.();
  };
  return {
    enter: (teamId) => {
      if (closed.has(teamId)) return null;
      readers.set(teamId, (readers.get(teamId) ?? 0) + 1);
      let isIn = true;
      return () => {
        if (isIn) leave(teamId);
        isIn = false;
      };
    },
    close: async (teamId) => {
      const pass = await nextTurn(teamId);
      closed.add(teamId);
      if ((readers.get(teamId) ?? 0) > 0)
        await new Promise<void>((resolve) => {
          waiting.set(teamId, resolve);
        });
      waiting.delete(teamId);
      return {
        open: () => {
          closed.delete(teamId);
          pass();
        },
        leaveShut: pass,
      };
    },
  };
}
