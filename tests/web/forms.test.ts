import { describe, expect, it } from 'vitest';
import { readDate, typedDate } from '../../src/web/forms/date-entry.js';
import {
  numberOf,
  readForm,
  textOf,
  typedOf,
  wholeNumberOf,
  chosenOf,
} from '../../src/web/forms/form-values.js';
import { plainDate } from '../../src/domain/calendar/plain-date.js';

describe('a form that was sent', () => {
  const form = readForm({ name: '  Mavis\r\nSandwort ', sites: ['a', 'b'], passphrase: ' two  words ' });

  it('has texts trimmed, with line ends as the record keeps them', () => {
    expect(textOf(form, 'name')).toBe('Mavis\nSandwort');
    expect(textOf(form, 'absent')).toBe('');
  });

  it('has a passphrase exactly as it was typed', () => {
    expect(typedOf(form, 'passphrase')).toBe(' two  words ');
  });

  it('has every value of a name that is sent more than once', () => {
    expect(chosenOf(form, 'sites')).toEqual(['a', 'b']);
    expect(textOf(form, 'sites')).toBe('a');
  });

  it.each([undefined, null, 'text', 7, { a: 1 }, { a: { b: 'c' } }])('is empty when it is %s', (body) => {
    expect(readForm(body).size).toBe(0);
  });
});

describe('a number that was typed', () => {
  const whole = (text: string) => wholeNumberOf(readForm({ n: text }), 'n');
  const decimal = (text: string) => numberOf(readForm({ n: text }), 'n');

  it('is whole or none', () => {
    expect(['0', '12', ' 12 ', '1 020', '-3', '\u22123'].map(whole)).toEqual([0, 12, 12, 1020, -3, -3]);
    expect(['', '1.5', '0x10', '1e3', 'twelve', '--3', '1234567890'].map(whole)).toEqual(Array(7).fill(null));
  });

  it('may have decimals where they are asked for', () => {
    expect(['0', '47.5', '-0.5'].map(decimal)).toEqual([0, 47.5, -0.5]);
    expect(['', '.', '1,5', '5.', '1e3', 'NaN'].map(decimal)).toEqual(Array(6).fill(null));
  });
});

describe('a date that was typed in three parts', () => {
  it('is read with and without leading zeros', () => {
    expect(readDate({ day: '4', month: '05', year: '2026' })).toEqual({ kind: 'date', date: '2026-05-04' });
  });

  it('is nothing where all three are empty', () => {
    expect(readDate({ day: '', month: '', year: '' })).toEqual({ kind: 'empty' });
  });

  it.each([
    ['31', '4', '2026'],
    ['29', '2', '2026'],
    ['4', '5', '26'],
    ['4', '', '2026'],
    ['4', 'May', '2026'],
  ])('%s %s %s is none, and the message says what would be right', (day, month, year) => {
    expect(readDate({ day, month, year })).toMatchObject({ kind: 'no-date' });
  });

  it('can be edited as it was read', () => {
    expect(typedDate(plainDate('2026-05-04'))).toEqual({ day: '4', month: '5', year: '2026' });
    expect(typedDate(null)).toEqual({ day: '', month: '', year: '' });
  });
});
