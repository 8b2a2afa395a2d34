import fc from 'fast-check';
import { addDays, plainDate } from '../../src/domain/calendar/plain-date.js';
import type { PlainDate } from '../../src/domain/calendar/plain-date.js';
import type {
  AssessmentFacts,
  ContactFacts,
  ReferralFacts,
  Result,
} from '../../src/domain/cohort/referral-facts.js';
import { ETHNIC_CATEGORIES, SMOKING_STATUSES, YES_NO_NOT_KNOWN } from '../../src/domain/patient/patient.js';
import { decimal, fraction } from '../../src/domain/exact/fraction.js';
import {
  ATTENDANCE_OUTCOMES,
  CLOSURE_REASONS,
  DIAGNOSES,
  DELIVERY_MODES,
  PATHWAYS,
  REFERRAL_SOURCES,
  SEXES_AT_BIRTH,
  TIMEPOINTS,
  TRIAGE_DECISIONS,
} from '../../src/domain/referral/closed-sets.js';
import { aReferral, aResult } from './facts.js';

/** Days from 1 January 2026 on which things happen: around the quarters of 2026. */
const FIRST_DAY = plainDate('2026-01-01');
const DAYS = 500;

/** The sites of the team, enough for a funnel. */
export const SITES = [1, 2, 3, 4, 5, 6].map((number) => ({
  id: `site-${number}`,
  name: `Invented hall ${number}`,
}));

const dayNumber = fc.integer({ min: 0, max: DAYS });

/** A day of the span. */
export const anyDay: fc.Arbitrary<PlainDate> = dayNumber.map((day) => addDays(FIRST_DAY, day));

const walkConditions = fc.record({
  test: fc.constant('incremental-shuttle-walk'),
  courseLengthM: fc.constantFrom('10', '20', null),
  walkingAid: fc.constantFrom('none', 'stick', null),
});

const anyResult: fc.Arbitrary<Result> = fc.oneof(
  fc
    .tuple(fc.integer({ min: 0, max: 102 }), walkConditions, fc.boolean())
    .map(([shuttles, conditions, hadPracticeWalk]) =>
      aResult('incremental-shuttle-walk-distance', shuttles * 10, {
        conditions,
        hadPracticeWalk,
        isCeiling: shuttles === 102,
      }),
    ),
  fc
    .tuple(fc.integer({ min: 0, max: 1200 }), fc.constantFrom('4', '5', null))
    .map(([timeS, speedLevel]) =>
      aResult('endurance-shuttle-walk-time', timeS, { conditions: { speedLevel } }),
    ),
  fc.integer({ min: 0, max: 40 }).map((total) => aResult('cat-total', total)),
  fc.integer({ min: 1, max: 5 }).map((grade) => aResult('mrc-dyspnoea', grade)),
  fc.integer({ min: 5, max: 35 }).map((sum) => aResult('crq-dyspnoea', fraction(sum, 5))),
  fc
    .integer({ min: 0, max: 600 })
    .map((tenths) => aResult('five-repetition-sit-to-stand', decimal(tenths / 10))),
  fc.integer({ min: 0, max: 65 }).map((score) => aResult('bckq-total', score)),
);

const anyAssessment: fc.Arbitrary<AssessmentFacts> = fc.record({
  assessmentId: fc.uuid(),
  timepoint: fc.constantFrom(...TIMEPOINTS),
  assessedOn: anyDay,
  enteredOn: fc.option(anyDay),
  confirmedValues: fc.integer({ min: 0, max: 2 }),
  heightCm: fc.option(fc.integer({ min: 140, max: 200 })),
  weightKg: fc.option(fc.integer({ min: 40, max: 150 })),
  results: fc.uniqueArray(anyResult, { selector: (result) => result.measureId, maxLength: 5 }),
  notDone: fc.constant([]),
});

const anyContact: fc.Arbitrary<ContactFacts> = fc.record({
  heldOn: anyDay,
  mode: fc.constant('centre' as const),
  isSupervised: fc.boolean(),
  outcome: fc.constantFrom(...ATTENDANCE_OUTCOMES),
});

const anyPerson = fc.record({
  sexAtBirth: fc.constantFrom(...SEXES_AT_BIRTH),
  bornOn: fc.integer({ min: 1930, max: 2005 }).map((year) => plainDate(`${year}-06-15`)),
  ethnicCategory: fc.constantFrom(...ETHNIC_CATEGORIES),
  deprivationQuintile: fc.option(fc.integer({ min: 1, max: 5 })),
  interpreterNeed: fc.constantFrom(...YES_NO_NOT_KNOWN),
  homeOxygen: fc.constantFrom(...YES_NO_NOT_KNOWN),
  smokingStatus: fc.constantFrom(...SMOKING_STATUSES),
  hasNhsNumber: fc.boolean(),
  hasGpPractice: fc.boolean(),
});

/** One referral of any course, sound or odd; assessments and sessions are in the order of their dates. */
const anyReferral: fc.Arbitrary<ReferralFacts> = fc
  .record({
    patientId: fc.integer({ min: 1, max: 8 }).map((number) => `patient-${number}`),
    receivedOn: anyDay,
    source: fc.constantFrom(...REFERRAL_SOURCES),
    diagnosis: fc.constantFrom(...DIAGNOSES),
    pathway: fc.constantFrom(...PATHWAYS),
    hospitalDischargedOn: fc.option(anyDay),
    triage: fc.option(fc.record({ decision: fc.constantFrom(...TRIAGE_DECISIONS), decidedOn: anyDay })),
    plannedSessions: fc.integer({ min: 1, max: 16 }),
    plannedWeeks: fc.integer({ min: 1, max: 12 }),
    exercisePlanGivenOn: fc.option(anyDay),
    closure: fc.option(fc.record({ closedOn: anyDay, reason: fc.constantFrom(...CLOSURE_REASONS) })),
    patient: anyPerson,
    siteId: fc.constantFrom(...SITES.map(({ id }) => id)),
    deliveryMode: fc.option(fc.constantFrom(...DELIVERY_MODES)),
    isFirstReferral: fc.boolean(),
    registeredOn: anyDay,
    contacts: fc.array(anyContact, { maxLength: 14 }),
    assessments: fc.array(anyAssessment, { maxLength: 4 }),
  })
  .map((facts) =>
    aReferral({
      ...facts,
      contacts: [...facts.contacts].sort((a, b) => compareText(a.heldOn, b.heldOn)),
      assessments: [...facts.assessments].sort((a, b) => compareText(a.assessedOn, b.assessedOn)),
    }),
  );

/** A store of referrals, of fewer people than referrals. */
export const anyStore: fc.Arbitrary<readonly ReferralFacts[]> = fc
  .array(anyReferral, { maxLength: 12 })
  .map((referrals) => referrals.map((facts, index) => ({ ...facts, referralId: `referral-${index}` })));

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
