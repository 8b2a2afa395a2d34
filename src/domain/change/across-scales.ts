import { toNumber } from '../exact/fraction.js';
import { findMeasure } from '../measures/catalogue.js';
import { onOtherScale, otherScaleOf, scaleOfGrade } from '../measures/mrc-scales.js';
import type { BothEnds, ResultAt } from './pair.js';

/** The breathlessness scales, each beside the other. */
const SCALES = ['mrc-dyspnoea', 'mmrc-dyspnoea'];

/**
 * Joins a breathlessness grade of the baseline with one of the discharge that was asked on the other scale, so that the
 * change is not lost: the pair is of the scale of the baseline, and the grade of the discharge is converted. Where a
 * scale has a pair of its own, nothing is converted.
 *
 * Both ends get a condition `scale`, by which the pair is marked as not like for like. The measure of the discharge
 * keeps its result and says where it is compared.
 *
 * @param ends by measure id
 * @source The conversion: as for mrcToMmrc
 * @example baseline MRC 4, discharge mMRC 2 -> a pair of MRC 4 and 3
 */
export function joinedAcrossScales(ends: ReadonlyMap<string, BothEnds>): ReadonlyMap<string, BothEnds> {
  if (SCALES.some((scale) => isPair(ends.get(scale)))) return ends;
  for (const scale of SCALES) {
    const other = otherScaleOf(scale) ?? scale;
    const [baseline, discharge] = [ends.get(scale)?.baseline ?? null, ends.get(other)?.discharge ?? null];
    if (baseline === null || discharge === null) continue;
    if (discharge.assessment.assessedOn < baseline.assessment.assessedOn) continue;
    const converted = convertedTo(scale, discharge);
    if (converted === null) continue;
    return new Map([
      ...ends,
      [scale, { baseline: withScale(baseline), discharge: converted, comparedAs: null }],
      [other, { baseline: null, discharge, comparedAs: scale }],
    ]);
  }
  return ends;
}

function isPair(ends: BothEnds | undefined): boolean {
  return ends !== undefined && ends.baseline !== null && ends.discharge !== null;
}

function withScale({ result, assessment }: ResultAt): ResultAt {
  const scale = scaleOfGrade(result.measureId);
  return { assessment, result: { ...result, conditions: { ...result.conditions, scale } } };
}

/** What it was measured with is left out: the scale says it, and says what was recorded. */
function convertedTo(measureId: string, { result, assessment }: ResultAt): ResultAt | null {
  const converted = onOtherScale(result.measureId, result.value);
  if (converted === null) return null;
  const recorded = `${scaleOfGrade(result.measureId) ?? ''} grade ${toNumber(result.value)}`;
  const read = `${findMeasure(measureId)?.shortName ?? measureId} grade ${toNumber(converted.value)}`;
  const conditions = { scale: `${recorded}, read as ${read},` };
  return { assessment, result: { ...result, ...converted, conditions } };
}
