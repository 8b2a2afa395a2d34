import type { Outcome } from '../../domain/refusal/refusal.js';
import { readTableFile } from '../../sheets/read-table-file.js';
import type { TableReader } from '../../sheets/read-table-file.js';
import type { Spool } from '../../storage/spool.js';
import { createFiguresGate } from './figures-gate.js';
import type { FiguresGate } from './figures-gate.js';
import type { LongWork } from './long-work.js';
import type { ColumnsOfSheet } from './open-sheet.js';
import type { Trial } from './trial.js';

/** A sheet that was opened and, where nothing is to be asked first, tried. */
export interface TriedSheet {
  readonly columns: ColumnsOfSheet;
  /** Null while a question is open. */
  readonly trial: Trial | null;
}

/** What is being done with an import of one version, or was. */
export interface ImportWork {
  readonly version: number;
  /** Null where the file is not kept any more. */
  readonly judging: LongWork<TriedSheet | null>;
  /** Null until its rows are brought in. */
  bringingIn: LongWork<Outcome<null>> | null;
}

/**
 * The imports that are worked on, and the trials of those last looked at: kept in memory, since they can be made again from
 * the file, and say nothing once the program has ended.
 */
export interface Trials {
  readonly newSpool: () => Spool;
  /** Reads the files that are handed in. */
  readonly readTable: TableReader;
  readonly of: (importId: string, version: number) => ImportWork | null;
  readonly keep: (importId: string, work: ImportWork) => void;
  readonly drop: (importId: string) => void;
  /** Shut while a sheet of a team is half in. */
  readonly figuresGate: FiguresGate;
}

/** Trials kept at most: each has a file open. */
const MOST_KEPT = 8;

/** An empty store of trials. */
export function createTrials(newSpool: () => Spool, readTable: TableReader = readTableFile): Trials {
  const kept = new Map<string, ImportWork>();
  const drop = (importId: string): void => {
    const work = kept.get(importId);
    kept.delete(importId);
    // Whoever is being brought in still reads what was put by.
    void work?.bringingIn?.result.catch(() => {}).then(() => close(work));
    if (work !== undefined && work.bringingIn === null) close(work);
  };
  return {
    newSpool,
    readTable,
    of: (importId, version) => {
      const work = kept.get(importId);
      return work?.version === version ? work : null;
    },
    keep: (importId, work) => {
      drop(importId);
      kept.set(importId, work);
      const [oldest] = kept.keys();
      if (kept.size > MOST_KEPT && oldest !== undefined) drop(oldest);
    },
    drop,
    figuresGate: createFiguresGate(),
  };
}

function close({ judging }: ImportWork): void {
  void judging.result.then(
    (tried) => tried?.trial?.close(),
    () => {},
  );
}
