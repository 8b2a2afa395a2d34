import { describe, expect, it } from 'vitest';
import { bodyMassIndex, exactBodyMassIndex } from '../../../src/domain/prediction/body-mass-index.js';

describe('body mass index', () => {
  it.each([
    // 64 / 1.6^2 = 25; 83 / 1.78^2 = 26.19619; 71.4 / 1.695^2 = 71.4 / 2.873025 = 24.85185
    { heightCm: 160, weightKg: 64, expected: 25 },
    { heightCm: 178, weightKg: 83, expected: 26.19619 },
    { heightCm: 169.5, weightKg: 71.4, expected: 24.85185 },
  ])('$heightCm cm, $weightKg kg: $expected', ({ expected, ...size }) => {
    expect(bodyMassIndex(size)).toBeCloseTo(expected, 5);
    const exact = exactBodyMassIndex(size);
    expect(exact.numerator / exact.denominator).toBeCloseTo(expected, 5);
  });

  it('refuses a height of nothing', () => {
    expect(() => bodyMassIndex({ heightCm: 0, weightKg: 60 })).toThrow(RangeError);
    expect(() => exactBodyMassIndex({ heightCm: 0, weightKg: 60 })).toThrow(RangeError);
  });
});
