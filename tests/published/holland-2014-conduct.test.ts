// Source: Holland AE and others 2014, Eur Respir J 44:1428, doi 10.1183/09031936.00150314, abstract and Table 7 (read).
// Two tests for the six-minute and the incremental shuttle walk; 10 m course for the shuttle walks.
// FROM MEMORY: one endurance test suffices. COMMON PRACTICE: courses of 10 to 50 m, usually 30 m (from memory).
import { describe, expect, it } from 'vitest';
import { findWalkTest } from '../../src/domain/measures/catalogue.js';

describe('conduct of the walk tests', () => {
  it.each([
    ['six-minute-walk', true],
    ['incremental-shuttle-walk', true],
    ['incremental-shuttle-walk-15-level', true],
    ['endurance-shuttle-walk', false],
    ['two-minute-walk', false],
  ])('%s asks for a practice walk: %s', (id, needsPracticeWalk) => {
    expect(findWalkTest(id)?.needsPracticeWalk).toBe(needsPracticeWalk);
  });

  it.each([
    ['six-minute-walk', { min: 10, max: 50, usual: 30 }],
    ['two-minute-walk', { min: 10, max: 50, usual: 30 }],
    ['incremental-shuttle-walk', { min: 10, max: 10, usual: 10 }],
    ['incremental-shuttle-walk-15-level', { min: 10, max: 10, usual: 10 }],
    ['endurance-shuttle-walk', { min: 10, max: 10, usual: 10 }],
  ])('%s is walked on its course', (id, courseLengthM) => {
    expect(findWalkTest(id)?.courseLengthM).toEqual(courseLengthM);
  });
});
