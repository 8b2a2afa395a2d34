import { BLANK, cellText, saysNothing, value, wrong } from './cell.js';
import type { Cell, Reading } from './cell.js';

/** Units that may stand behind a number, by the unit that the record keeps. */
const UNIT_WORDS: Readonly<Record<string, readonly string[]>> = {
  m: ['m', 'metre', 'metres', 'meter', 'meters', 'mtr', 'mtrs'],
  s: ['s', 'sec', 'secs', 'second', 'seconds'],
  cm: ['cm', 'cms', 'centimetres'],
  kg: ['kg', 'kgs', 'kilograms'],
  L: ['l', 'litres', 'litre'],
  '%': ['%', 'percent', 'per cent'],
  'L/min': ['l', 'l/min', 'lpm', 'litres', 'litres/min'],
  'beats/min': ['bpm', 'beats/min', '/min'],
  mmHg: ['mmhg'],
  repetitions: ['reps', 'rep', 'repetitions', 'stands'],
  points: ['points', 'pts'],
};
const FEET = ['ft', 'feet', 'foot', "'"];
/** Names of tests that people write in front of a result (common practice, no source). */
const TEST_NAME =
  /^(?:6\s?mwt|6\s?mwd|2\s?mwt|iswt|iswd|eswt|1\s?msts|1\s?min\s?sts|30\s?s?\s?sts|5\s?x?\s?sts|cat|crq|mrc|mmrc|spo2|sats)\s*[:=-]?\s*/i;
/** International foot, exact (NIST Handbook 44, Appendix C: 1 foot = 0.3048 m). */
const METRES_PER_FOOT = 0.3048;

/** How the numbers of a column are to be read. */
export interface NumberForm {
  /** The unit that the record keeps; empty where it has none. */
  readonly unit: string;
  /** A person has said that the distances of the column are in feet. */
  readonly isInFeet: boolean;
}

/**
 * Reads a number with what people write around it.
 *
 * @returns a distance in feet comes back in metres, to the whole metre, and only where the column was named so
 * @example readNumber('6MWT 280m', { unit: 'm', isInFeet: false }) -> 280; readNumber('>1000', …) -> wrong
 */
export function readNumber(cell: Cell, { unit, isInFeet }: NumberForm): Reading<number> {
  if (saysNothing(cell)) return BLANK;
  if (typeof cell === 'number')
    return Number.isFinite(cell) ? value(inUnit(cell, isInFeet)) : wrong('This is no number.');
  if (typeof cell !== 'string') return wrong('This is no number.');
  const text = cell.trim().replace(TEST_NAME, '');
  if (/^[<>≥≤~≈]/.test(text))
    return wrong('A limit is no result. Give the number that was measured, or leave the cell empty.');
  const parts = /^(-?\d+(?:\.\d+)?)\s*(.*)$/.exec(text);
  if (parts === null || /^\.\d/.test(parts[2] ?? '')) return wrong('This is no number.');
  const [, figures = '', behind = ''] = parts;
  const word = behind.trim().toLowerCase().replace(/\.$/, '');
  if (/^,\d/.test(word))
    return wrong(
      'A comma in a number can mean two things. Write it with a point, and without a mark for thousands.',
    );
  if (FEET.includes(word)) {
    if (unit !== 'm' || !isInFeet)
      return wrong('This is in feet. Say for the column that its distances are in feet, or give metres.');
    return value(inUnit(Number(figures), true));
  }
  if (word !== '' && !(UNIT_WORDS[unit] ?? []).includes(word)) {
    return wrong(`"${cellText(cell)}" is more than a number${unit === '' ? '' : ` in ${unit}`}.`);
  }
  return value(inUnit(Number(figures), isInFeet && word === ''));
}

function inUnit(read: number, isInFeet: boolean): number {
  return isInFeet ? Math.round(read * METRES_PER_FOOT) : read;
}
