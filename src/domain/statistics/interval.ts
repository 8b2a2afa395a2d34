/** A 95 % confidence interval, both ends included, in the unit of the figure it belongs to. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}
