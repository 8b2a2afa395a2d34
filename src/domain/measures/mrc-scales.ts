import { decimal, toNumber } from '../exact/fraction.js';
import type { Fraction } from '../exact/fraction.js';

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

/** A grade as it was recorded, and what it is on the other scale. */
export interface ConvertedGrade {
  readonly measureId: string;
  readonly value: Fraction;
}

/** The two scales by the measure that each is kept under, with the numbers that its grades have. */
const SCALES: Readonly<Record<string, { readonly name: string; readonly otherMeasureId: string }>> = {
  'mrc-dyspnoea': { name: 'MRC (1 to 5)', otherMeasureId: 'mmrc-dyspnoea' },
  'mmrc-dyspnoea': { name: 'mMRC (0 to 4)', otherMeasureId: 'mrc-dyspnoea' },
};

/** How one scale is turned into the other, with its source, for readers. */
export const GRADES_CONVERTED_BY = 'mMRC is MRC less 1: Yorke 2022, Int J COPD 17:2289, and common practice';

/** The scale of a breathlessness grade by name. @returns null for every other measure @example 'MRC (1 to 5)' */
export function scaleOfGrade(measureId: string): string | null {
  return SCALES[measureId]?.name ?? null;
}

/** The measure of the other breathlessness scale; null where the measure is none of the two. */
export function otherScaleOf(measureId: string): string | null {
  return SCALES[measureId]?.otherMeasureId ?? null;
}

/**
 * A breathlessness grade on the other of the two scales; nothing is lost.
 *
 * @param grade as recorded
 * @returns null where the measure is no breathlessness scale, or the number no grade of it
 * @source As for mrcToMmrc
 * @example onOtherScale('mmrc-dyspnoea', 2) -> mrc-dyspnoea 3
 */
export function onOtherScale(measureId: string, grade: Fraction): ConvertedGrade | null {
  const otherMeasureId = otherScaleOf(measureId);
  if (otherMeasureId === null) return null;
  const number = toNumber(grade);
  const converted = otherMeasureId === 'mrc-dyspnoea' ? mmrcToMrc(number) : mrcToMmrc(number);
  return converted === null ? null : { measureId: otherMeasureId, value: decimal(converted) };
}
