/** Grade of the MRC dyspnoea scale. */
export type MrcGrade = 1 | 2 | 3 | 4 | 5;

/** Grade of the modified MRC dyspnoea scale. */
export type MmrcGrade = 0 | 1 | 2 | 3 | 4;

const PAIRS: readonly { readonly mrc: MrcGrade; readonly mmrc: MmrcGrade }[] = [
  { mrc: 1, mmrc: 0 },
  { mrc: 2, mmrc: 1 },
  { mrc: 3, mmrc: 2 },
  { mrc: 4, mmrc: 3 },
  { mrc: 5, mmrc: 4 },
];

/**
 * The modified grade of an MRC grade; nothing is lost either way.
 *
 * @param grade 1 to 5
 * @returns 0 to 4; null where the number is no MRC grade, such as a modified grade of 0
 * @source mMRC = MRC - 1: Yorke 2022, Int J COPD 17:2289, and common practice
 * @example mrcToMmrc(3) -> 2
 */
export function mrcToMmrc(grade: number): MmrcGrade | null {
  return PAIRS.find(({ mrc }) => mrc === grade)?.mmrc ?? null;
}

/**
 * The MRC grade of a modified grade; nothing is lost either way.
 *
 * @param grade 0 to 4; 0 is a grade
 * @returns 1 to 5; null where the number is no modified grade, such as an MRC grade of 5
 * @source As for mrcToMmrc
 * @example mmrcToMrc(0) -> 1
 */
export function mmrcToMrc(grade: number): MrcGrade | null {
  return PAIRS.find(({ mmrc }) => mmrc === grade)?.mrc ?? null;
}
