import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { ReferralFacts } from '../../domain/cohort/referral-facts.js';
import { classStandingOf } from '../../domain/session/class-standing.js';
import type { ClassStanding } from '../../domain/session/class-standing.js';
import type { AttendanceOutcome } from '../../domain/referral/closed-sets.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { loadReferralFacts } from '../../storage/facts/referral-facts.js';
import { peopleAtClass } from '../../storage/sessions/people-at-class.js';
import type { NamedReferral } from '../../storage/sessions/people-at-class.js';
import { findRegister } from '../../storage/sessions/registers.js';
import type { SessionRegister } from '../../storage/sessions/registers.js';
import { currentSettings } from '../../storage/settings/settings.js';
import { recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';

/** Somebody who is expected at a class, or stands on its register. */
export interface ClassPerson extends NamedReferral, ClassStanding {
  /** What became of them; null where nobody has said yet. */
  readonly outcome: AttendanceOutcome | null;
}

/** A class with everybody who is expected or registered, by name. */
export interface ClassWithPeople {
  readonly session: SessionRegister;
  readonly people: readonly ClassPerson[];
}

/**
 * A class of the member's team with the people expected and those on its register. A class by video is for every site.
 *
 * @param form set where it leaves the service as a file
 */
export async function readClass(
  context: Context,
  actor: TeamMember,
  sessionId: string,
  form?: 'csv',
): Promise<Outcome<ClassWithPeople>> {
  const db = context.reader;
  const session = await findRegister(db, actor.teamId, sessionId);
  if (session === null) return refused({ code: 'not-found', what: 'session' });
  const outcomes = new Map(session.attendances.map((entry) => [entry.referralId, entry.outcome]));
  const known = await peopleAtClass(db, actor.teamId, {
    siteId: session.mode === 'remote' ? null : session.siteId,
    heldOn: session.heldOn,
    onRegister: [...outcomes.keys()],
  });
  const { settings } = await currentSettings(db, actor.teamId);
  const ids = known.map(({ referralId }) => referralId);
  const facts = await loadReferralFacts(db, actor.teamId, ids, settings);
  const standings = new Map(
    facts.map((each) => {
      const isOnRegister = outcomes.has(each.referralId);
      const asExpected = isOnRegister ? withoutDay(each, session.heldOn) : each;
      return [each.referralId, classStandingOf(asExpected, session)];
    }),
  );
  const people = known.flatMap((person) => {
    const standing = standings.get(person.referralId);
    const outcome = outcomes.get(person.referralId) ?? null;
    if (standing === undefined || (outcome === null && !standing.isExpected)) return [];
    return [{ ...person, ...standing, outcome }];
  });
  const referralIds = people.map(({ referralId }) => referralId);
  await recordRead(context, actor, {
    action: 'session-read',
    subjectId: sessionId,
    details: { form, referralIds },
  });
  return done({ session, people });
}

/** What became of somebody at the class itself does not make them unexpected there. */
function withoutDay(facts: ReferralFacts, day: PlainDate): ReferralFacts {
  return { ...facts, contacts: facts.contacts.filter(({ heldOn }) => heldOn !== day) };
}
