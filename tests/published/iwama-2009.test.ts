// Source: Iwama AM and others 2009, Braz J Med Biol Res 42:1080-1085, abstract.
// The sample starts at 13 years; the service takes adults from 18, which is the lower edge here.
// The paper prints no worked person. Expected values are worked from its coefficients by exact rational arithmetic, outside
// this program, and given to four decimals; tolerance half a unit of the fourth decimal. The sum stands above each person.
import { describe, expect, it } from 'vitest';
import { IWAMA_2009 } from '../../src/domain/prediction/equations/iwama-2009.js';
import { difference, expectWorked, predictedFor } from '../support/predicted-for.js';

describe('six-minute walk distance, Iwama 2009', () => {
  it.each([
    // 622.461 - 1.846 x 27 + 61.503
    { sexAtBirth: 'male', ageYears: 27, expected: 634.122, lowerLimit: null, isBeyondAges: false },
    // 622.461 - 1.846 x 60 + 61.503
    { sexAtBirth: 'male', ageYears: 60, expected: 573.204, lowerLimit: null, isBeyondAges: false },
    // 622.461 - 1.846 x 72 + 61.503
    { sexAtBirth: 'male', ageYears: 72, expected: 551.052, lowerLimit: null, isBeyondAges: false },
    // 622.461 - 1.846 x 30
    { sexAtBirth: 'female', ageYears: 30, expected: 567.081, lowerLimit: null, isBeyondAges: false },
    // 622.461 - 1.846 x 60
    { sexAtBirth: 'female', ageYears: 60, expected: 511.701, lowerLimit: null, isBeyondAges: false },
    // 622.461 - 1.846 x 78
    { sexAtBirth: 'female', ageYears: 78, expected: 478.473, lowerLimit: null, isBeyondAges: false },
    // 622.461 - 1.846 x 18 + 61.503
    { sexAtBirth: 'male', ageYears: 18, expected: 650.736, lowerLimit: null, isBeyondAges: false },
    // 622.461 - 1.846 x 18
    { sexAtBirth: 'female', ageYears: 18, expected: 589.233, lowerLimit: null, isBeyondAges: false },
    // 622.461 - 1.846 x 84 + 61.503
    { sexAtBirth: 'male', ageYears: 84, expected: 528.9, lowerLimit: null, isBeyondAges: false },
    // 622.461 - 1.846 x 84
    { sexAtBirth: 'female', ageYears: 84, expected: 467.397, lowerLimit: null, isBeyondAges: false },
    // 622.461 - 1.846 x 19 + 61.503
    { sexAtBirth: 'male', ageYears: 19, expected: 648.89, lowerLimit: null, isBeyondAges: false },
    // 622.461 - 1.846 x 85 + 61.503
    { sexAtBirth: 'male', ageYears: 85, expected: 527.054, lowerLimit: null, isBeyondAges: true },
    // 622.461 - 1.846 x 85
    { sexAtBirth: 'female', ageYears: 85, expected: 465.551, lowerLimit: null, isBeyondAges: true },
  ] as const)('$sexAtBirth, $ageYears years: $expected m', (worked) => {
    expectWorked(IWAMA_2009, worked);
  });

  // Each coefficient by itself: two people who differ in one thing. Tolerance 1e-9 for floating point.
  it.each([
    {
      name: 'ten years from 50 to 60, men',
      from: { sexAtBirth: 'male', ageYears: 50 },
      to: { sexAtBirth: 'male', ageYears: 60 },
      expected: -18.46,
    },
    {
      name: 'ten years from 50 to 60, women',
      from: { sexAtBirth: 'female', ageYears: 50 },
      to: { sexAtBirth: 'female', ageYears: 60 },
      expected: -18.46,
    },
    {
      name: 'men above women of the same age and size',
      from: { sexAtBirth: 'female', ageYears: 50 },
      to: { sexAtBirth: 'male', ageYears: 50 },
      expected: 61.503,
    },
  ] as const)('$name: $expected m', ({ from, to, expected }) => {
    expect(difference(IWAMA_2009, from, to)).toBeCloseTo(expected, 9);
  });

  // Abstract: women walked 551 m (SD 71), men 622 m (SD 80), ages 13 to 84. By the equation the mean woman was
  // (622.461 - 551) / 1.846 = 38.7 years, the mean man (683.964 - 622) / 1.846 = 33.6: inside the sample.
  it('gives the printed means of both sexes at ages within the sample', () => {
    expect(predictedFor(IWAMA_2009, { sexAtBirth: 'female', ageYears: 39 }).predicted).toBeCloseTo(
      550.467,
      3,
    );
    expect(predictedFor(IWAMA_2009, { sexAtBirth: 'male', ageYears: 34 }).predicted).toBeCloseTo(621.2, 3);
  });
});
