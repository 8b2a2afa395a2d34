/** How the fields of a record and what they held are read. */
export interface RecordWords {
  readonly field: (field: string) => string;
  readonly value: (field: string, value: unknown) => string;
}

/** A field of the record as words. @example fieldWords('plannedSessions') -> 'Planned sessions' */
export function fieldWords(field: string): string {
  const words = field
    .replaceAll(/([a-z0-9])([A-Z])/g, '$1 $2')
    .replaceAll(/[-_./]+/g, ' ')
    .toLowerCase();
  return words.charAt(0).toUpperCase() + words.slice(1);
}

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
