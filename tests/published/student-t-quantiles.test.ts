// Source: definition of Student's t distribution. The table was computed in double precision, accurate to 1e-12, apart
// from the code under test, and is written to 12 digits; its 3-decimal form agrees with the NIST/SEMATECH e-Handbook
// of Statistical Methods, 1.3.6.7.2 (that printed table: from memory, but for 2.262 at 9 degrees of freedom).
// Closed forms for 1, 2 and 4 degrees of freedom follow from the definition (4: Shaw 2006, J Comput Finance 9(4), from memory).
import { describe, expect, it } from 'vitest';
import { tQuantile, Z_95 } from '../../src/domain/statistics/normal-and-t.js';

/** Relative. The table's own last digit is worth 5e-12 of a value near 1. */
const TABLE_TOLERANCE = 1e-10;
const CLOSED_FORM_TOLERANCE = 1e-12;

const PROBABILITIES = [0.95, 0.975, 0.99, 0.995];

/** Degrees of freedom, then the quantile at each probability. */
// prettier-ignore
const TABLE: readonly (readonly [number, number, number, number, number])[] = [
  [1, 6.31375151468, 12.7062047362, 31.8205159538, 63.6567411629],
  [2, 2.91998558035, 4.30265272975, 6.96455673428, 9.92484320092],
  [3, 2.3533634348, 3.18244630528, 4.54070285857, 5.84090930973],
  [4, 2.13184678633, 2.7764451052, 3.74694738798, 4.60409487135],
  [5, 2.01504837333, 2.57058183564, 3.36492999891, 4.03214298356],
  [6, 1.94318028052, 2.44691185114, 3.14266840329, 3.70742802132],
  [7, 1.89457860509, 2.36462425159, 2.99795156687, 3.49948329735],
  [8, 1.85954803753, 2.3060041352, 2.89645944771, 3.35538733133],
  [9, 1.83311293266, 2.2621571628, 2.82143792503, 3.24983554159],
  [10, 1.81246112281, 2.22813885199, 2.76376945811, 3.16927267262],
  [11, 1.7958848187, 2.20098516009, 2.71807918381, 3.10580651554],
  [12, 1.78228755565, 2.17881282967, 2.68099799312, 3.05453958939],
  [13, 1.77093339599, 2.16036865646, 2.65030883791, 3.01227583872],
  [14, 1.76131013577, 2.14478668792, 2.62449406759, 2.97684273437],
  [15, 1.75305035569, 2.13144954556, 2.60248029501, 2.94671288348],
  [16, 1.74588367628, 2.11990529922, 2.58348718528, 2.92078162243],
  [17, 1.73960672608, 2.10981557783, 2.56693398372, 2.89823051968],
  [18, 1.73406360662, 2.10092204024, 2.55237963018, 2.87844047274],
  [19, 1.72913281152, 2.09302405441, 2.53948319062, 2.86093460646],
  [20, 1.72471824292, 2.08596344727, 2.52797700274, 2.84533970979],
  [21, 1.72074290281, 2.07961384473, 2.51764801604, 2.83135955802],
  [22, 1.71714437438, 2.0738730679, 2.5083245529, 2.8187560606],
  [23, 1.71387152775, 2.06865761042, 2.49986673949, 2.80733568377],
  [24, 1.71088207991, 2.06389856163, 2.49215947316, 2.79693950477],
  [25, 1.70814076125, 2.05953855275, 2.48510717541, 2.78743581368],
  [26, 1.70561791976, 2.05552943864, 2.47862982359, 2.77871453333],
  [27, 1.70328844572, 2.05183051648, 2.47265991196, 2.77068295712],
  [28, 1.70113093427, 2.0484071418, 2.46714009797, 2.76326245546],
  [29, 1.69912702653, 2.04522964213, 2.46202136015, 2.75638590367],
  [30, 1.69726088659, 2.0422724563, 2.4572615424, 2.74999565357],
  [40, 1.68385101334, 2.02107539031, 2.42325677933, 2.70445926743],
  [60, 1.6706488649, 2.00029782201, 2.39011947262, 2.66028302886],
  [80, 1.66412457859, 1.99006342125, 2.37386827297, 2.63869059634],
  [100, 1.66023432609, 1.98397151852, 2.36421736624, 2.62589052144],
  [120, 1.65765089936, 1.97993040508, 2.35782461265, 2.61742114511],
  [200, 1.65250810091, 1.97189622363, 2.34513708226, 2.60063443619],
  [399, 1.64868153356, 1.96592729592, 2.3357299586, 2.58820716403],
  [1000, 1.64637881729, 1.96233908083, 2.33008267476, 2.58075469807],
];

