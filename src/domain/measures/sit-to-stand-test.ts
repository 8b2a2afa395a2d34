import type { Measure } from './measure.js';

/** A sit-to-stand test: repetitions in a fixed time, or time for fixed repetitions. */
export interface SitToStandTest {
  /** Stable id, kebab-case, such as `one-minute-sit-to-stand`. */
  readonly id: string;
  readonly name: string;
  readonly shortName: string;
  readonly records: 'repetitions' | 'seconds';
  readonly measure: Measure;
}
