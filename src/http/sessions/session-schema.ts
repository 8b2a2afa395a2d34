import { z } from 'zod';
import { ATTENDANCE_OUTCOMES, SESSION_MODES } from '../../domain/referral/closed-sets.js';
import type { SessionRegister } from '../../usecases/sessions/keep-register.js';
import type { ClassPerson } from '../../usecases/sessions/read-class.js';
import { hasSomeChange, NO_CHANGE } from '../schema/changes.js';
import { InErrorShown, presentInError } from '../schema/in-error.js';
import { dateField, dateShown, idField, orNull, reasonField } from '../schema/fields.js';

export const NewSession = z
  .strictObject({
    siteId: idField,
    heldOn: dateField.describe('May lie in the future, so that a register can be prepared'),
    mode: z.enum(SESSION_MODES),
    isSupervised: z.boolean(),
  })
  .meta({ id: 'NewSession' });

export const SessionCorrection = z
  .strictObject({
    reason: reasonField,
    changes: z
      .strictObject({
        siteId: z.exactOptional(idField),
        heldOn: z.exactOptional(dateField),
        mode: z.exactOptional(z.enum(SESSION_MODES)),
        isSupervised: z.exactOptional(z.boolean()),
      })
      .refine(hasSomeChange, NO_CHANGE),
  })
  .meta({ id: 'SessionCorrection' });

export const Register = z
  .strictObject({
    reason: orNull(reasonField).describe(
      'Needed where an entry that stands is altered or taken off after the day of the session',
    ),
    attendances: z
      .array(z.strictObject({ referralId: idField, outcome: z.enum(ATTENDANCE_OUTCOMES) }))
      .max(200)
      .describe('The whole register: who is not listed is taken off it'),
  })
  .meta({ id: 'Register' });

export const SessionParams = z.strictObject({ sessionId: idField });

export const SessionShown = z
  .strictObject({
    id: z.string(),
    version: z.int(),
    siteId: z.string(),
    heldOn: dateShown,
    mode: z.string(),
    isSupervised: z.boolean(),
    enteredInError: InErrorShown,
    attendances: z.array(z.strictObject({ referralId: z.string(), outcome: z.string() })),
  })
  .meta({ id: 'Session' });

export const ClassPersonShown = z.strictObject({
  referralId: z.string(),
  patientId: z.string(),
  familyName: z.string(),
  givenName: z.string(),
  outcome: z.string().nullable().describe('Null where nobody has said yet'),
  isExpected: z.boolean().describe('Else only on the register'),
  isNewcomer: z.boolean().describe('Has attended no supervised session before the day'),
  attended: z.int().describe('Supervised sessions attended before the day'),
  expectedSessions: z.int().describe('Planned, less those the service cancelled before the day'),
  reachesEnough: z.boolean().describe('Reaches 75 % of the sessions expected by attending'),
});

export const ClassPeople = z
  .strictObject({
    items: z.array(ClassPersonShown).describe('By name'),
  })
  .meta({ id: 'ClassPeople' });

/** What a client is shown of somebody of a class: each field by name. */
export function presentPerson(person: ClassPerson): z.output<typeof ClassPersonShown> {
  return {
    referralId: person.referralId,
    patientId: person.patientId,
    familyName: person.familyName,
    givenName: person.givenName,
    outcome: person.outcome,
    isExpected: person.isExpected,
    isNewcomer: person.isNewcomer,
    attended: person.attended,
    expectedSessions: person.expectedSessions,
    reachesEnough: person.reachesEnough,
  };
}

/** What a client is shown of a session: each field by name. */
export function presentSession(session: SessionRegister): z.output<typeof SessionShown> {
  return {
    id: session.id,
    version: session.version,
    siteId: session.siteId,
    heldOn: session.heldOn,
    mode: session.mode,
    isSupervised: session.isSupervised,
    enteredInError: presentInError(session.enteredInError),
    attendances: session.attendances.map(({ referralId, outcome }) => ({ referralId, outcome })),
  };
}
