import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, plainDate } from '../../../src/domain/calendar/plain-date.js';
import type { Cell } from '../../../src/domain/imports/cell.js';
import { readCode } from '../../../src/domain/imports/read-code.js';
import { orderOf, readDate } from '../../../src/domain/imports/read-date.js';
import { readNhsNumber } from '../../../src/domain/imports/read-nhs-number.js';
import { readNumber } from '../../../src/domain/imports/read-number.js';
import { readResult } from '../../../src/domain/imports/read-row.js';

const TODAY = plainDate('2026-11-26');

describe('a date in a cell', () => {
  const read = (cell: Cell): unknown => {
    const reading = readDate(cell, null, TODAY);
    return reading.kind === 'value' ? reading.value : reading.kind;
  };

  it.each([
    ['31/03/2026', '2026-03-31'],
    ['31-Mar-26', '2026-03-31'],
    ['31 March 2026', '2026-03-31'],
    ['Tue 31st March 2026', '2026-03-31'],
    ['31.03.2026', '2026-03-31'],
    ['2026-03-31', '2026-03-31'],
    ['31/03/2026 09:30', '2026-03-31'],
    ['31/03/26', '2026-03-31'],
    // Two figures of a year are the latest such year that is not after today's.
    ['31/03/48', '1948-03-31'],
    ['05/05/2026', '2026-05-05'],
    // Day 45382 of a spreadsheet is 31 March 2024: 1 January 2000 is day 36526 (common practice, no source).
    [45382, '2024-03-31'],
    ['36526', '2000-01-01'],
    [{ date: plainDate('2026-03-31') }, '2026-03-31'],
    ['', 'blank'],
    ['n/k', 'blank'],
    ['DNA', 'blank'],
    ['31/02/2026', 'wrong'],
    ['31/13/2026', 'wrong'],
    ['spring', 'wrong'],
    [true, 'wrong'],
    [12, 'wrong'],
  ] satisfies readonly (readonly [Cell, string])[])('%s is %s', (cell, expected) => {
    expect(read(cell)).toBe(expected);
  });

  it('whose order is open is never guessed', () => {
    expect(readDate('03/04/2026', null, TODAY).kind).toBe('wrong');
    expect(readDate('03/04/2026', 'day-first', TODAY)).toEqual({ kind: 'value', value: '2026-04-03' });
    expect(readDate('03/04/2026', 'month-first', TODAY)).toEqual({ kind: 'value', value: '2026-03-04' });
  });

  it('shares its order with the column', () => {
    expect(orderOf(['03/04/2026', '31/03/2026'])).toBe('day-first');
    expect(orderOf(['03/04/2026', '03/31/2026'])).toBe('month-first');
    expect(orderOf(['31/03/2026', '03/31/2026'])).toBe('mixed');
    expect(orderOf(['03/04/2026'])).toBe('either');
    expect(orderOf(['05/05/2026', '2026-04-03', 'n/k', null])).toBe('none');
  });

  it('comes back from every way of writing it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 36_000 }), (days) => {
        const date = addDays(plainDate('1920-01-01'), days);
        const [year = '', month = '', day = ''] = date.split('-');
        const written = [`${day}/${month}/${year}`, `${Number(day)}.${Number(month)}.${year}`, date];
        for (const text of written) {
          expect(readDate(text, 'day-first', TODAY)).toEqual({ kind: 'value', value: date });
        }
      }),
    );
  });
});

describe('a number in a cell', () => {
  const metres = (cell: Cell, isInFeet = false): unknown => {
    const reading = readNumber(cell, { unit: 'm', isInFeet });
    return reading.kind === 'value' ? reading.value : reading.kind;
  };

  it.each([
    ['6MWT 280m', 280],
    ['280 m', 280],
    ['280', 280],
    [280, 280],
    ['280.5 metres', 280.5],
    ['ISWT: 310', 310],
    ['>1000', 'wrong'],
    ['~300', 'wrong'],
    ['1,020', 'wrong'],
    ['72,5', 'wrong'],
    ['850 ft', 'wrong'],
    ['280 kg', 'wrong'],
    ['280 m with frame', 'wrong'],
    ['n/k', 'blank'],
    ['-', 'blank'],
    [true, 'wrong'],
  ] satisfies readonly (readonly [Cell, unknown])[])('%s is %s', (cell, expected) => {
    expect(metres(cell)).toBe(expected);
  });

  it('is in feet only where the column was named so', () => {
    // 1 foot is 0.3048 m exactly (NIST Handbook 44, Appendix C; from memory, check before use): 850 ft = 259.08 m.
    expect(metres('850 ft', true)).toBe(259);
    expect(metres('850', true)).toBe(259);
    expect(metres('259 m', true)).toBe(259);
  });

  it('of a test may be the reason why it was not done', () => {
    const form = { unit: 'm', isInFeet: false };
    expect(readResult('declined', form)).toEqual({ kind: 'value', value: { notDone: 'declined' } });
    expect(readResult('Refused', form)).toEqual({ kind: 'value', value: { notDone: 'declined' } });
    expect(readResult('not safe', form)).toEqual({ kind: 'value', value: { notDone: 'not-safe' } });
    expect(readResult('n/k', form)).toEqual({ kind: 'blank' });
    expect(readResult('0', form)).toEqual({ kind: 'value', value: 0 });
  });
});

describe('an NHS number in a cell', () => {
  it('is read with or without spaces, and refused where its digits are lost', () => {
    expect(readNhsNumber('999 000 1006')).toEqual({ kind: 'value', value: '9990001006' });
    expect(readNhsNumber(9990001006)).toEqual({ kind: 'value', value: '9990001006' });
    for (const lost of ['9.44E+09', '9.99e9', '1E+10']) expect(readNhsNumber(lost).kind).toBe('wrong');
  });
});

describe('a code in a cell', () => {
  const codes = { yes: ['y', '1'], no: ['n', '0'], 'not-known': [] };

  it.each([
    ['yes', 'yes'],
    ['Y', 'yes'],
    [1, 'yes'],
    [true, 'yes'],
    ['n', 'no'],
    ['n/k', 'not-known'],
    ['Not known', 'not-known'],
  ] satisfies readonly (readonly [Cell, string])[])('%s is %s', (cell, expected) => {
    expect(readCode(cell, codes)).toEqual({ kind: 'value', value: expected });
  });

  it('that is none of the set is refused with the set', () => {
    expect(readCode('maybe', codes)).toMatchObject({ message: '"maybe" is none of: yes, no, not-known.' });
    expect(readCode('DNA', codes).kind).toBe('wrong');
    expect(readCode('', codes).kind).toBe('blank');
  });
});
