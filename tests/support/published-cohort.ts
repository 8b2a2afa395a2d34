import { sql } from 'kysely';
import { expect } from 'vitest';
import type { z } from 'zod';
import { plainDate } from '../../src/domain/calendar/plain-date.js';
import type { ClosureReason, Diagnosis } from '../../src/domain/referral/closed-sets.js';
import type { Outcome } from '../../src/domain/refusal/refusal.js';
import { NewAssessment } from '../../src/http/assessments/assessment-schema.js';
import { NewPatient } from '../../src/http/patients/patient-schema.js';
import { NewClosure } from '../../src/http/referrals/event-schema.js';
import { NewReferral } from '../../src/http/referrals/referral-schema.js';
import { QuarterlyReportShown } from '../../src/http/reports/quarterly-schema.js';
import { recordAssessment } from '../../src/usecases/assessments/record-assessment.js';
import type { TeamMember } from '../../src/usecases/context.js';
import { registerPatient } from '../../src/usecases/patients/register-patient.js';
import { closeReferral } from '../../src/usecases/referrals/change-referral.js';
import { registerReferral } from '../../src/usecases/referrals/register-referral.js';
import { holdSession, recordAttendances } from '../../src/usecases/sessions/keep-register.js';
import { actorByToken } from '../../src/usecases/sign-in.js';
import { aPatient, aReferralBody, aShuttleWalk, aSixMinuteWalk } from './entries.js';
import type { Body } from './entries.js';
import { startApp } from './start-app.js';
import type { TestApp } from './start-app.js';

/** The report as the API gives it. */
export type ReportShown = z.output<typeof QuarterlyReportShown>;
export type OutcomeShown = ReportShown['outcomes'][number];

/** One member of a cohort: what was measured at each end, as the API takes it; null where there was no assessment. */
export interface Member {
  readonly baseline: Body | null;
  readonly discharge: Body | null;
  /** Of the twelve classes, from the first one on. One is enough to have started. */
  readonly attended?: number;
  readonly closedAs?: ClosureReason;
}

/** The quarter in which every cohort is received, starts and is discharged. */
const QUARTER = '2026-27-Q1';
const RECEIVED_ON = '2026-04-02';
const BASELINE_ON = '2026-04-10';
const DISCHARGE_ON = '2026-06-08';
const CLOSED_ON = '2026-06-10';
/** Twice a week for six weeks. */
const CLASSES_ON = [
  ...['2026-04-20', '2026-04-23', '2026-04-27', '2026-04-30', '2026-05-04', '2026-05-07'],
  ...['2026-05-11', '2026-05-14', '2026-05-18', '2026-05-21', '2026-05-25', '2026-05-28'],
];

/**
 * Records a cohort in a service with a database of its own, and reads its quarterly report through the API.
 *
 * People are entered through the use cases behind the routes, with bodies read by the schemas of the routes: the same
 * rules at a tenth of the time. What is wrong with an entry stops the test.
 */
export async function reportOnCohort(
  members: readonly Member[],
  diagnosis: Diagnosis = 'copd',
): Promise<ReportShown> {
  const app = await startApp();
  // Thousands of entries one by one: they need not outlive a power cut here.
  await sql`PRAGMA synchronous = OFF`.execute(app.record.connection.db);
  try {
    await enter(app, members, diagnosis);
    return await readReport(app);
  } finally {
    await app.close();
  }
}

/** The report of the cohorts' quarter. */
export async function readReport(app: TestApp): Promise<ReportShown> {
  const response = await app.as('lead').get(`/api/v1/reports/quarterly?period=${QUARTER}`);
  expect(response.status, response.text).toBe(200);
  return QuarterlyReportShown.parse(response.body);
}

/** The outcomes of a measure. */
export function outcomeOf(report: ReportShown, measureId: string): OutcomeShown {
  const found = report.outcomes.find((outcome) => outcome.measureId === measureId);
  if (found === undefined) throw new Error(`The report has no outcomes of ${measureId}.`);
  return found;
}

