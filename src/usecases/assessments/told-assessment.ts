import type { CheckedAssessment } from '../../domain/assessment/assessment.js';
import { resultsOf } from '../../domain/assessment/results.js';
import type { ChangedValue } from '../../domain/audit/audit-event.js';
import { changedValues } from '../../domain/audit/changed-values.js';
import { toNumber } from '../../domain/exact/fraction.js';
import { changesBetween } from '../../domain/history/field-change.js';
import { stateOfTests } from '../../domain/history/states.js';

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

/**
 * What a correction of an assessment changed, as the audit trail tells it: results and settings before and after, and
 * each condition of a test, such as the walking aid, that makes a pair like for like or not.
 */
export function toldCorrection(
  former: CheckedAssessment,
  present: CheckedAssessment,
): Readonly<Record<string, ChangedValue>> {
  const ofTests = changesBetween(stateOfTests(former.entry), stateOfTests(present.entry)).map(
    (change) => [change.field, [change.former, change.present]] as const,
  );
  return {
    ...changedValues(toldAssessment(former), toldAssessment(present), []),
    ...Object.fromEntries(ofTests),
  };
}
