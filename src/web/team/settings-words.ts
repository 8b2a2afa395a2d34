import type { Threshold } from '../../domain/measures/measure.js';
import { toNumber } from '../../domain/exact/fraction.js';
import type { Measure } from '../../domain/measures/measure.js';
import { evidenceMark } from '../../domain/evidence/citation.js';

/** A threshold as one chooses it. @example '48 m, COPD, Singh S 2008 (quoted in another paper)' */
export function thresholdWords(threshold: Threshold, unit: Measure['unit']): string {
  const { value, population, citation } = threshold;
  const size = value === null ? 'a range only' : `${toNumber(value)} ${unit}`;
  const mark = evidenceMark(citation.status);
  const source = citation.text.split(',')[0] ?? citation.text;
  return `${size}: ${population}, ${source}${mark === null ? '' : ` (${mark})`}`;
}