/** One cell of the completion table. */
export function completionOf(report: ReportShown, reading: string, of: 'started' | 'assessed' | 'referred') {
  const row = report.completion.find((each) => each.reading === reading);
  const cell = row?.cells.find((each) => each.of === of);
  if (row === undefined || cell === undefined)
    throw new Error(`There is no completion by ${reading} of ${of}.`);
  return { ruleId: row.ruleId, isHeadline: row.isHeadline, figure: cell.all };
}

/** An assessment with one incremental shuttle walk. */
export function shuttleWalk(distanceM: number): Body {
  return { walkTests: [aShuttleWalk(distanceM, 1)] };
}

/** An assessment with one six-minute walk. */
export function sixMinuteWalk(distanceM: number): Body {
  return { walkTests: [aSixMinuteWalk(distanceM)] };
}

/** A questionnaire with its scores as they were added up by hand. */
export function typedScores(
  questionnaire: string,
  scores: Readonly<Record<string, number>>,
  form: string | null = null,
): Body {
  return {
    questionnaire,
    form,
    typedScores: Object.entries(scores).map(([measure, value]) => ({ measure, value })),
  };
}

/** Answers that add up to a sum, as even as they can be. */
export function itemsAddingUpTo(sum: number, itemCount: number): readonly number[] {
  const least = Math.floor(sum / itemCount);
  return Array.from({ length: itemCount }, (_item, index) =>
    index < sum - least * itemCount ? least + 1 : least,
  );
}

async function enter(app: TestApp, members: readonly Member[], diagnosis: Diagnosis): Promise<void> {
  const { context } = app.record;
  const actor = await leadOf(app);
  const ids: string[] = [];
  for (const { baseline, discharge } of members) {
    const typedPatient = aPatient({ nhsNumber: null, nhsNumberMissingReason: 'not-yet-traced' });
    const patient = valueOf(await registerPatient(context, actor, NewPatient.parse(typedPatient)));
    const typedReferral = aReferralBody(patient.id, app.siteId, { receivedOn: RECEIVED_ON, diagnosis });
    const { patientId, ...details } = NewReferral.parse({
      ...typedReferral,
      plannedSessions: CLASSES_ON.length,
    });
    const referral = valueOf(await registerReferral(context, actor, patientId, details));
    const visits = [
      { timepoint: 'baseline', assessedOn: BASELINE_ON, tests: baseline },
      { timepoint: 'discharge', assessedOn: DISCHARGE_ON, tests: discharge },
    ];
    for (const { tests, ...visit } of visits) {
      if (tests === null) continue;
      const entry = NewAssessment.parse({ ...visit, siteId: app.siteId, ...tests });
      valueOf(await recordAssessment(context, actor, referral.id, entry));
    }
    ids.push(referral.id);
  }
  await keepRegisters(app, actor, members, ids);
  for (const [index, { closedAs }] of members.entries()) {
    if (closedAs === undefined) continue;
    const typed = NewClosure.parse({ closedOn: CLOSED_ON, reason: closedAs });
    // Nothing but its registration has changed the referral.
    const closure = { ...typed, basedOn: [1] };
    valueOf(await closeReferral(context, actor, ids[index] ?? '', closure));
  }
}

async function keepRegisters(
  app: TestApp,
  actor: TeamMember,
  members: readonly Member[],
  ids: readonly string[],
): Promise<void> {
  const { context } = app.record;
  for (const [index, heldOn] of CLASSES_ON.entries()) {
    const present = ids.filter((_id, member) => (members[member]?.attended ?? 1) > index);
    if (present.length === 0) return;
    const session = {
      siteId: app.siteId,
      heldOn: plainDate(heldOn),
      mode: 'centre',
      isSupervised: true,
    } as const;
    const { id, version } = valueOf(await holdSession(context, actor, session));
    const attendances = present.map((referralId) => ({ referralId, outcome: 'attended' as const }));
    valueOf(await recordAttendances(context, actor, id, { attendances, basedOn: [version] }));
  }
}

async function leadOf(app: TestApp): Promise<TeamMember> {
  const actor = await actorByToken(app.record.context, app.tokens.lead);
  if (actor === null || actor.role === 'commissioner') throw new Error('The test team has no lead.');
  return actor;
}

function valueOf<Value>(outcome: Outcome<Value>): Value {
  if (outcome.kind === 'refused') throw new Error(JSON.stringify(outcome.refusal));
  return outcome.value;
}
