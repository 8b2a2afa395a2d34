import { describe, expect, it } from 'vitest';
import { equationsFor, findEquation, findNorm, normsFor } from '../../../src/domain/prediction/catalogue.js';

describe('finding equations and norms', () => {
  it('finds by id, and nothing for an id that is not there', () => {
    expect(findEquation('probst-2012')?.measureId).toBe('incremental-shuttle-walk-distance');
    expect(findEquation('probst')).toBeNull();
    expect(findNorm('strassmann-2013')?.measureId).toBe('one-minute-sit-to-stand');
    expect(findNorm('')).toBeNull();
  });

  it('lists by measure', () => {
    expect(equationsFor('incremental-shuttle-walk-distance').map((equation) => equation.id)).toEqual([
      'dourado-2013',
      'itaki-2018',
      'jurgensen-2011',
      'probst-2012',
    ]);
    expect(equationsFor('six-minute-walk-distance')).toHaveLength(15);
    expect(equationsFor('one-minute-sit-to-stand')).toHaveLength(1);
    expect(equationsFor('incremental-shuttle-walk-15-level-distance')).toEqual([]);
    expect(normsFor('thirty-second-sit-to-stand').map((norm) => norm.id)).toEqual([
      'rikli-jones-1999-chair-stand',
      'steadi-30-second-chair-stand',
    ]);
  });
});
