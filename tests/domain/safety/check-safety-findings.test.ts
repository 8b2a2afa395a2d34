import { describe, expect, it } from 'vitest';
import { checkSafetyFindings } from '../../../src/domain/safety/check-safety-findings.js';
import { SAFETY_ITEMS } from '../../../src/domain/safety/conduct.js';
import { foundIn } from '../../support/assessment-entries.js';

describe('findings of the checklist', () => {
  it.each([
    ['none', [], []],
    ['a contraindication and a sign', ['unstable-angina', 'stop-chest-pain'], []],
    ['an item that does not exist', ['bad-mood'], ['unknown-finding /safetyFindings/0']],
    ['a name in other letters', ['Unstable-Angina'], ['unknown-finding /safetyFindings/0']],
    [
      'a rule, which cannot be found in a person',
      ['leg-thrombosis', 'two-tests-and-best'],
      ['not-a-finding /safetyFindings/1'],
    ],
    [
      'an item three times: each repetition is named',
      ['leg-thrombosis', 'leg-thrombosis', 'leg-thrombosis'],
      ['listed-twice /safetyFindings/1', 'listed-twice /safetyFindings/2'],
    ],
    [
      'everything that is wrong at once',
      ['bad-mood', 'leg-thrombosis', 'leg-thrombosis'],
      ['unknown-finding /safetyFindings/0', 'listed-twice /safetyFindings/2'],
    ],
  ])('%s', (_, ids, expected) => {
    expect(foundIn(checkSafetyFindings(ids, '/safetyFindings'))).toEqual(expected);
  });

  it('can be all twenty-six contraindications and all nine signs at once', () => {
    const ids = SAFETY_ITEMS.filter((item) => item.canBeFound).map((item) => item.id);
    expect(ids).toHaveLength(35);
    expect(foundIn(checkSafetyFindings(ids, '/safetyFindings'))).toEqual([]);
  });

  it('asks for no confirmation', () => {
    expect(checkSafetyFindings(['unstable-angina'], '/safetyFindings').queries).toEqual([]);
  });
});