function relativeError(actual: number, expected: number): number {
  return Math.abs(actual - expected) / Math.abs(expected);
}

describe("quantiles of Student's t", () => {
  it.each(TABLE)('%d degrees of freedom agree with the table to 1e-10', (degreesOfFreedom, ...quantiles) => {
    quantiles.forEach((expected, column) => {
      const probability = PROBABILITIES[column] ?? Number.NaN;
      expect(relativeError(tQuantile(probability, degreesOfFreedom), expected)).toBeLessThan(TABLE_TOLERANCE);
      // 1 - p is rounded in the last binary digit, which moves the far tail by a little more than the table's digit.
      expect(relativeError(tQuantile(1 - probability, degreesOfFreedom), -expected)).toBeLessThan(
        TABLE_TOLERANCE,
      );
    });
  });

  it('prints 2.262 for 9 degrees of freedom (NIST/SEMATECH e-Handbook 1.3.6.7.2)', () => {
    expect(tQuantile(0.975, 9).toFixed(3)).toBe('2.262');
  });

  it.each([0.001, 0.025, 0.2, 0.49, 0.6, 0.9, 0.975, 0.9999, 1 - 1e-9])('closed forms at %d', (p) => {
    const product = 4 * p * (1 - p);
    const oneDegree = p < 0.5 ? -1 / Math.tan(Math.PI * p) : 1 / Math.tan(Math.PI * (1 - p));
    const twoDegrees = (2 * p - 1) * Math.sqrt(2 / product);
    const root = Math.sqrt(product);
    const fourDegrees = Math.sign(p - 0.5) * 2 * Math.sqrt(Math.cos(Math.acos(root) / 3) / root - 1);
    expect(relativeError(tQuantile(p, 1), oneDegree)).toBeLessThan(CLOSED_FORM_TOLERANCE);
    expect(relativeError(tQuantile(p, 2), twoDegrees)).toBeLessThan(CLOSED_FORM_TOLERANCE);
    expect(relativeError(tQuantile(p, 4), fourDegrees)).toBeLessThan(CLOSED_FORM_TOLERANCE);
  });

  it('is 0 at one half', () => {
    expect(tQuantile(0.5, 7)).toBe(0);
  });

  it('tends to the normal quantile', () => {
    // z + (z^3 + z)/(4 df) + (5z^5 + 16z^3 + 3z)/(96 df^2): Abramowitz & Stegun 26.7.5 (from memory).
    for (const degreesOfFreedom of [1e4, 1e5, 1e6]) {
      const expansion =
        Z_95 +
        (Z_95 ** 3 + Z_95) / (4 * degreesOfFreedom) +
        (5 * Z_95 ** 5 + 16 * Z_95 ** 3 + 3 * Z_95) / (96 * degreesOfFreedom ** 2);
      expect(relativeError(tQuantile(0.975, degreesOfFreedom), expansion)).toBeLessThan(1e-10);
    }
  });

  it('is the normal quantile itself as a constant, not the 1.957 of a coarse approximation', () => {
    // Computed from the definition to 15 digits: 1.95996398454005.
    expect(relativeError(Z_95, 1.95996398454005)).toBeLessThan(1e-14);
  });

  it.each([
    [0, 5],
    [1, 5],
    [-0.1, 5],
    [Number.NaN, 5],
    [0.975, 0],
    [0.975, -1],
    [0.975, Number.NaN],
    [0.975, Number.POSITIVE_INFINITY],
  ])('refuses probability %d with %d degrees of freedom', (probability, degreesOfFreedom) => {
    expect(() => tQuantile(probability, degreesOfFreedom)).toThrow(RangeError);
  });
});
