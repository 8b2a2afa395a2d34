import { resultsOf } from '../../domain/assessment/results.js';
import type {
  PhysicalResult,
  PhysicalTestEntry,
  Score,
  SitToStandEntry,
  WalkTestEntry,
} from '../../domain/assessment/assessment.js';
import { plainDate } from '../../domain/calendar/plain-date.js';
import type { AssessmentFacts, ContactFacts, ReferralFacts } from '../../domain/cohort/referral-facts.js';
import {
  ATTENDANCE_OUTCOMES,
  DELIVERY_MODES,
  DIAGNOSES,
  PATHWAYS,
  REFERRAL_SOURCES,
  SESSION_MODES,
  SEXES_AT_BIRTH,
  TIMEPOINTS,
} from '../../domain/referral/closed-sets.js';
import {
  physicalResultFromRow,
  physicalTestFromRow,
  scoreFromRow,
  sitToStandFromRow,
  walkTestFromRow,
} from '../assessments/row-mapper.js';
import type { Executor } from '../connection.js';
import { closureFromRow, offerFromRow, triageFromRow } from '../referrals/row-mapper.js';
import { memberOf, optionalDate, optionalMemberOf, scaledDown } from '../row-mapping.js';

/** What counts as planned where a referral does not say. */
export interface PlannedDefaults {
  readonly plannedSessions: number;
  readonly plannedWeeks: number;
}

/** Ids in one statement: well below the number of parameters that either database allows. */
const CHUNK = 1000;

/**
 * The facts of some referrals of a team, in the order of their ids; an id of another team is left out.
 */
export async function loadReferralFacts(
  db: Executor,
  teamId: string,
  ids: readonly string[],
  defaults: PlannedDefaults,
): Promise<readonly ReferralFacts[]> {
  const facts: ReferralFacts[] = [];
  for (let start = 0; start < ids.length; start += CHUNK) {
    facts.push(...(await loadChunk(db, teamId, ids.slice(start, start + CHUNK), defaults)));
  }
  return facts;
}

async function loadChunk(
  db: Executor,
  teamId: string,
  ids: readonly string[],
  defaults: PlannedDefaults,
): Promise<readonly ReferralFacts[]> {
  const referrals = await db
    .selectFrom('referral')
    .innerJoin('patient', 'patient.id', 'referral.patient_id')
    .selectAll('referral')
    .select(['patient.sex_at_birth', 'patient.born_on'])
    .where('referral.team_id', '=', teamId)
    .where('referral.id', 'in', ids)
    .orderBy('referral.id')
    .execute();
  const known = referrals.map((row) => row.id);
  const offers = groupBy(
    await db.selectFrom('offer').selectAll().where('referral_id', 'in', known).orderBy('id').execute(),
    (row) => row.referral_id,
  );
  const contacts = await loadContacts(db, known);
  const assessments = await loadAssessmentFacts(db, known);
  return referrals.map((row) => ({
    referralId: row.id,
    patientId: row.patient_id,
    siteId: row.site_id,
    commissionerId: row.commissioner_id,
    receivedOn: plainDate(row.received_on),
    source: memberOf(REFERRAL_SOURCES, row.source),
    diagnosis: memberOf(DIAGNOSES, row.diagnosis),
    pathway: memberOf(PATHWAYS, row.pathway),
    hospitalDischargedOn: optionalDate(row.hospital_discharged_on),
    mrcGrade: row.mrc_grade,
    deliveryMode: optionalMemberOf(DELIVERY_MODES, row.delivery_mode),
    triage: triageFromRow(row),
    offers: (offers.get(row.id) ?? []).map(offerFromRow),
    plannedStartOn: optionalDate(row.planned_start_on),
    plannedSessions: row.planned_sessions ?? defaults.plannedSessions,
    plannedWeeks: row.planned_weeks ?? defaults.plannedWeeks,
    exercisePlanGivenOn: optionalDate(row.exercise_plan_given_on),
    closure: closureFromRow(row),
    patient: { sexAtBirth: memberOf(SEXES_AT_BIRTH, row.sex_at_birth), bornOn: plainDate(row.born_on) },
    contacts: contacts.get(row.id) ?? [],
    assessments: assessments.get(row.id) ?? [],
  }));
}

async function loadContacts(
  db: Executor,
  referralIds: readonly string[],
): Promise<ReadonlyMap<string, readonly ContactFacts[]>> {
  const rows = await db
    .selectFrom('attendance')
    .innerJoin('session', 'session.id', 'attendance.session_id')
    .select([
      'attendance.referral_id',
      'attendance.outcome',
      'session.held_on',
      'session.mode',
      'session.is_supervised',
    ])
    .where('attendance.referral_id', 'in', referralIds)
    .where('attendance.superseded_at', 'is', null)
    .orderBy('session.held_on')
    .orderBy('session.id')
    .execute();
  return mapGroups(
    groupBy(rows, (row) => row.referral_id),
    (row) => ({
      heldOn: plainDate(row.held_on),
      mode: memberOf(SESSION_MODES, row.mode),
      isSupervised: row.is_supervised === 1,
      outcome: memberOf(ATTENDANCE_OUTCOMES, row.outcome),
    }),
  );
}

