import { extname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Piscina } from 'piscina';
import type { MakerCall, MakerThreadData, ThreadMaker } from './maker-thread.js';
import { threadArguments } from './thread-arguments.js';

/** Threads in which reports and releases are made. */
export interface MakerThreads extends ThreadMaker {
  /** Ends the threads; whoever still waits for what they make learns that there is none. */
  readonly close: () => Promise<void>;
}

/** One more than one, so that a short report need not wait for the pages of a long one. */
const MOST_THREADS = 2;

/**
 * Makes reports and releases in threads of their own, each with its own connection that only reads: whoever asks the
 * service for something else meanwhile is answered as if nothing were made.
 *
 * @param file path of the record's file; it is there, at the newest schema
 */
export function startMakerThreads(file: string): MakerThreads {
  const workerData: MakerThreadData = { file };
  const execArgv = threadArguments();
  const pool = new Piscina<MakerCall, unknown>({
    // As the program itself runs: compiled, or by a loader that understands types.
    filename: fileURLToPath(new URL(`maker-thread${extname(import.meta.url)}`, import.meta.url)),
    name: 'answer',
    workerData,
    ...(execArgv === undefined ? {} : { execArgv }),
    // None until the first report: a service is up sooner.
    minThreads: 0,
    maxThreads: MOST_THREADS,
    idleTimeout: IDLE_MS,
    niceIncrement: NICENESS,
    resourceLimits: { maxYoungGenerationSizeMb: YOUNG_MB },
  });
  const call = async <Method extends keyof ThreadMaker>(
    method: Method,
    args: Parameters<ThreadMaker[Method]>,
  ): Promise<Awaited<ReturnType<ThreadMaker[Method]>>> =>
    (await pool.run({ method, args } as MakerCall)) as Awaited<ReturnType<ThreadMaker[Method]>>;
  return {
    report: (...args) => call('report', args),
    file: (...args) => call('file', args),
    figure: (...args) => call('figure', args),
    draft: (...args) => call('draft', args),
    forms: (...args) => call('forms', args),
    close: () => pool.destroy(),
  };
}

/** Where processors are short, whoever waits at a page goes first; the priority of processes on Unix, else without effect. */
const NICENESS = 5;

/** A thread goes after so long without work; the next one has its program to load first, some tenths of a second. */
const IDLE_MS = 30 * 60_000;

/** Room for the rows of a report, which are soon done with: three times what a half of it holds. */
const YOUNG_MB = 192;
