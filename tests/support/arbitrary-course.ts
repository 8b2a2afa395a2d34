import fc from 'fast-check';
import type {
  Assessment,
  PhysicalTestEntry,
  QuestionnaireEntry,
  SitToStandEntry,
  WalkTestEntry,
} from '../../src/domain/assessment/assessment.js';
import { fraction } from '../../src/domain/exact/fraction.js';
import {
  PHYSICAL_TESTS,
  QUESTIONNAIRES,
  SIT_TO_STAND_TESTS,
  WALK_TESTS,
} from '../../src/domain/measures/registered.js';
import { STAGES } from '../../src/domain/pathway/stage.js';
import {
  ETHNIC_CATEGORIES,
  GENDERS,
  NHS_NUMBER_MISSING_REASONS,
  SMOKING_STATUSES,
  YES_NO_NOT_KNOWN,
} from '../../src/domain/patient/patient.js';
import type { Patient } from '../../src/domain/patient/patient.js';
import {
  CLOSURE_REASONS,
  DELIVERY_MODES,
  DIAGNOSES,
  NOT_DONE_REASONS,
  PATHWAYS,
  REFERRAL_SOURCES,
  SAFETY_SCREENS,
  SESSION_MODES,
  SEXES_AT_BIRTH,
  STOP_REASONS,
  TEST_PLACES,
  TIMEPOINTS,
  TRIAGE_DECISIONS,
  WALKING_AIDS,
} from '../../src/domain/referral/closed-sets.js';
import type { Referral } from '../../src/domain/referral/referral.js';
import type { Session } from '../../src/domain/session/session.js';
import type { CourseToSend } from '../../src/fhir/course/course-to-send.js';
import { anyDay } from './arbitrary-facts.js';

/** Courses of every shape that the record can hold, related only as far as a bundle relates them. */

const uuid = fc.uuid();
const words = fc.constantFrom('Sandwort', 'O’Dúnlin-Avocet', '<b>"&amp;\'', 'غ ن', 'Two\nlines', '0');
const orNone = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null });
const oneOf = <T>(values: readonly T[]) => fc.constantFrom(...values);
const upTo = (max: number) => orNone(fc.integer({ min: 0, max }));
const halves = (max: number) => orNone(fc.integer({ min: 0, max: max * 2 }).map((value) => value / 2));
const notDoneReason = orNone(oneOf(NOT_DONE_REASONS));

const patient: fc.Arbitrary<Patient> = fc.record({
  id: uuid,
  version: fc.constant(1),
  mergedInto: fc.constant(null),
  nhsNumber: fc.constantFrom('9990000018', null),
  nhsNumberMissingReason: orNone(oneOf(NHS_NUMBER_MISSING_REASONS)),
  familyName: words,
  givenName: words,
  bornOn: anyDay,
  sexAtBirth: oneOf(SEXES_AT_BIRTH),
  gender: oneOf(GENDERS),
  ethnicCategory: oneOf(ETHNIC_CATEGORIES),
  deprivationQuintile: orNone(fc.integer({ min: 1, max: 5 })),
  deprivationIndexYear: orNone(fc.integer({ min: 2000, max: 2100 })),
  smokingStatus: oneOf(SMOKING_STATUSES),
  interpreterNeed: oneOf(YES_NO_NOT_KNOWN),
  livesAlone: oneOf(YES_NO_NOT_KNOWN),
  homeOxygen: oneOf(YES_NO_NOT_KNOWN),
  gpPracticeCode: fc.constantFrom('DEMO42', null),
});

const referral: fc.Arbitrary<Referral> = fc.record({
  id: uuid,
  patientId: uuid,
  version: fc.constant(1),
  siteId: uuid,
  commissionerId: orNone(uuid),
  receivedOn: anyDay,
  source: oneOf(REFERRAL_SOURCES),
  diagnosis: oneOf(DIAGNOSES),
  otherConditions: orNone(words),
  pathway: oneOf(PATHWAYS),
  hospitalDischargedOn: orNone(anyDay),
  mrcGrade: orNone(fc.integer({ min: 1, max: 5 })),
  deliveryMode: orNone(oneOf(DELIVERY_MODES)),
  plannedStartOn: orNone(anyDay),
  plannedSessions: orNone(fc.integer({ min: 1, max: 60 })),
  plannedWeeks: orNone(fc.integer({ min: 1, max: 52 })),
  exercisePlanGivenOn: orNone(anyDay),
  triage: orNone(fc.record({ decision: oneOf(TRIAGE_DECISIONS), decidedOn: anyDay, reason: orNone(words) })),
  offers: fc.constant([]),
  closure: orNone(fc.record({ closedOn: anyDay, reason: oneOf(CLOSURE_REASONS), note: orNone(words) })),
  enteredInError: fc.constant(null),
});

const walk: fc.Arbitrary<WalkTestEntry> = fc.record({
  test: oneOf(WALK_TESTS.map(({ id }) => id)),
  attempt: fc.constantFrom(1, 2),
  place: oneOf(TEST_PLACES),
  distanceM: upTo(1020),
  level: upTo(12),
  shuttles: upTo(14),
  timeS: upTo(1200),
  speedLevel: upTo(16),
  courseLengthM: upTo(50),
  walkingAid: orNone(oneOf(WALKING_AIDS)),
  oxygenLPerMin: halves(15),
  startSpo2Percent: upTo(100),
  lowestSpo2Percent: upTo(100),
  startHeartRateBpm: upTo(220),
  peakHeartRateBpm: upTo(230),
  startBreathlessness: halves(10),
  endBreathlessness: halves(10),
  startFatigue: halves(10),
  endFatigue: halves(10),
  stops: upTo(20),
  stopReason: orNone(oneOf(STOP_REASONS)),
  notDoneReason,
});

