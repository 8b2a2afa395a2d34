import { decimal, fraction, type Fraction } from '../exact/fraction.js';

/**
 * Body mass index, unrounded: the published equations were fitted on unrounded values.
 *
 * @param size height in cm and weight in kg, both above zero
 * @returns kilograms per square metre
 * @throws RangeError when the height is not above zero
 * @example bodyMassIndex({ heightCm: 160, weightKg: 64 }) -> 25
 */
export function bodyMassIndex(size: { readonly heightCm: number; readonly weightKg: number }): number {
  if (!(size.heightCm > 0)) throw new RangeError(`Not a height in centimetres: ${size.heightCm}`);
  // Square centimetres first: whole numbers stay whole, so that an index of exactly 21 comes out as 21.
  return (size.weightKg * 10_000) / (size.heightCm * size.heightCm);
}

/**
 * Body mass index as an exact fraction, for thresholds.
 *
 * @param size height in cm and weight in kg as recorded, both above zero, at most three decimal places
 * @returns kilograms per square metre, exact
 * @throws RangeError when a number is not plain or the height is zero
 * @example exactBodyMassIndex({ heightCm: 170, weightKg: 60.69 }) -> 21/1
 */
export function exactBodyMassIndex(size: { readonly heightCm: number; readonly weightKg: number }): Fraction {
  const height = decimal(size.heightCm);
  const weight = decimal(size.weightKg);
  return fraction(
    weight.numerator * 10_000 * height.denominator * height.denominator,
    weight.denominator * height.numerator * height.numerator,
  );
}
