import type { Outcome } from '../src/domain/refusal/refusal.js';
import { correctAssessment, recordAssessment } from '../src/usecases/assessments/record-assessment.js';
import type { Context, TeamMember } from '../src/usecases/context.js';
import { correctPatient } from '../src/usecases/patients/correct-patient.js';
import { registerPatient } from '../src/usecases/patients/register-patient.js';
import {
  closeReferral,
  correctReferral,
  recordOffer,
  triageReferral,
} from '../src/usecases/referrals/change-referral.js';
import { registerReferral } from '../src/usecases/referrals/register-referral.js';
import { holdSession, recordAttendances } from '../src/usecases/sessions/keep-register.js';
import type { Deed } from './events.js';
import type { PlannedAssessment, PlannedCourse, PlannedSession } from './plan.js';

/** A team as it was set up: who acts, and the ids that have been given so far, by key of the plan. */
export interface Desk {
  readonly admin: TeamMember;
  /** Who sees the people of a site. */
  readonly clinicianAt: (siteName: string) => TeamMember;
  readonly siteIds: ReadonlyMap<string, string>;
  readonly commissionerIds: ReadonlyMap<string, string>;
  readonly patientIds: Map<string, string>;
  readonly referralIds: Map<string, string>;
  readonly assessmentIds: Map<PlannedAssessment, string>;
  /** Present versions of referrals, by id. */
  readonly referralVersions: Map<string, number>;
}

/** Nobody corrects anything twice in the demo. */
const FIRST = [1];

/**
 * Enters one thing through the use case that the API calls for it.
 *
 * @param context its clock stands at the day of the entry
 * @throws Error naming the refusal when the service refuses: a plan that breaks a rule is a bug
 */
export async function perform(context: Context, desk: Desk, deed: Deed): Promise<void> {
  switch (deed.kind) {
    case 'register':
      return register(context, desk, deed.course);
    case 'correct-person': {
      const { correction, key } = deed.person;
      if (correction === null) return;
      const change = { ...correction, basedOn: FIRST };
      need(deed.kind, await correctPatient(context, desk.admin, idOf(desk.patientIds, key), change));
      return;
    }
    case 'triage': {
      const id = idOf(desk.referralIds, deed.course.key);
      const decision = { ...deed.triage, mrcGrade: null, basedOn: presentOf(desk, id) };
      moveOn(
        desk,
        need(deed.kind, await triageReferral(context, desk.clinicianAt(deed.course.siteName), id, decision)),
      );
      return;
    }
    case 'offer': {
      const { kind, offeredOn, appointmentOn, response, respondedOn } = deed.offer;
      const id = idOf(desk.referralIds, deed.course.key);
      const offer = { kind, offeredOn, appointmentOn, response, respondedOn, basedOn: presentOf(desk, id) };
      moveOn(desk, need(deed.kind, await recordOffer(context, desk.admin, id, offer)));
      return;
    }
    case 'plan-start': {
      const id = idOf(desk.referralIds, deed.course.key);
      const plan = {
        changes: { plannedStartOn: deed.startOn },
        reason: 'Start planned',
        basedOn: presentOf(desk, id),
      };
      moveOn(desk, need(deed.kind, await correctReferral(context, desk.admin, id, plan)));
      return;
    }
    case 'assess': {
      const { assessment } = deed;
      const id = idOf(desk.referralIds, deed.course.key);
      const entry = { ...deed.entry, siteId: idOf(desk.siteIds, assessment.siteName) };
      const recorded = need(
        deed.kind,
        await recordAssessment(context, desk.clinicianAt(assessment.siteName), id, entry),
      );
      desk.assessmentIds.set(assessment, recorded.id);
      return;
    }
    case 'correct-assessment': {
      const { assessment, reason } = deed;
      const id = idOf(desk.assessmentIds, assessment);
      const entry = { ...assessment.entry, siteId: idOf(desk.siteIds, assessment.siteName) };
      const change = { entry, reason, basedOn: FIRST };
      need(deed.kind, await correctAssessment(context, desk.clinicianAt(assessment.siteName), id, change));
      return;
    }
    case 'hold-session': {
      const held = need(deed.kind, await hold(context, desk, deed.session));
      const attendances = deed.register.map(({ courseKey, outcome }) => ({
        referralId: idOf(desk.referralIds, courseKey),
        outcome,
      }));
      const change = { attendances, basedOn: FIRST };
      need('register of a session', await recordAttendances(context, desk.admin, held.id, change));
      return;
    }
    case 'close': {
      const { closedOn, reason, note, exercisePlanGivenOn } = deed.closure;
      const id = idOf(desk.referralIds, deed.course.key);
      const closure = { closedOn, reason, note, exercisePlanGivenOn, basedOn: presentOf(desk, id) };
      moveOn(desk, need(deed.kind, await closeReferral(context, desk.admin, id, closure)));
      return;
    }
  }
}

/** Registers a class or contact by its plan. */
export function hold(context: Context, desk: Desk, session: PlannedSession): ReturnType<typeof holdSession> {
  const { heldOn, isSupervised, mode } = session;
  const siteId = idOf(desk.siteIds, session.siteName);
  return holdSession(context, desk.admin, { siteId, heldOn, mode, isSupervised });
}

/** The value of an outcome. @throws Error naming the refusal */
export function need<Value>(doing: string, outcome: Outcome<Value>): Value {
  if (outcome.kind === 'done') return outcome.value;
  const { refusal } = outcome;
  const faults = 'faults' in refusal ? refusal.faults.map(({ pointer, code }) => `${pointer} ${code}`) : [];
  throw new Error(`The demo was refused (${doing}): ${[refusal.code, ...faults].join(', ')}`);
}

async function register(context: Context, desk: Desk, course: PlannedCourse): Promise<void> {
  const { person, commissionerKey } = course;
  if (!course.isReferredAgain) {
    const patient = need('register a person', await registerPatient(context, desk.admin, person.details));
    desk.patientIds.set(person.key, patient.id);
  }
  const details = {
    ...course.details,
    siteId: idOf(desk.siteIds, course.siteName),
    commissionerId: commissionerKey === null ? null : idOf(desk.commissionerIds, commissionerKey),
  };
  const patientId = idOf(desk.patientIds, person.key);
  const referral = need('register', await registerReferral(context, desk.admin, patientId, details));
  desk.referralIds.set(course.key, referral.id);
  moveOn(desk, referral);
}

function moveOn(
  { referralVersions }: Desk,
  referral: { readonly id: string; readonly version: number },
): void {
  referralVersions.set(referral.id, referral.version);
}

function presentOf({ referralVersions }: Desk, id: string): readonly number[] {
  return [referralVersions.get(id) ?? 1];
}

function idOf<Key>(ids: ReadonlyMap<Key, string>, key: Key): string {
  const id = ids.get(key);
  if (id === undefined) throw new Error('The demo enters something before what it builds on.');
  return id;
}
