import { describe, expect, it } from 'vitest';
import { fraction } from '../../../src/domain/exact/fraction.js';
import { findPhysicalTest } from '../../../src/domain/measures/catalogue.js';
import { conditionDifferences } from '../../../src/domain/measures/condition-differences.js';
import type { PhysicalTest } from '../../../src/domain/measures/physical-test.js';
import { scorePhysicalTest } from '../../../src/domain/measures/score-parts.js';

describe('gait speed from a time', () => {
  it.each([
    [4, fraction(1)],
    // 4 m in 3.6 s is 10/9 m/s, kept exact.
    [3.6, fraction(10, 9)],
  ])('4 m in %s s', (seconds, value) => {
    expect(scorePhysicalTest(test('four-metre-gait-speed'), { 'four-metre-walk': seconds })).toMatchObject({
      kind: 'scored',
      scores: [{ kind: 'scored', measureId: 'four-metre-gait-speed', value }],
    });
  });

  it('has no speed for somebody unable to walk, and says so', () => {
    expect(scorePhysicalTest(test('four-metre-gait-speed'), { 'four-metre-walk': 'unable' })).toMatchObject({
      scores: [{ kind: 'not-scored', reason: 'Unable to walk 4 m: a result, and no speed' }],
    });
  });

  it('has no speed when the walk was not timed', () => {
    expect(scorePhysicalTest(test('four-metre-gait-speed'), {})).toMatchObject({
      scores: [{ kind: 'not-scored', reason: 'The walk was not timed' }],
    });
  });
});

describe('parts of a physical test', () => {
  it.each([0, 1.33, 300.01, 4.005, -4, Number.NaN, Number.POSITIVE_INFINITY, 1e-7, 1e21])(
    'are refused at %s s for a walk of 4 m',
    (seconds) => {
      expect(scorePhysicalTest(test('four-metre-gait-speed'), { 'four-metre-walk': seconds })).toMatchObject({
        kind: 'refused',
        faults: [{ pointer: '/four-metre-walk', code: 'part-out-of-range' }],
      });
    },
  );

  it('are refused when unknown, naming those there are', () => {
    expect(scorePhysicalTest(test('four-metre-gait-speed'), { sprint: 4 })).toEqual({
      kind: 'refused',
      faults: [{ pointer: '/sprint', code: 'unknown-part', message: '4MGS has the parts four-metre-walk.' }],
    });
  });

  it('are refused where the result is typed', () => {
    expect(scorePhysicalTest(test('handgrip-strength'), { grip: 20 })).toMatchObject({
      kind: 'refused',
      faults: [{ code: 'typed-result-only' }],
    });
  });
});

describe('conditions of a physical test', () => {
  const right = { side: 'right', device: 'fixed-dynamometer' };

  it('are alike when all are the same', () => {
    expect(conditionDifferences(test('quadriceps-strength'), right, right)).toEqual([]);
  });

  it('differ by side and by device', () => {
    const left = { side: 'left', device: 'hand-held-dynamometer' };
    const differences = conditionDifferences(test('quadriceps-strength'), right, left);
    expect(differences.map((difference) => difference.conditionId)).toEqual(['side', 'device']);
  });

  it('are not known to be alike when not recorded, or another device', () => {
    const ids = (baseline: Readonly<Record<string, string>>): readonly string[] =>
      conditionDifferences(test('handgrip-strength'), baseline, baseline).map(
        (difference) => difference.conditionId,
      );
    expect(ids({ side: 'left' })).toEqual(['device']);
    expect(ids({ side: 'left', device: 'other' })).toEqual(['device']);
  });
});

describe('quadriceps strength', () => {
  it('keeps force and torque apart as two measures in two units', () => {
    expect(test('quadriceps-strength').measures.map((measure) => [measure.id, measure.unit])).toEqual([
      ['quadriceps-strength', 'kgf'],
      ['quadriceps-torque', 'N.m'],
    ]);
  });
});

function test(id: string): PhysicalTest {
  const found = findPhysicalTest(id);
  if (found === undefined) throw new Error(`There is no physical test ${id}`);
  return found;
}
