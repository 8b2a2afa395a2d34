import { AGE_BAND_IDS, ETHNIC_GROUP_IDS, ethnicGroupOf } from '../../cohort/dimensions.js';
import type { Course } from '../../pathway/course.js';
import { SMOKING_STATUSES, YES_NO_NOT_KNOWN } from '../../patient/patient.js';
import {
  CLOSURE_REASONS,
  DELIVERY_MODES,
  DIAGNOSES,
  PATHWAYS,
  REFERRAL_SOURCES,
  SEXES_AT_BIRTH,
  TRIAGE_DECISIONS,
} from '../../referral/closed-sets.js';
import { oneOf, whole, YES_NO } from '../column.js';
import { maskedAge, maskedDate } from './analysis-request.js';
import type { AgeForm, DateForm } from './analysis-request.js';
import { dateKind, given, maybe, PSEUDONYM, tableOf } from './analysis-table.js';
import type { AnalysisColumn, AnalysisTable } from './analysis-table.js';

const SESSIONS = whole(0, 1000, 'sessions');

/** One row a referral, with the person as the record has them now. */
export function referralTable(dates: DateForm, ages: AgeForm): AnalysisTable {
  const date = dateKind(dates);
  const age = ages === 'years' ? whole(0, 90, 'years') : oneOf(AGE_BAND_IDS);
  const columns: readonly AnalysisColumn<Course>[] = [
    given('referral', PSEUDONYM, 'Pseudonym of the referral', ({ facts }, { pseudonym }) =>
      pseudonym('referral', facts.referralId),
    ),
    given(
      'person',
      PSEUDONYM,
      'Pseudonym of the person, who may have several referrals',
      ({ facts }, { pseudonym }) => pseudonym('person', facts.patientId),
    ),
    given('site', PSEUDONYM, 'Pseudonym of the site', ({ facts }, { pseudonym }) =>
      pseudonym('site', facts.siteId),
    ),
    maybe(
      'commissioner',
      PSEUDONYM,
      'Pseudonym of who pays',
      ({ facts: { commissionerId } }, { pseudonym }) =>
        commissionerId === null ? null : pseudonym('commissioner', commissionerId),
    ),
    given('received', date, 'When it was received', ({ facts }, masks) =>
      maskedDate(masks, facts.receivedOn),
    ),
    given('age_at_receipt', age, 'Age at receipt; of years, 90 stands for 90 and over', ({ facts }, masks) =>
      maskedAge(masks, facts.patient.bornOn, facts.receivedOn),
    ),
    given('sex_at_birth', oneOf(SEXES_AT_BIRTH), 'Sex at birth', ({ facts }) => facts.patient.sexAtBirth),
    given('ethnic_group', oneOf(ETHNIC_GROUP_IDS), 'Ethnic category in five groups', ({ facts }) =>
      ethnicGroupOf(facts.patient.ethnicCategory),
    ),
    maybe(
      'deprivation_quintile',
      whole(1, 5, 'fifth'),
      'Fifth of the index of deprivation: 1 most deprived, 5 least',
      ({ facts }) => facts.patient.deprivationQuintile,
    ),
    given('smoking_status', oneOf(SMOKING_STATUSES), 'Smoking', ({ facts }) => facts.patient.smokingStatus),
    given(
      'interpreter_need',
      oneOf(YES_NO_NOT_KNOWN),
      'Whether an interpreter is needed',
      ({ facts }) => facts.patient.interpreterNeed,
    ),
    given(
      'home_oxygen',
      oneOf(YES_NO_NOT_KNOWN),
      'Whether there is oxygen at home',
      ({ facts }) => facts.patient.homeOxygen,
    ),
    given(
      'is_first_referral',
      YES_NO,
      'Whether the team has no earlier referral of the person',
      ({ facts }) => Number(facts.isFirstReferral),
    ),
    given('source', oneOf(REFERRAL_SOURCES), 'Where it came from', ({ facts }) => facts.source),
    given('diagnosis', oneOf(DIAGNOSES), 'Primary diagnosis', ({ facts }) => facts.diagnosis),
    given('pathway', oneOf(PATHWAYS), 'Whether it followed an exacerbation', ({ facts }) => facts.pathway),
    maybe('hospital_discharged', date, 'When the person left hospital', ({ facts }, masks) =>
      maskedDate(masks, facts.hospitalDischargedOn),
    ),
    maybe('mrc_grade', whole(1, 5, 'grade'), 'MRC dyspnoea grade at referral', ({ facts }) => facts.mrcGrade),
    maybe(
      'triage_decision',
      oneOf(TRIAGE_DECISIONS),
      'What was decided at triage',
      ({ facts }) => facts.triage?.decision ?? null,
    ),
    maybe('triaged', date, 'When', ({ facts }, masks) => maskedDate(masks, facts.triage?.decidedOn ?? null)),
    maybe(
      'delivery_mode',
      oneOf(DELIVERY_MODES),
      'Where the programme was planned to take place',
      ({ facts }) => facts.deliveryMode,
    ),
    given('planned_sessions', SESSIONS, 'Supervised sessions planned', ({ facts }) => facts.plannedSessions),
    given('planned_weeks', whole(1, 52, 'weeks'), 'Weeks planned', ({ facts }) => facts.plannedWeeks),
    maybe('started', date, 'First supervised session attended', ({ startedOn }, masks) =>
      maskedDate(masks, startedOn),
    ),
    given(
      'sessions_attended',
      SESSIONS,
      'Supervised sessions attended',
      ({ attendance }) => attendance.attended,
    ),
    given(
      'sessions_did_not_attend',
      SESSIONS,
      'Supervised sessions not attended',
      ({ attendance }) => attendance.didNotAttend,
    ),
    given(
      'sessions_cancelled_by_patient',
      SESSIONS,
      'Supervised sessions that the person cancelled',
      ({ attendance }) => attendance.cancelledByPatient,
    ),
    given(
      'sessions_cancelled_by_service',
      SESSIONS,
      'Supervised sessions that the service cancelled',
      ({ attendance }) => attendance.cancelledByService,
    ),
    maybe('exercise_plan_given', date, 'When a written plan for exercise was given', ({ facts }, masks) =>
      maskedDate(masks, facts.exercisePlanGivenOn),
    ),
    maybe('closed', date, 'When it was closed; empty while it is open', ({ facts }, masks) =>
      maskedDate(masks, facts.closure?.closedOn ?? null),
    ),
    maybe(
      'closure_reason',
      oneOf(CLOSURE_REASONS),
      'Why it was closed',
      ({ facts }) => facts.closure?.reason ?? null,
    ),
  ];
  const described = {
    name: 'referral',
    holds: 'A referral; those registered or entered in error are left out',
    key: ['referral'],
  };
  return tableOf(described, columns, (course) => [course]);
}
