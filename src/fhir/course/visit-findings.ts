import type { AssessmentEntry } from '../../domain/assessment/assessment.js';
import { findSafetyItem } from '../../domain/safety/conduct.js';
import { localCode, named } from '../elements.js';
import type { Element } from '../elements.js';
import { UNITS } from '../units.js';
import type { FhirUnit } from '../units.js';
import { FINDING_LOINC } from '../vocabulary.js';
import { amount, component } from './observation.js';
import type { Finding } from './observation.js';

/** What was found at a visit beside the tests: size, spirometry, resting values, the safety screen and notes. */
export function visitFindings(entry: AssessmentEntry): readonly Finding[] {
  const { heightCm, weightKg, spirometry, resting, notes } = entry;
  return [
    ...single('height', named('Height', FINDING_LOINC.height), heightCm, UNITS.centimetres),
    ...single('weight', named('Weight', FINDING_LOINC.weight), weightKg, UNITS.kilograms),
    ...single('fev1', named('FEV1', FINDING_LOINC.fev1), spirometry?.fev1L ?? null, UNITS.litres),
    ...single(
      'fev1-percent-predicted',
      named('FEV1 in percent of predicted'),
      spirometry?.fev1PercentPredicted ?? null,
      UNITS.percent,
    ),
    ...single(
      'fev1-fvc',
      named('FEV1/FVC', FINDING_LOINC.fev1Fvc),
      spirometry?.fev1FvcPercent ?? null,
      UNITS.percent,
    ),
    ...single(
      'resting-spo2',
      named('SpO2 at rest', FINDING_LOINC.spo2),
      resting?.spo2Percent ?? null,
      UNITS.percent,
    ),
    ...single(
      'resting-heart-rate',
      named('Heart rate at rest', FINDING_LOINC.heartRate),
      resting?.heartRateBpm ?? null,
      UNITS.perMinute,
    ),
    ...single('systolic', named('Systolic pressure at rest'), resting?.systolicMmHg ?? null, UNITS.mmHg),
    ...single('diastolic', named('Diastolic pressure at rest'), resting?.diastolicMmHg ?? null, UNITS.mmHg),
    ...safetyScreen(entry),
    ...(notes === null ? [] : [{ key: 'notes', code: named('Notes'), value: { valueString: notes } }]),
  ];
}

function single(key: string, code: Element, value: number | null, unit: FhirUnit): readonly Finding[] {
  const found = amount(value, unit);
  return found === null ? [] : [{ key, code, value: found }];
}

function safetyScreen({
  safetyScreen: screen,
  safetyNote,
  safetyFindings,
}: AssessmentEntry): readonly Finding[] {
  if (screen === 'not-recorded' && safetyNote === null && safetyFindings.length === 0) return [];
  return [
    {
      key: 'safety-screen',
      code: named('Safety screen'),
      value: { valueCodeableConcept: localCode('safety-screen', screen) },
      components: safetyFindings.flatMap((id) =>
        component(named('Found'), { valueString: findSafetyItem(id)?.text ?? id }),
      ),
      note: safetyNote,
    },
  ];
}
