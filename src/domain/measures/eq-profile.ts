/**
 * The EQ-5D-5L profile: the five levels as one number of five digits.
 *
 * @param levels five answers of 1 to 5 in printed order, null where unanswered
 * @returns the profile such as `21111`; null where a level is missing
 * @source Devlin NJ 2018, Health Econ 27:7: 3125 profiles
 * @example eqProfile([2, 1, 1, 1, 1]) -> '21111'
 */
export function eqProfile(levels: readonly (number | null)[]): string | null {
  return levels.length === 5 && levels.every((level) => level !== null) ? levels.join('') : null;
}
