// Source: Holland AE and others 2015, Breathe 11:128, educational summary of the ERS/ATS standard; key points READ.
// Two tests of the 6MWT and the ISWT when change is measured, the best recorded (also in the abstract of the standard);
// encouragement, oxygen, layout and length of the course, and wheeled walkers are to be held constant.
// The other items of the list are checked with their own sources; here stands its whole order.
import { describe, expect, it } from 'vitest';
import { findSafetyItem } from '../../src/domain/safety/conduct.js';
import { publishedSafetyItem, publishedSafetyList } from '../support/published-safety.js';

const KEY_POINT = {
  list: 'conduct-of-tests',
  strength: null,
  canBeFound: false,
  citationId: 'holland-2015-breathe',
  status: 'retrieved',
  doi: null,
} as const;

describe('Holland AE and others 2015, Breathe 11', () => {
  publishedSafetyItem('two-tests-and-best', {
    ...KEY_POINT,
    says: ['6MWT', 'ISWT', 'twice', 'change will be measured', 'better'],
  });
  publishedSafetyItem('hold-course', { ...KEY_POINT, says: ['layout', 'length'] });
  publishedSafetyItem('hold-encouragement', { ...KEY_POINT, says: ['encouragement'] });
  publishedSafetyItem('hold-oxygen', { ...KEY_POINT, says: ['oxygen', 'device', 'flow'] });
  publishedSafetyItem('hold-walking-aid', { ...KEY_POINT, says: ['walking aid'] });

  it('names the abstract of the standard beside the two-test rule', () => {
    expect(findSafetyItem('two-tests-and-best')?.furtherSources).toEqual([
      expect.objectContaining({ id: 'holland-2014-abstract', status: 'retrieved' }),
    ]);
  });

  publishedSafetyList('conduct-of-tests', [
    'two-tests-and-best',
    'learning-effect-six-minute-walk',
    'learning-effect-incremental-shuttle-walk',
    'learning-effect-bronchiectasis',
    'rest-between-tests',
    'rest-until-settled',
    'endurance-walk-after-incremental',
    'endurance-walk-without-practice',
    'hold-course',
    'hold-encouragement',
    'hold-oxygen',
    'hold-walking-aid',
    'six-minute-walk-course',
    'shuttle-walk-course',
    'incremental-shuttle-walk-first-level',
    'endurance-shuttle-walk-speeds',
  ]);
});
