import type { AssessmentFacts, ContactFacts, ReferralFacts, Result } from '../../cohort/referral-facts.js';
import { toNumber } from '../../exact/fraction.js';
import { findMeasure, MEASURES } from '../../measures/catalogue.js';
import { PHYSICAL_TESTS, QUESTIONNAIRES, SIT_TO_STAND_TESTS, WALK_TESTS } from '../../measures/registered.js';
import {
  ATTENDANCE_OUTCOMES,
  NOT_DONE_REASONS,
  OFFER_KINDS,
  OFFER_RESPONSES,
  SESSION_MODES,
  TIMEPOINTS,
} from '../../referral/closed-sets.js';
import { oneOf, TEXT, YES_NO } from '../column.js';
import type { ColumnKind } from '../record-table.js';
import { maskedDate } from './analysis-request.js';
import type { DateForm } from './analysis-request.js';
import { dateKind, given, maybe, ofReferral, tableOf } from './analysis-table.js';
import type { AnalysisColumn, AnalysisTable, OfReferral } from './analysis-table.js';

const idsOf = (entries: readonly { readonly id: string }[]): readonly string[] => entries.map(({ id }) => id);
const TESTS = idsOf([...WALK_TESTS, ...SIT_TO_STAND_TESTS, ...QUESTIONNAIRES, ...PHYSICAL_TESTS]);
const NUMBER: ColumnKind = { type: 'decimal' };

interface AtAssessment<Part> {
  readonly assessment: AssessmentFacts;
  readonly of: Part;
}

function assessmentColumns<Part>(dates: DateForm): readonly AnalysisColumn<OfReferral<AtAssessment<Part>>>[] {
  return [
    ofReferral(),
    given(
      'timepoint',
      oneOf(TIMEPOINTS),
      'Which assessment of the course',
      ({ part }) => part.assessment.timepoint,
    ),
    given('assessed', dateKind(dates), 'When', ({ part }, masks) =>
      maskedDate(masks, part.assessment.assessedOn),
    ),
  ];
}

/** What was measured: the better of two walks, the score of a questionnaire. */
export function resultTable(dates: DateForm): AnalysisTable {
  const columns: readonly AnalysisColumn<OfReferral<AtAssessment<Result>>>[] = [
    ...assessmentColumns<Result>(dates),
    given('measure', oneOf(idsOf(MEASURES)), 'What was measured', ({ part }) => part.of.measureId),
    given('value', NUMBER, 'The result; of two walks the better', ({ part }) => toNumber(part.of.value)),
    given('unit', TEXT, 'Unit of the measure', ({ part }) => findMeasure(part.of.measureId)?.unit ?? ''),
    maybe(
      'had_practice_walk',
      YES_NO,
      'Whether there were two walks; empty where one is asked for',
      ({ part }) => (part.of.hadPracticeWalk === null ? null : Number(part.of.hadPracticeWalk)),
    ),
    given('is_ceiling', YES_NO, 'Whether the test ended at its ceiling', ({ part }) =>
      Number(part.of.isCeiling),
    ),
    maybe(
      'conditions',
      TEXT,
      'What must be the same at both ends, as name=value; nothing behind the sign: not recorded',
      ({ part }) => conditionText(part.of.conditions),
    ),
  ];
  const described = {
    name: 'result',
    holds: 'A result of a measure at an assessment',
    key: ['referral', 'timepoint', 'assessed', 'measure'],
  };
  return tableOf(described, columns, ({ facts }) => atAssessments(facts, ({ results }) => results));
}

/** Tests and questionnaires that were not done, with the reason. */
export function notDoneTable(dates: DateForm): AnalysisTable {
  type NotDone = AssessmentFacts['notDone'][number];
  const columns: readonly AnalysisColumn<OfReferral<AtAssessment<NotDone>>>[] = [
    ...assessmentColumns<NotDone>(dates),
    given('test', oneOf(TESTS), 'The test or questionnaire', ({ part }) => part.of.testId),
    given('reason', oneOf(NOT_DONE_REASONS), 'Why it was not done', ({ part }) => part.of.reason),
  ];
  const described = {
    name: 'not_done',
    holds: 'A test or a questionnaire that was recorded as not done',
    key: ['referral', 'timepoint', 'assessed', 'test'],
  };
  return tableOf(described, columns, ({ facts }) => atAssessments(facts, ({ notDone }) => notDone));
}

/** Sessions at which somebody was expected. */
export function sessionTable(dates: DateForm): AnalysisTable {
  const columns: readonly AnalysisColumn<OfReferral<ContactFacts>>[] = [
    ofReferral(),
    given('held', dateKind(dates), 'When', ({ part }, masks) => maskedDate(masks, part.heldOn)),
    given('mode', oneOf(SESSION_MODES), 'Where people took part', ({ part }) => part.mode),
    given('is_supervised', YES_NO, 'Whether it was supervised', ({ part }) => Number(part.isSupervised)),
    given('outcome', oneOf(ATTENDANCE_OUTCOMES), 'What became of the person', ({ part }) => part.outcome),
  ];
  const described = {
    name: 'session',
    holds:
      'A session at which a person was expected; of sessions known by their counts only there are no rows',
    key: [],
  };
  return tableOf(described, columns, ({ facts }) => facts.contacts.map((part) => ({ facts, part })));
}

/** Offers of an assessment or a programme. */
export function offerTable(dates: DateForm): AnalysisTable {
  const date = dateKind(dates);
  const columns: readonly AnalysisColumn<OfReferral<ReferralFacts['offers'][number]>>[] = [
    ofReferral(),
    given('kind', oneOf(OFFER_KINDS), 'What was offered', ({ part }) => part.kind),
    given('offered', date, 'When', ({ part }, masks) => maskedDate(masks, part.offeredOn)),
    maybe('appointment', date, 'For when', ({ part }, masks) => maskedDate(masks, part.appointmentOn)),
    given('response', oneOf(OFFER_RESPONSES), 'What the person said', ({ part }) => part.response),
  ];
  const described = { name: 'offer', holds: 'An offer of an assessment or a programme', key: [] };
  return tableOf(described, columns, ({ facts }) => facts.offers.map((part) => ({ facts, part })));
}

function atAssessments<Part>(
  facts: ReferralFacts,
  partsOf: (assessment: AssessmentFacts) => readonly Part[],
): readonly OfReferral<AtAssessment<Part>>[] {
  return facts.assessments.flatMap((assessment) =>
    partsOf(assessment).map((of) => ({ facts, part: { assessment, of } })),
  );
}

function conditionText(conditions: Result['conditions']): string | null {
  const parts = Object.entries(conditions).map(([name, value]) => `${name}=${value ?? ''}`);
  return parts.length === 0 ? null : parts.sort().join('; ');
}
