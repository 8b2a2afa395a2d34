import { notTooFarAhead } from '../../domain/referral/referral.js';
import { checkRegister } from '../../domain/session/session.js';
import type { Attendance, Session } from '../../domain/session/session.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import type { Page, PageRequest } from '../../storage/page.js';
import { referralDates } from '../../storage/referrals/referral-dates.js';
import {
  attendancesOfSession,
  attendancesOfSessions,
  findSession,
  insertSession,
  listSessionRows,
  recordAttendance,
  withdrawAttendance,
} from '../../storage/sessions/sessions.js';
import type { SessionFilter } from '../../storage/sessions/sessions.js';
import { changedValues } from '../../domain/audit/changed-values.js';
import { recordEvent, recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { checkPlaces } from '../referrals/check-places.js';

/** A session with its register. */
export interface SessionRegister extends Session {
  readonly attendances: readonly Attendance[];
}

/** Registers a class or a contact; it may lie in the future, so that its register can be prepared. */
export async function holdSession(
  context: Context,
  actor: TeamMember,
  session: Omit<Session, 'id'>,
): Promise<Outcome<SessionRegister>> {
  return context.db.transaction().execute(async (trx) => {
    const faults = [
      ...(await checkPlaces(trx, actor.teamId, session)),
      ...notTooFarAhead('/heldOn', session.heldOn, context.clock.today()),
    ];
    if (faults.length > 0) return refused({ code: 'rules-broken', faults });
    const id = context.newId();
    await insertSession(trx, { ...session, id, teamId: actor.teamId, now: context.clock.now() });
    await recordEvent(context, trx, actor, {
      action: 'session-registered',
      subjectId: id,
      details: { ...session },
    });
    return done({ ...session, id, attendances: [] });
  });
}

/** Writes the whole register of a session. Entries that did not change stay; changed ones supersede the former. */
export async function recordAttendances(
  context: Context,
  actor: TeamMember,
  sessionId: string,
  attendances: readonly Attendance[],
): Promise<Outcome<SessionRegister>> {
  return context.db.transaction().execute(async (trx) => {
    const session = await findSession(trx, actor.teamId, sessionId);
    if (session === null) return refused({ code: 'not-found', what: 'session' });
    const referrals = await referralDates(
      trx,
      actor.teamId,
      attendances.map((attendance) => attendance.referralId),
    );
    const faults = checkRegister(session, attendances, referrals, context.clock.today());
    if (faults.length > 0) return refused({ code: 'rules-broken', faults });
    const former = new Map(
      (await attendancesOfSession(trx, sessionId)).map((entry) => [entry.referralId, entry.outcome]),
    );
    const before = Object.fromEntries(former);
    const now = context.clock.now();
    for (const { referralId, outcome } of attendances) {
      if (former.get(referralId) !== outcome) {
        const id = context.newId();
        await recordAttendance(trx, { id, sessionId, referralId, outcome, now, accountId: actor.accountId });
      }
      former.delete(referralId);
    }
    for (const referralId of former.keys()) await withdrawAttendance(trx, { sessionId, referralId, now });
    const register = await attendancesOfSession(trx, sessionId);
    const after = Object.fromEntries(register.map((entry) => [entry.referralId, entry.outcome]));
    await recordEvent(context, trx, actor, {
      action: 'register-written',
      subjectId: sessionId,
      details: { changes: changedValues(before, after, []) },
    });
    return done({ ...session, attendances: register });
  });
}

/** The team's sessions, latest first, each with its register. */
export async function listSessions(
  context: Context,
  actor: TeamMember,
  filter: SessionFilter,
  page: PageRequest,
): Promise<Page<SessionRegister>> {
  const sessions = await listSessionRows(context.db, actor.teamId, filter, page);
  const ids = sessions.rows.map((session) => session.id);
  const registers = await attendancesOfSessions(context.db, ids);
  const rows = sessions.rows.map((session) => ({
    ...session,
    attendances: registers.get(session.id) ?? [],
  }));
  await recordRead(context, actor, { action: 'sessions-listed', details: { sessionIds: ids } });
  return { rows, next: sessions.next };
}