async function loadAssessmentFacts(
  db: Executor,
  referralIds: readonly string[],
): Promise<ReadonlyMap<string, readonly AssessmentFacts[]>> {
  const current = db
    .selectFrom('assessment')
    .where('assessment.referral_id', 'in', referralIds)
    .where('assessment.superseded_at', 'is', null);
  const assessments = await current
    .select(['version_id', 'id', 'referral_id', 'timepoint', 'assessed_on', 'height_mm', 'weight_g'])
    .orderBy('assessed_on')
    .orderBy('id')
    .execute();
  const walks = groupBy(
    await current
      .innerJoin('walk_test', 'walk_test.assessment_version_id', 'assessment.version_id')
      .selectAll('walk_test')
      .orderBy('walk_test.attempt')
      .execute(),
    (row) => row.assessment_version_id,
  );
  const stands = groupBy(
    await current
      .innerJoin('sit_to_stand', 'sit_to_stand.assessment_version_id', 'assessment.version_id')
      .selectAll('sit_to_stand')
      .execute(),
    (row) => row.assessment_version_id,
  );
  const questionnaires = groupBy(
    await current
      .innerJoin('questionnaire', 'questionnaire.assessment_version_id', 'assessment.version_id')
      .select([
        'questionnaire.assessment_version_id',
        'questionnaire.instrument',
        'questionnaire.form',
        'questionnaire.not_done_reason',
      ])
      .execute(),
    (row) => row.assessment_version_id,
  );
  const scores = groupBy(
    await current
      .innerJoin('score', 'score.assessment_version_id', 'assessment.version_id')
      .selectAll('score')
      .execute(),
    (row) => row.assessment_version_id,
  );
  const physicalTests = groupBy(
    await current
      .innerJoin('physical_test', 'physical_test.assessment_version_id', 'assessment.version_id')
      .selectAll('physical_test')
      .execute(),
    (row) => row.assessment_version_id,
  );
  return mapGroups(
    groupBy(assessments, (row) => row.referral_id),
    (row) =>
      assessmentFacts(row, {
        walkTests: (walks.get(row.version_id) ?? []).map(walkTestFromRow),
        sitToStands: (stands.get(row.version_id) ?? []).map(sitToStandFromRow),
        questionnaires: (questionnaires.get(row.version_id) ?? []).map((found) => ({
          questionnaire: found.instrument,
          form: found.form,
          notDoneReason: found.not_done_reason,
        })),
        scores: (scores.get(row.version_id) ?? []).map(scoreFromRow),
        physicalTests: (physicalTests.get(row.version_id) ?? []).map(physicalTestFromRow),
        physicalResults: (physicalTests.get(row.version_id) ?? []).flatMap(physicalResultFromRow),
      }),
  );
}

function assessmentFacts(
  row: {
    id: string;
    timepoint: string;
    assessed_on: string;
    height_mm: number | null;
    weight_g: number | null;
  },
  tests: {
    walkTests: readonly WalkTestEntry[];
    sitToStands: readonly SitToStandEntry[];
    questionnaires: readonly { questionnaire: string; form: string | null; notDoneReason: string | null }[];
    scores: readonly Score[];
    physicalTests: readonly PhysicalTestEntry[];
    physicalResults: readonly PhysicalResult[];
  },
): AssessmentFacts {
  return {
    assessmentId: row.id,
    timepoint: memberOf(TIMEPOINTS, row.timepoint),
    assessedOn: plainDate(row.assessed_on),
    heightCm: scaledDown(row.height_mm, 10),
    weightKg: scaledDown(row.weight_g, 1000),
    results: resultsOf({ entry: tests, scores: tests.scores, physicalResults: tests.physicalResults }),
    notDone: [
      ...tests.walkTests.map((walk) => ({ testId: walk.test, reason: walk.notDoneReason })),
      ...tests.sitToStands.map((stand) => ({ testId: stand.test, reason: stand.notDoneReason })),
      ...tests.physicalTests.map((test) => ({ testId: test.test, reason: test.notDoneReason })),
      ...tests.questionnaires.map((found) => ({ testId: found.questionnaire, reason: found.notDoneReason })),
    ].flatMap(({ testId, reason }) => (reason === null ? [] : [{ testId, reason }])),
  };
}

function groupBy<Row>(
  rows: readonly Row[],
  keyOf: (row: Row) => string,
): ReadonlyMap<string, readonly Row[]> {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const key = keyOf(row);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [row]);
    else group.push(row);
  }
  return groups;
}

function mapGroups<Row, Value>(
  groups: ReadonlyMap<string, readonly Row[]>,
  toValue: (row: Row) => Value,
): ReadonlyMap<string, readonly Value[]> {
  return new Map([...groups].map(([key, rows]) => [key, rows.map(toValue)]));
}
