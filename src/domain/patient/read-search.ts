import { parsePlainDate } from '../calendar/plain-date.js';
import type { PlainDate } from '../calendar/plain-date.js';

/** What somebody is looked for by; a part that is null does not narrow. */
export interface PersonSearch {
  readonly nhsNumber: string | null;
  /** Start of the family name. */
  readonly familyName: string | null;
  /** Start of the given name. */
  readonly givenName: string | null;
  readonly bornOn: PlainDate | null;
}

const NOTHING: PersonSearch = { nhsNumber: null, familyName: null, givenName: null, bornOn: null };

/**
 * What is meant by a line that somebody typed to find a person: an NHS number, a date of birth, or a name.
 *
 * @param text ten digits with or without spaces; day, month and year in figures; `family`, `family, given` or `given family`
 * @returns what it may mean, the likeliest first; a name of several words may be a family name or both names
 * @example readSearch('9 3 1954') -> born on 1954-03-09; readSearch('Mavis Sand') -> family 'Mavis Sand', or given 'Mavis', family 'Sand'
 */
export function readSearch(text: string): readonly PersonSearch[] {
  const typed = text.trim().replaceAll(/\s+/g, ' ');
  if (typed === '') return [];
  if (/^\d[\d -]{8,}$/.test(typed) && typed.replaceAll(/\D/g, '').length === 10) {
    return [{ ...NOTHING, nhsNumber: typed }];
  }
  const bornOn = readBirthday(typed);
  if (bornOn !== null) return [{ ...NOTHING, bornOn }];
  const [family = '', given] = typed.split(/\s*,\s*/, 2);
  if (given !== undefined) {
    return [{ ...NOTHING, familyName: textOrNull(family), givenName: textOrNull(given) }].filter(hasName);
  }
  const space = typed.lastIndexOf(' ');
  const whole = { ...NOTHING, familyName: typed };
  if (space === -1) return [whole];
  return [whole, { ...NOTHING, familyName: typed.slice(space + 1), givenName: typed.slice(0, space) }];
}

function readBirthday(text: string): PlainDate | null {
  const british = /^(\d{1,2})[ ./-](\d{1,2})[ ./-](\d{4})$/.exec(text);
  if (british === null) return parsePlainDate(text);
  const [, day = '', month = '', year = ''] = british;
  return parsePlainDate(`${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`);
}

function hasName({ familyName, givenName }: PersonSearch): boolean {
  return familyName !== null || givenName !== null;
}

function textOrNull(text: string): string | null {
  return text === '' ? null : text;
}
