import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkField, FIELD_LIMITS } from '../../src/domain/assessment/field-limits.js';
import { decimal, isMultipleOf, subtract } from '../../src/domain/exact/fraction.js';

const someLimits = fc.constantFrom(...Object.values(FIELD_LIMITS));

describe('limits of captured fields', () => {
  it('take a number exactly when it lies within them, a whole number of steps above the least', () => {
    fc.assert(
      fc.property(someLimits, fc.integer({ min: -1000, max: 40_000 }), (limits, hundredths) => {
        const value = hundredths / 100;
        const isWithin = value >= limits.min && value <= limits.max;
        const isOnStep = isMultipleOf(subtract(decimal(value), decimal(limits.min)), decimal(limits.step));
        const { faults } = checkField({ pointer: '/field', limits, value });
        expect(faults.length === 0).toBe(isWithin && isOnStep);
      }),
      { numRuns: 2000 },
    );
  });

  it('take whole numbers by the same rule', () => {
    fc.assert(
      fc.property(someLimits, fc.integer({ min: -10, max: 400 }), (limits, value) => {
        const isWithin = value >= limits.min && value <= limits.max;
        const isOnStep = isMultipleOf(subtract(decimal(value), decimal(limits.min)), decimal(limits.step));
        const { faults } = checkField({ pointer: '/field', limits, value });
        expect(faults.length === 0).toBe(isWithin && isOnStep);
      }),
      { numRuns: 1000 },
    );
  });
});