const stand: fc.Arbitrary<SitToStandEntry> = fc.record({
  test: oneOf(SIT_TO_STAND_TESTS.map(({ id }) => id)),
  place: oneOf(TEST_PLACES),
  repetitions: upTo(60),
  timeS: halves(60),
  handsUsed: orNone(fc.boolean()),
  chairHeightCm: halves(60),
  notDoneReason,
});

const filled: fc.Arbitrary<QuestionnaireEntry> = oneOf(QUESTIONNAIRES).chain(({ id, items, forms }) =>
  fc.record({
    questionnaire: fc.constant(id),
    form: orNone(oneOf([...forms, 'own'])),
    items: orNone(fc.tuple(...items.map(({ min, max }) => orNone(fc.integer({ min, max }))))),
    typedScores: fc.constant([]),
    notDoneReason,
  }),
);

const strength: fc.Arbitrary<PhysicalTestEntry> = oneOf(PHYSICAL_TESTS).chain(({ id, conditions, parts }) =>
  fc.record({
    test: fc.constant(id),
    place: oneOf(TEST_PLACES),
    conditions: fc.record(
      Object.fromEntries(conditions.map((condition) => [condition.id, oneOf(condition.values)])),
    ),
    parts: orNone(
      fc.record(
        Object.fromEntries(
          parts.map((part) => [part.id, fc.oneof(fc.constant('unable' as const), fc.integer({ max: 60 }))]),
        ),
      ),
    ),
    measure: fc.constant(null),
    value: upTo(100),
    notDoneReason,
  }),
);

const score = fc
  .tuple(fc.integer({ min: -300, max: 2000 }), fc.integer({ min: 1, max: 20 }))
  .map(([top, bottom]) => fraction(top, bottom));

const once = <T>(value: fc.Arbitrary<T>, keyOf: (value: T) => string, maxLength: number) =>
  fc.uniqueArray(value, { selector: keyOf, maxLength });

const entry = fc.record({
  timepoint: oneOf(TIMEPOINTS),
  assessedOn: anyDay,
  siteId: uuid,
  heightCm: halves(220),
  weightKg: halves(300),
  spirometry: orNone(
    fc.record({ fev1L: halves(7), fev1PercentPredicted: upTo(150), fev1FvcPercent: upTo(100) }),
  ),
  resting: orNone(
    fc.record({
      spo2Percent: upTo(100),
      heartRateBpm: upTo(220),
      systolicMmHg: upTo(280),
      diastolicMmHg: upTo(160),
    }),
  ),
  safetyScreen: oneOf(SAFETY_SCREENS),
  safetyNote: orNone(words),
  safetyFindings: fc.constantFrom<readonly string[]>([], ['no-such-item']),
  walkTests: once(walk, ({ test, attempt }) => `${test} ${attempt}`, 4),
  sitToStands: once(stand, ({ test }) => test, 3),
  questionnaires: once(filled, ({ questionnaire }) => questionnaire, 4),
  physicalTests: once(strength, ({ test }) => test, 3),
  notes: orNone(words),
  confirmed: fc.constant([]),
});

const assessment: fc.Arbitrary<Assessment> = fc
  .tuple(entry, uuid, orNone(words), score)
  .map(([typed, id, correctionReason, value]): Assessment => ({
    entry: typed,
    scores: typed.questionnaires.flatMap(({ questionnaire }) =>
      (QUESTIONNAIRES.find((known) => known.id === questionnaire)?.measures ?? []).map((measure) => ({
        questionnaire,
        measure: measure.id,
        value,
        basis: 'items' as const,
      })),
    ),
    physicalResults: typed.physicalTests.flatMap(({ test, notDoneReason: reason }) =>
      (reason === null ? (PHYSICAL_TESTS.find((known) => known.id === test)?.measures ?? []) : []).map(
        (measure) => ({ test, measure: measure.id, value, basis: 'typed' as const }),
      ),
    ),
    id,
    version: 1,
    versionId: id,
    referralId: id,
    recordedAt: '2026-04-20T10:00:00.000Z',
    recordedBy: id,
    correctionReason,
    supersededAt: null,
    enteredInError: null,
  }));

const session: fc.Arbitrary<Session> = fc.record({
  id: uuid,
  version: fc.constant(1),
  siteId: uuid,
  heldOn: anyDay,
  mode: oneOf(SESSION_MODES),
  isSupervised: fc.boolean(),
  enteredInError: fc.constant(null),
});

const few = fc.integer({ min: 0, max: 24 });

/** A course of a person, as it would be sent. */
export const anyCourse: fc.Arbitrary<CourseToSend> = fc.record({
  patient,
  referral,
  stage: oneOf(STAGES),
  asAt: anyDay,
  writtenAt: fc.constant('2026-11-25T10:00:00.000Z'),
  teamName: words,
  siteNames: fc.constant(new Map<string, string>()),
  commissionerNames: fc.constant(new Map<string, string>()),
  assessments: fc.array(assessment, { maxLength: 2 }),
  sessions: fc.array(session, { maxLength: 3 }),
  attendance: fc.record({
    planned: few,
    cancelledByService: few,
    expected: few,
    attended: few,
    didNotAttend: few,
    cancelledByPatient: few,
  }),
});
