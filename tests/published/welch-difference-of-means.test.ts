// Sources, as R prints them for t.test:
// (1) Student 1908, Biometrika 6:1-25, the two groups of the sleep data taken as independent: t = -1.8608, df = 17.776,
//     95 % interval -3.3654832 to 0.2054832, means 0.75 and 2.33 (example of the manual page of t.test, from memory).
// (2) Miles per gallon by transmission, Motor Trend 1974 data as in Henderson and Velleman, Biometrics 1981;37:391-411:
//     t = -3.7671, df = 18.332, interval -11.280194 to -3.209684, means 17.14737 and 24.39231 (output read; data from
//     memory, held to the printed means here).
// Tolerance: half a unit of the last printed place.
import { describe, expect, it } from 'vitest';
import { welchDifference } from '../../src/domain/statistics/difference-of-means.js';
import { summarise } from '../../src/domain/statistics/summary.js';
import { expectPrinted } from '../support/cohort-groups.js';

const FIRST_DRUG = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2];
const SECOND_DRUG = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];
const AUTOMATIC = [
  21.4, 18.7, 18.1, 14.3, 24.4, 22.8, 19.2, 17.8, 16.4, 17.3, 15.2, 10.4, 10.4, 14.7, 21.5, 15.5, 15.2, 13.3,
  19.2,
];
const MANUAL = [21, 21, 22.8, 32.4, 30.4, 33.9, 27.3, 26, 30.4, 15.8, 19.7, 15, 21.4];

describe('difference of means without equal spreads', () => {
  it('of the sleep data', () => {
    const [a, b] = [summarise(FIRST_DRUG), summarise(SECOND_DRUG)];
    const found = welchDifference(a, b);
    expectPrinted(a.mean, '0.75');
    expectPrinted(b.mean, '2.33');
    expectPrinted(found?.degreesOfFreedom, '17.776');
    expectPrinted(found?.interval.low, '-3.3654832');
    expectPrinted(found?.interval.high, '0.2054832');
  });

  it('of miles per gallon by transmission', () => {
    const [a, b] = [summarise(AUTOMATIC), summarise(MANUAL)];
    const found = welchDifference(a, b);
    expectPrinted(a.mean, '17.14737');
    expectPrinted(b.mean, '24.39231');
    expectPrinted(found?.degreesOfFreedom, '18.332');
    expectPrinted(found?.interval.low, '-11.280194');
    expectPrinted(found?.interval.high, '-3.209684');
  });

  it('is none where a group has fewer than two, or nothing spreads', () => {
    const one = { n: 1, mean: 3, sd: null };
    const still = { n: 4, mean: 3, sd: 0 };
    expect(welchDifference(one, still)).toBeNull();
    expect(welchDifference(still, one)).toBeNull();
    expect(welchDifference(still, { ...still, mean: 5 })).toBeNull();
    expect(welchDifference(still, { n: 0, mean: null, sd: null })).toBeNull();
  });
});
