/** What the tests use of a library that has no types of its own. */
declare module 'jstat' {
  interface Distribution<Parameters extends readonly number[]> {
    readonly inv: (probability: number, ...parameters: Parameters) => number;
    readonly cdf: (value: number, ...parameters: Parameters) => number;
  }
  interface Statistics {
    readonly studentt: Distribution<[degreesOfFreedom: number]>;
    readonly normal: Distribution<[mean: number, sd: number]>;
    readonly beta: Distribution<[alpha: number, beta: number]>;
    readonly binomial: { readonly cdf: (value: number, count: number, probability: number) => number };
    readonly mean: (values: readonly number[]) => number;
    readonly stdev: (values: readonly number[], isSample: boolean) => number;
    readonly quantiles: (
      values: readonly number[],
      shares: readonly number[],
      alpha: number,
      beta: number,
    ) => readonly number[];
    readonly median: (values: readonly number[]) => number;
    /** Of a mean at a level of 1 less alpha. */
    readonly tci: (value: number, alpha: number, values: readonly number[]) => readonly [number, number];
  }
  export const jStat: Statistics;
}
