/** Is told how many of how many are done. */
export type Progress = (done: number, of: number) => void;

/** A piece of work that takes long enough to be watched. */
export interface LongWork<Result> {
  readonly result: Promise<Result>;
  readonly progress: () => { readonly done: number; readonly of: number };
  /** The result once there is one; null before, and where the work failed. */
  readonly ended: () => Result | null;
  readonly hasEnded: () => boolean;
  readonly hasFailed: () => boolean;
}

/** Begins a piece of work; whether it fails is told to those only who wait for its result. */
export function beginWork<Result>(
  work: (progress: Progress) => Promise<Result>,
  listener: Progress = () => {},
): LongWork<Result> {
  let state = { done: 0, of: 0 };
  let [ended, hasEnded, hasFailed]: [Result | null, boolean, boolean] = [null, false, false];
  const result = work((done, of) => {
    state = { done, of };
    listener(done, of);
  });
  result
    .then(
      (value) => (ended = value),
      () => (hasFailed = true),
    )
    .finally(() => (hasEnded = true));
  return {
    result,
    progress: () => state,
    ended: () => ended,
    hasEnded: () => hasEnded,
    hasFailed: () => hasFailed,
  };
}

/** Time for which others are let wait at a time, in ms: too little to be noticed, beside what their own work takes. */
const SLICE_MS = 20;

/** Begins a slice of long work. @returns says whether its time is over: a slow machine does less in one */
export function sliceOfTime(): () => boolean {
  const endsAt = performance.now() + SLICE_MS;
  return () => performance.now() >= endsAt;
}

/** Lets whatever else waits in the process be done, before a long piece of work goes on. */
export async function roomForOthers(): Promise<void> {
  await new Promise<void>((resolve) => {
    setImmediate(resolve);
  });
}
