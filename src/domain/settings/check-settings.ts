import { INDICATORS } from '../indicators/registered.js';
import { findMeasure } from '../measures/catalogue.js';
import { findEquation } from '../prediction/catalogue.js';
import { DIAGNOSES } from '../referral/closed-sets.js';
import { checkDisclosure } from '../release/policy.js';
import type { Fault } from '../refusal/refusal.js';
import type { TeamSettings } from './team-settings.js';

/**
 * Checks a team's choices against the catalogue: every id must be there and fit its measure.
 *
 * @returns every fault found, by JSON Pointer; empty when the settings may be stored
 * @example equations { 'six-minute-walk-distance': 'probst-2012' } -> a fault: that equation predicts another measure
 */
export function checkSettings(settings: TeamSettings): readonly Fault[] {
  return [
    ...checkSpan('/plannedSessions', settings.plannedSessions, 60),
    ...checkSpan('/plannedWeeks', settings.plannedWeeks, 52),
    ...checkSpan('/retentionYears', settings.retentionYears, 100),
    ...Object.entries(settings.equations).flatMap(([measureId, id]) => checkEquation(measureId, id)),
    ...Object.entries(settings.thresholds).flatMap(([measureId, id]) =>
      checkThreshold(`/thresholds/${measureId}`, measureId, id),
    ),
    ...Object.entries(settings.thresholdsByDiagnosis).flatMap(([key, id]) => checkByDiagnosis(key, id)),
    ...checkDisclosure(settings.disclosure),
    ...Object.entries(settings.targets).flatMap(([key, target]) => checkTarget(key, target.percent)),
  ];
}

function checkSpan(pointer: string, value: number, max: number): readonly Fault[] {
  if (Number.isInteger(value) && value >= 1 && value <= max) return [];
  return [
    { pointer, code: 'out-of-range', message: `Give a whole number from 1 to ${max}. You entered ${value}.` },
  ];
}

function checkEquation(measureId: string, equationId: string): readonly Fault[] {
  if (findEquation(equationId)?.measureId === measureId) return [];
  const message = 'There is no equation of this id that predicts this measure.';
  return [{ pointer: `/equations/${measureId}`, code: 'unknown-equation', message }];
}

function checkThreshold(pointer: string, measureId: string, thresholdId: string): readonly Fault[] {
  const isUsable = findMeasure(measureId)?.thresholds.some(
    (each) => each.id === thresholdId && each.purpose === 'improvement' && each.value !== null,
  );
  if (isUsable === true) return [];
  const message = 'The measure has no threshold of this id that can judge an improvement.';
  return [{ pointer, code: 'unknown-threshold', message }];
}

function checkByDiagnosis(key: string, thresholdId: string): readonly Fault[] {
  const [measureId = '', diagnosis = '', ...rest] = key.split('/');
  const pointer = `/thresholdsByDiagnosis/${key.replaceAll('~', '~0').replaceAll('/', '~1')}`;
  if (rest.length > 0 || !DIAGNOSES.some((known) => known === diagnosis)) {
    const message = `Write the key as measure/diagnosis, with one of: ${DIAGNOSES.join(', ')}.`;
    return [{ pointer, code: 'unknown-diagnosis', message }];
  }
  return checkThreshold(pointer, measureId, thresholdId);
}

function checkTarget(key: string, percent: number): readonly Fault[] {
  if (!INDICATORS.some((indicator) => indicator.targetKey === key)) {
    return [
      { pointer: `/targets/${key}`, code: 'unknown-indicator', message: 'No indicator has this target.' },
    ];
  }
  if (percent >= 0 && percent <= 100) return [];
  const message = `A target is 0 to 100 %. You entered ${percent}.`;
  return [{ pointer: `/targets/${key}/percent`, code: 'out-of-range', message }];
}
