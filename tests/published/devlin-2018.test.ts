// Source: Devlin NJ and others 2018, Health Econ 27:7, abstract: value set for England from -0.285 to 1, next below full health
// 0.950 (11211 and 21111); 3125 profiles. The lowest value of the UK three-level set, -0.594, is read in its discussion paper.
// COMMON PRACTICE: check range of the index. Tolerance: none.
import { describe, expect, it } from 'vitest';
import { findMeasure, findQuestionnaire } from '../../src/domain/measures/catalogue.js';
import { eqProfile } from '../../src/domain/measures/eq-profile.js';
import { readFormScore } from '../../src/domain/measures/form-score.js';
import { publishedRange } from '../support/published.js';

describe('EQ-5D-5L index and its value sets', () => {
  publishedRange('eq-5d-5l-index', {
    min: -0.594,
    max: 1,
    step: 0.001,
    usual: [-0.3, 1],
    betterWhen: 'higher',
    status: 'retrieved',
  });

  it.each([
    ['england-2018', -0.285, 'read'],
    ['england-2018', -0.286, 'refused'],
    ['england-2018', 0.95, 'read'],
    ['england-2018', 0.951, 'refused'],
    ['england-2018', 0.999, 'refused'],
    ['england-2018', 1, 'read'],
    ['uk-3l-mapped', -0.594, 'read'],
    ['uk-3l-mapped', -0.595, 'refused'],
    ['uk-3l-mapped', 0.97, 'read'],
    ['uk-3l-mapped', 1, 'read'],
  ])('on %s an index of %s is %s', (form, value, kind) => {
    expect(readIndex(value, form).kind).toBe(kind);
  });

  it('keeps five levels as one of 3125 profiles', () => {
    expect(eqProfile([2, 1, 1, 1, 1])).toBe('21111');
    expect(eqProfile([2, 1, 1, null, 1])).toBeNull();
    expect(
      findQuestionnaire('eq-5d-5l')?.items.reduce((count, { min, max }) => count * (max - min + 1), 1),
    ).toBe(3125);
  });
});

function readIndex(value: number, form: string): ReturnType<typeof readFormScore> {
  const questionnaire = findQuestionnaire('eq-5d-5l');
  const index = findMeasure('eq-5d-5l-index');
  if (questionnaire === undefined || index === undefined) throw new Error('There is no EQ-5D-5L index');
  return readFormScore(questionnaire, index, value, form);
}
