import { checkNhsNumber } from '../../domain/identity/nhs-number.js';
import type { CourseDraft, Sourced } from '../../domain/imports/course-draft.js';
import type { ImportedPart } from '../../domain/imports/import-record.js';
import { plainDate } from '../../domain/calendar/plain-date.js';
import type { Patient, PatientDetails } from '../../domain/patient/patient.js';
import type { Referral, ReferralDetails } from '../../domain/referral/referral.js';
import type { Refusal } from '../../domain/refusal/refusal.js';
import type { Executor } from '../../storage/connection.js';
import { patientIdsByNameAndBirth, referralIdReceivedOn } from '../../storage/imports/courses.js';
import { findPatient, findPatientIdByNhsNumber } from '../../storage/patients/patients.js';
import { getTeam } from '../../storage/providers/providers.js';
import { findReferral } from '../../storage/referrals/referrals.js';
import type { Context, TeamMember } from '../context.js';
import { registerPatient } from '../patients/register-patient.js';
import { registerReferral } from '../referrals/register-referral.js';

/** The referral of a course, with what had to be registered for it; or why there is none. */
export type FoundCourse =
  | {
      readonly kind: 'found';
      readonly patientId: string;
      readonly referralId: string;
      readonly registered: readonly Omit<ImportedPart, 'rowNumber'>[];
    }
  | RefusedCourse;

interface RefusedCourse {
  readonly kind: 'refused';
  /** Whose course it is; null where nobody in the record is meant, or nobody can tell who. */
  readonly patientId: string | null;
  readonly part: Sourced<object> | null;
  readonly refusal: Refusal;
}

/** Finds the referral of a course in the record, or registers it, and the person where they are not known either. */
export async function findOrRegister(
  context: Context,
  actor: TeamMember,
  trx: Executor,
  course: CourseDraft,
): Promise<FoundCourse> {
  const { person, referral, key } = course;
  const receivedOn = plainDate(key.receivedOn);
  const patient = await findPerson(actor, trx, course);
  if (patient === 'several')
    return refusedAt(
      null,
      person,
      '/familyName',
      'Several people in the record have this name and date of birth. Give the NHS number.',
    );
  if (patient === null && person === null) return notFound(null, 'referral');
  if (patient !== null && person !== null) {
    const differing = differingPerson(person.part, patient);
    if (differing !== null)
      return refusedAt(
        patient.id,
        person,
        differing,
        'The record has something else for the person with this NHS number. Nothing is overwritten: correct the sheet or the record.',
      );
  }
  const registered: Omit<ImportedPart, 'rowNumber'>[] = [];
  let patientId = patient?.id ?? null;
  if (patientId === null) {
    if (person === null) return notFound(null, 'patient');
    const outcome = await registerPatient(context, actor, person.part);
    if (outcome.kind === 'refused') return { ...outcome, patientId, part: person };
    patientId = outcome.value.id;
    registered.push({ kind: 'patient', subjectId: patientId });
  }
  const knownId = await referralIdReceivedOn(trx, patientId, receivedOn);
  if (knownId !== null) {
    const known = await findReferral(trx, actor.teamId, knownId);
    const differing = known === null || referral === null ? null : differingReferral(referral.part, known);
    if (differing !== null)
      return refusedAt(
        patientId,
        referral,
        differing,
        'The record has something else for this referral. Nothing is overwritten: correct the sheet or the record.',
      );
    return { kind: 'found', patientId, referralId: knownId, registered };
  }
  if (referral === null) return notFound(patientId, 'referral');
  const outcome = await registerReferral(context, actor, patientId, referral.part);
  if (outcome.kind === 'refused') return { ...outcome, patientId, part: referral };
  registered.push({ kind: 'referral', subjectId: outcome.value.id });
  return { kind: 'found', patientId, referralId: outcome.value.id, registered };
}

async function findPerson(
  actor: TeamMember,
  trx: Executor,
  { person, key }: CourseDraft,
): Promise<Patient | null | 'several'> {
  if (key.nhsNumber !== null) {
    const { kind } = await getTeam(trx, actor.teamId);
    const checked = checkNhsNumber(key.nhsNumber, kind);
    if (checked.kind === 'invalid') return null;
    const id = await findPatientIdByNhsNumber(trx, actor.teamId, checked.nhsNumber);
    return id === null ? null : findPatient(trx, actor.teamId, id);
  }
  if (person === null) return null;
  const ids = await patientIdsByNameAndBirth(trx, actor.teamId, person.part);
  if (ids.length > 1) return 'several';
  const [id] = ids;
  return id === undefined ? null : findPatient(trx, actor.teamId, id);
}

/** Names may be written in several ways and change; a date of birth does not. */
function differingPerson(person: PatientDetails, known: Patient): string | null {
  return person.bornOn === known.bornOn ? null : '/bornOn';
}

const COMPARED = [
  'diagnosis',
  'source',
  'pathway',
  'hospitalDischargedOn',
  'mrcGrade',
  'deliveryMode',
] as const;

/** What both say, and say differently; what one of them does not know is no difference. */
function differingReferral(referral: ReferralDetails, known: Referral): string | null {
  const differing = COMPARED.find((field) => {
    const [ours, theirs] = [referral[field], known[field]];
    const isKnown = (each: unknown): boolean => each !== null && each !== 'not-known';
    return isKnown(ours) && isKnown(theirs) && ours !== theirs;
  });
  return differing === undefined ? null : `/${differing}`;
}

function notFound(patientId: string | null, what: 'patient' | 'referral'): RefusedCourse {
  return { kind: 'refused', patientId, part: null, refusal: { code: 'not-found', what } };
}

function refusedAt(
  patientId: string | null,
  part: Sourced<object> | null,
  pointer: string,
  message: string,
): RefusedCourse {
  return {
    kind: 'refused',
    patientId,
    part,
    refusal: { code: 'rules-broken', faults: [{ pointer, code: 'differs-from-record', message }] },
  };
}
