import { describe, expect, it } from 'vitest';
import { COLUMNS } from '../../../src/domain/imports/columns.js';
import { findHeading, repeatedHeadings } from '../../../src/domain/imports/heading.js';
import { mapColumns, NO_CHOICES, recognise } from '../../../src/domain/imports/mapping.js';
import { readCode } from '../../../src/domain/imports/read-code.js';
import { MEASURES } from '../../../src/domain/measures/catalogue.js';
import { passedOver } from '../../../src/domain/imports/row-kind.js';

describe('a heading', () => {
  it.each([
    ['NHS No.', 'person.nhsNumber'],
    ['D.O.B.', 'person.bornOn'],
    ['Date of birth', 'person.bornOn'],
    ['Referral received', 'referral.receivedOn'],
    ['Baseline 6MWT (m)', 'baseline.walk.six-minute-walk.1'],
    ['Discharge 6MWT 2', 'discharge.walk.six-minute-walk.2'],
    ['Initial ISWT', 'baseline.walk.incremental-shuttle-walk.1'],
    ['Final CAT', 'discharge.score.cat-total'],
    ['Baseline mMRC', 'baseline.score.mmrc-dyspnoea'],
    ['Baseline: CAT in points', 'baseline.score.cat-total'],
    ['discharge.score.cat-total', 'discharge.score.cat-total'],
    ['MRC', null],
    ['Baseline MRC', null],
    ['Shoe size', null],
    ['', null],
  ])('%s is %s', (heading, expected) => {
    expect(recognise(heading)).toBe(expected);
  });

  it('is known for every column by its id and its label', () => {
    for (const { id, label } of COLUMNS) {
      expect(recognise(id), id).toBe(id);
      // The grade of the label says which scale it is; "MRC" with its limits is no question either.
      if (!/mrc-dyspnoea/.test(id)) expect(recognise(label), label).toBe(id);
    }
  });

  it('stands below titles and under the names of groups', () => {
    const rows = [
      { number: 1, cells: ['Register of the year'] },
      { number: 3, cells: [null, null, 'Baseline', null, 'Discharge', null] },
      { number: 4, cells: ['NHS number', 'DOB', 'CAT', '6MWT', 'CAT', '6MWT'] },
      { number: 5, cells: ['9990001006', '31/03/1950', '22', '280', '18', '325'] },
    ];
    const heading = findHeading(rows);
    expect(heading?.rowNumber).toBe(4);
    expect(heading?.names.map(recognise)).toEqual([
      'person.nhsNumber',
      'person.bornOn',
      'baseline.score.cat-total',
      'baseline.walk.six-minute-walk.1',
      'discharge.score.cat-total',
      'discharge.walk.six-minute-walk.1',
    ]);
  });

  it('that stands over two columns is told', () => {
    expect(repeatedHeadings(['Surname', 'DOB', 'surname ', ''])).toEqual(['Surname']);
    expect(repeatedHeadings(['Surname', 'DOB', '', ''])).toEqual([]);
  });

  it('may be given another meaning by hand, or none', () => {
    const { columns } = mapColumns(['Surname', 'DOB'], {
      ...NO_CHOICES,
      columns: { Surname: 'person.wholeName', DOB: null },
    });
    expect(columns.map(({ column }) => column?.id ?? null)).toEqual(['person.wholeName', null]);
  });
});

describe('a row that holds no record', () => {
  const names = ['NHS number', 'Surname', 'CAT'];

  it('is passed over for a reason', () => {
    expect(passedOver({ number: 9, cells: [null, ' ', ''] }, names, [0])).toBe('blank');
    expect(passedOver({ number: 9, cells: ['NHS number', 'Surname', 'CAT'] }, names, [0])).toBe('headings');
    expect(passedOver({ number: 9, cells: ['Total', null, '412'] }, names, [0])).toBe('total');
    expect(passedOver({ number: 9, cells: [null, 'Mean', '19.5'] }, names, [0])).toBe('total');
  });

  it('is told from one of somebody with such a name', () => {
    expect(passedOver({ number: 9, cells: ['9990001006', 'Sum', '22'] }, names, [0])).toBeNull();
  });
});

describe('the words of a code', () => {
  it('are each read as that code', () => {
    for (const { id, kind } of COLUMNS) {
      if (kind.type !== 'code') continue;
      for (const [code, words] of Object.entries(kind.codes))
        for (const word of [code, ...words])
          expect(readCode(word, kind.codes), `${id}: ${word}`).toEqual({ kind: 'value', value: code });
    }
  });

  it('name every measure of the long form by its short name, as it is printed', () => {
    const column = COLUMNS.find(({ id }) => id === 'long.measure');
    if (column?.kind.type !== 'code') throw new Error('There is no column of measures.');
    for (const { id, shortName, name } of MEASURES) {
      expect(readCode(shortName, column.kind.codes), shortName).toEqual({ kind: 'value', value: id });
      expect(readCode(name, column.kind.codes), name).toEqual({ kind: 'value', value: id });
    }
  });
});
