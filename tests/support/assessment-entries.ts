import type {
  AssessmentEntry,
  PhysicalTestEntry,
  QuestionnaireEntry,
  SitToStandEntry,
  WalkTestEntry,
} from '../../src/domain/assessment/assessment.js';
import type { AssessmentContext } from '../../src/domain/assessment/check-assessment.js';
import { EMPTY_WALK } from '../../src/domain/assessment/empty-walk.js';
import type { Findings } from '../../src/domain/assessment/field-limits.js';
import { plainDate } from '../../src/domain/calendar/plain-date.js';

/** An entry of a baseline of 20 April 2026 with nothing measured. */
export function anEntry(changes: Partial<AssessmentEntry> = {}): AssessmentEntry {
  return {
    timepoint: 'baseline',
    assessedOn: plainDate('2026-04-20'),
    siteId: 'site',
    heightCm: null,
    weightKg: null,
    spirometry: null,
    resting: null,
    safetyScreen: 'no-concern',
    safetyNote: null,
    safetyFindings: [],
    walkTests: [],
    sitToStands: [],
    questionnaires: [],
    physicalTests: [],
    notes: null,
    confirmed: [],
    ...changes,
  };
}

/** A person born in 1954, referred on 2 April 2026; today is 25 November 2026. */
export function aContext(changes: Partial<AssessmentContext> = {}): AssessmentContext {
  return {
    today: plainDate('2026-11-25'),
    bornOn: plainDate('1954-03-09'),
    receivedOn: plainDate('2026-04-02'),
    closedOn: null,
    others: [],
    baseline: new Map(),
    ...changes,
  };
}

/** A first attempt at an incremental shuttle walk with nothing filled in. */
export function aWalk(changes: Partial<WalkTestEntry> = {}): WalkTestEntry {
  return { ...EMPTY_WALK, test: 'incremental-shuttle-walk', attempt: 1, ...changes };
}

/** A one-minute sit-to-stand with nothing filled in. */
export function aStand(changes: Partial<SitToStandEntry> = {}): SitToStandEntry {
  return {
    test: 'one-minute-sit-to-stand',
    place: 'course',
    repetitions: null,
    timeS: null,
    handsUsed: null,
    chairHeightCm: null,
    notDoneReason: null,
    ...changes,
  };
}

/** A COPD Assessment Test with nothing filled in. */
export function aQuestionnaire(changes: Partial<QuestionnaireEntry> = {}): QuestionnaireEntry {
  return {
    questionnaire: 'copd-assessment-test',
    form: null,
    items: null,
    typedScores: [],
    notDoneReason: null,
    ...changes,
  };
}

/** A handgrip test with nothing filled in. */
export function aPhysicalTest(changes: Partial<PhysicalTestEntry> = {}): PhysicalTestEntry {
  return {
    test: 'handgrip-strength',
    place: 'course',
    conditions: {},
    parts: null,
    measure: null,
    value: null,
    notDoneReason: null,
    ...changes,
  };
}

/** Code and pointer of everything that was found, faults first; queries have the code `please-check`. */
export function foundIn({ faults, queries }: Findings): readonly string[] {
  return [...faults, ...queries].map(({ code, pointer }) => `${code} ${pointer}`);
}
