import type { Assessment } from '../../domain/assessment/assessment.js';
import { toNumber } from '../../domain/exact/fraction.js';
import type { Fraction } from '../../domain/exact/fraction.js';
import type { Measure } from '../../domain/measures/measure.js';
import type { NotDoneReason } from '../../domain/referral/closed-sets.js';
import { derivedId, listed, named, quantity, referenceTo } from '../elements.js';
import type { Element, Resource } from '../elements.js';
import type { FhirUnit } from '../units.js';
import { MEASURE_UNITS } from '../units.js';
import { ABSENT_REASON_SYSTEM, MEASURE_LOINC } from '../vocabulary.js';

/** Where an observation was made: at an assessment of a person. */
export interface Visit {
  readonly patientId: string;
  readonly assessment: Assessment;
}

/** One thing that was found, before it is a resource. */
export interface Finding {
  /** Unique within the assessment; the id of the resource is derived from it. */
  readonly key: string;
  readonly code: Element;
  /** `valueQuantity`, `valueInteger` and so on, or why there is none. */
  readonly value: Element;
  readonly components?: readonly Element[];
  readonly note?: string | null;
  /** Id of the resource that it was worked out from. */
  readonly derivedFromId?: string | null;
}

/** A finding as a resource. @source FHIR R4 (4.0.1), Observation. */
export function observation({ patientId, assessment }: Visit, finding: Finding): Resource {
  const { key, code, value, components = [], note = null, derivedFromId = null } = finding;
  return {
    resourceType: 'Observation',
    id: derivedId(`observation:${assessment.id}:${key}`),
    status: assessment.correctionReason === null ? 'final' : 'corrected',
    code,
    subject: referenceTo(patientId),
    encounter: referenceTo(assessment.id),
    effectiveDateTime: assessment.entry.assessedOn,
    ...value,
    note: note === null ? undefined : [{ text: note }],
    derivedFrom: derivedFromId === null ? undefined : [referenceTo(derivedFromId)],
    component: listed(components),
  };
}

/** What a measure is called, with its code where one is confirmed. */
export function measureCode({ id, name }: Measure): Element {
  return named(name, MEASURE_LOINC[id]);
}

/** A result in the unit of its measure. */
export function measured(value: Fraction, { unit }: Measure): Element {
  return { valueQuantity: quantity(toNumber(value), MEASURE_UNITS[unit]) };
}

/** That a test was not done, and why. */
export function notDone(reason: NotDoneReason): Element {
  const code = reason === 'declined' ? 'asked-declined' : 'not-performed';
  return {
    dataAbsentReason: {
      coding: [{ system: ABSENT_REASON_SYSTEM, code }],
      text: `not done: ${reason.replaceAll('-', ' ')}`,
    },
  };
}

/** A component that is left out where nothing was recorded. */
export function component(code: Element, value: Element | null): readonly Element[] {
  return value === null ? [] : [{ code, ...value }];
}

/** An amount; null where it was not recorded. */
export function amount(value: number | null, unit: FhirUnit): Element | null {
  return value === null ? null : { valueQuantity: quantity(value, unit) };
}

/** A count or a level; null where it was not recorded. */
export function count(value: number | null): Element | null {
  return value === null ? null : { valueInteger: value };
}
