import { describe, expect, it } from 'vitest';
import { checkNhsNumber } from '../../src/domain/identity/nhs-number.js';
import { nhsNumbersOfTestRange } from '../../seeds/nhs-numbers.js';

describe('NHS numbers of the demo', () => {
  it.each([0, 7, 20_260_401])(
    'are valid numbers of the test range and never repeated, from seed %i',
    (seed) => {
      const next = nhsNumbersOfTestRange(seed);
      const numbers = Array.from({ length: 20_000 }, next);
      expect(new Set(numbers).size).toBe(numbers.length);
      const refused = numbers.filter((number) => checkNhsNumber(number, 'demo').kind !== 'valid');
      expect(refused).toEqual([]);
      expect(numbers.every((number) => number.startsWith('999'))).toBe(true);
    },
  );
});
