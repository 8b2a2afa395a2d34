import { findMeasure } from '../../domain/measures/catalogue.js';
import { capital } from './words.js';

/** How the fields of a record and what they held are read. */
export interface RecordWords {
  readonly field: (field: string) => string;
  readonly value: (field: string, value: unknown) => string;
  /** Whether a reader is told of the field at all; of each where it is left out. */
  readonly isTold?: (field: string) => boolean;
}

/**
 * A field of the record as words; that of a measure by its name.
 *
 * @example fieldWords('plannedSessions') -> 'Planned sessions'
 * @example fieldWords('restingSpo2Percent') -> 'Resting SpO2 percent'
 * @example fieldWords('scores.cat-total') -> 'COPD Assessment Test total'
 */
export function fieldWords(field: string): string {
  const measure = findMeasure(field.replace(/^scores\./, ''));
  if (measure !== undefined) return measure.name;
  const words = field
    .replaceAll(/([a-z0-9])([A-Z])/g, '$1 $2')
    .replaceAll(/[-_./]+/g, ' ')
    .toLowerCase();
  return capital(
    AS_WRITTEN.reduce(
      (text, [plain, written]) => text.replaceAll(new RegExp(`\\b${plain}\\b`, 'g'), written),
      words,
    ),
  );
}

/** What the trade writes with capitals of its own. */
const AS_WRITTEN = [
  ['spo2', 'SpO2'],
  ['fev1', 'FEV1'],
  ['fvc', 'FVC'],
  ['mm hg', 'mmHg'],
  ['nhs', 'NHS'],
  ['mrc', 'MRC'],
  ['gp', 'GP'],
] as const;

/** A value of the record as words. */
export function valueWords(value: unknown): string {
  if (value === null || value === undefined || value === '') return 'nothing';
  if (typeof value === 'string') return value;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return typeof value === 'number' ? String(value) : JSON.stringify(value);
}

/** Fields and values by their own words. */
export const PLAIN_WORDS: RecordWords = {
  field: fieldWords,
  value: (_field, value) => valueWords(value),
};
