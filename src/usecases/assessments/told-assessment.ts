import type { CheckedAssessment } from '../../domain/assessment/assessment.js';
import { resultsOf } from '../../domain/assessment/results.js';
import { toNumber } from '../../domain/exact/fraction.js';

/** An assessment as the audit trail tells it: its results and settings, without its notes. */
export function toldAssessment(checked: CheckedAssessment): object {
  const { entry } = checked;
  const results = resultsOf(checked).map(({ measureId, value }) => [measureId, toNumber(value)] as const);
  return {
    timepoint: entry.timepoint,
    assessedOn: entry.assessedOn,
    siteId: entry.siteId,
    heightCm: entry.heightCm,
    weightKg: entry.weightKg,
    spirometry: entry.spirometry,
    resting: entry.resting,
    safetyScreen: entry.safetyScreen,
    safetyFindings: entry.safetyFindings,
    confirmed: entry.confirmed,
    ...Object.fromEntries(results),
  };
}
