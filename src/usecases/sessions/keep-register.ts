import { notTooFarAhead } from '../../domain/referral/referral.js';
import type { AttendanceOutcome } from '../../domain/referral/closed-sets.js';
import { checkRegister, isCorrection, REGISTER_STEP } from '../../domain/session/session.js';
import type { Attendance, SessionDetails } from '../../domain/session/session.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Fault, Outcome } from '../../domain/refusal/refusal.js';
import type { Page, PageRequest } from '../../storage/page.js';
import { referralDates } from '../../storage/referrals/referral-dates.js';
import {
  attendancesOfSessions,
  findRegister,
  nextSessionVersion,
  recordAttendance,
  withdrawAttendance,
} from '../../storage/sessions/registers.js';
import type { SessionRegister } from '../../storage/sessions/registers.js';
import { insertSession, listSessionRows } from '../../storage/sessions/sessions.js';
import type { SessionFilter } from '../../storage/sessions/sessions.js';
import { changedValues } from '../../domain/audit/changed-values.js';
import { recordEvent, recordRead } from '../audit/record-event.js';
import type { Executor } from '../../storage/connection.js';
import type { Context, TeamMember } from '../context.js';
import { staleBase } from '../history/based-on.js';
import type { BasedOn } from '../history/based-on.js';
import { checkPlaces } from '../referrals/check-places.js';

export type { SessionRegister };

/** Registers a class or a contact; it may lie in the future, so that its register can be prepared. */
export async function holdSession(
  context: Context,
  actor: TeamMember,
  session: SessionDetails,
): Promise<Outcome<SessionRegister>> {
  return context.db.transaction().execute(async (trx) => {
    const faults = [
      ...(await checkPlaces(trx, actor.teamId, session)),
      ...notTooFarAhead('/heldOn', session.heldOn, context.clock.today()),
    ];
    if (faults.length > 0) return refused({ code: 'rules-broken', faults });
    const id = context.newId();
    const { teamId, accountId } = actor;
    await insertSession(trx, { ...session, id, teamId, now: context.clock.now(), accountId });
    await recordEvent(context, trx, actor, {
      action: 'session-registered',
      subjectId: id,
      details: { ...session },
    });
    return done({ ...session, id, version: 1, enteredInError: null, attendances: [] });
  });
}

/**
 * Writes the whole register of a session. Entries that did not change stay; changed ones supersede the former. A
 * register that is written once more as it stands makes no new version.
 *
 * @param change its reason is needed where an entry that stands is altered or taken off after the day of the session
 */
export async function recordAttendances(
  context: Context,
  actor: TeamMember,
  sessionId: string,
  change: {
    readonly attendances: readonly Attendance[];
    readonly basedOn: BasedOn;
    readonly reason?: string | null;
  },
): Promise<Outcome<SessionRegister>> {
  const { attendances, basedOn, reason = null } = change;
  return changeRegister(context, actor, sessionId, { basedOn, reason, attendancesOf: () => attendances });
}

/** What became of one person; null takes them off the register. */
export interface Mark {
  readonly referralId: string;
  readonly outcome: AttendanceOutcome | null;
}

/** Marks some people on the register of a session; the others stay as they are. */
export async function markAttendances(
  context: Context,
  actor: TeamMember,
  sessionId: string,
  change: { readonly marks: readonly Mark[]; readonly basedOn: BasedOn; readonly reason?: string | null },
): Promise<Outcome<SessionRegister>> {
  const { marks, basedOn, reason = null } = change;
  const marked = new Set(marks.map(({ referralId }) => referralId));
  const attendancesOf = (former: SessionRegister): readonly Attendance[] => [
    ...former.attendances.filter(({ referralId }) => !marked.has(referralId)),
    ...marks.flatMap(({ referralId, outcome }) => (outcome === null ? [] : [{ referralId, outcome }])),
  ];
  return changeRegister(context, actor, sessionId, { basedOn, reason, attendancesOf });
}

async function changeRegister(
  context: Context,
  actor: TeamMember,
  sessionId: string,
  change: {
    readonly basedOn: BasedOn;
    readonly reason: string | null;
    readonly attendancesOf: (former: SessionRegister) => readonly Attendance[];
  },
): Promise<Outcome<SessionRegister>> {
  return context.db.transaction().execute(async (trx) => {
    const session = await findRegister(trx, actor.teamId, sessionId);
    if (session === null) return refused({ code: 'not-found', what: 'session' });
    const record = { kind: 'session', id: sessionId, version: session.version } as const;
    const stale = await staleBase(trx, actor, record, change.basedOn);
    if (stale !== null) return refused(stale);
    if (session.enteredInError !== null) return refused({ code: 'entered-in-error', what: 'session' });
    const attendances = change.attendancesOf(session);
    const { reason } = change;
    const ids = attendances.map((attendance) => attendance.referralId);
    const referrals = await referralDates(trx, actor.teamId, ids);
    const today = context.clock.today();
    const faults = [...checkRegister(session, attendances, referrals, today)];
    faults.push(...ofEntriesInError(session, attendances, referrals));
    if (reason === null && isCorrection(session, attendances, today)) faults.push(REASON_MISSING);
    if (faults.length > 0) return refused({ code: 'rules-broken', faults });
    const changed = await writeRegister(context, actor, trx, { session, attendances, reason });
    const register = changed ? await findRegister(trx, actor.teamId, sessionId) : session;
    await recordEvent(context, trx, actor, {
      action: 'register-written',
      subjectId: sessionId,
      details: {
        changes: changedValues(outcomesIn(session), outcomesIn(register ?? session), []),
        ...(reason === null ? {} : { reason }),
      },
    });
    return done(register ?? session);
  });
}

/** Nothing new is written of a referral that was entered in error; what stands of it stays. */
function ofEntriesInError(
  session: SessionRegister,
  attendances: readonly Attendance[],
  referrals: ReadonlyMap<string, { readonly isInError: boolean }>,
): readonly Fault[] {
  const former = new Map(session.attendances.map((entry) => [entry.referralId, entry.outcome]));
  return attendances.flatMap(({ referralId, outcome }, index) => {
    if (referrals.get(referralId)?.isInError !== true || former.get(referralId) === outcome) return [];
    const message = 'This referral was entered in error.';
    return [{ pointer: `/attendances/${index}/referralId`, code: 'entered-in-error', message }];
  });
}

const REASON_MISSING = {
  pointer: '/reason',
  code: 'reason-missing',
  message: 'The day of the session is over: say why an entry of its register is changed.',
};

/** Writes what differs; gives whether anything did. */
async function writeRegister(
  context: Context,
  actor: TeamMember,
  trx: Executor,
  register: {
    readonly session: SessionRegister;
    readonly attendances: readonly Attendance[];
    readonly reason: string | null;
  },
): Promise<boolean> {
  const { session, attendances } = register;
  const [now, sessionId, { accountId }] = [context.clock.now(), session.id, actor];
  const former = new Map(session.attendances.map((entry) => [entry.referralId, entry.outcome]));
  const differing = attendances.filter(({ referralId, outcome }) => former.get(referralId) !== outcome);
  const listed = new Set(attendances.map((entry) => entry.referralId));
  const taken = session.attendances.filter(({ referralId }) => !listed.has(referralId));
  if (differing.length === 0 && taken.length === 0) return false;
  await nextSessionVersion(trx, {
    former: session,
    reason: register.reason ?? REGISTER_STEP,
    now,
    accountId,
  });
  for (const { referralId, outcome } of differing) {
    await recordAttendance(trx, { id: context.newId(), sessionId, referralId, outcome, now, accountId });
  }
  for (const { referralId } of taken) await withdrawAttendance(trx, { sessionId, referralId, now });
  return true;
}

function outcomesIn({ attendances }: SessionRegister): object {
  return Object.fromEntries(attendances.map((entry) => [entry.referralId, entry.outcome]));
}

/** One session with its register. */
export async function getSession(
  context: Context,
  actor: TeamMember,
  id: string,
): Promise<Outcome<SessionRegister>> {
  const session = await findRegister(context.db, actor.teamId, id);
  if (session === null) return refused({ code: 'not-found', what: 'session' });
  const details = { referralIds: referralIdsOn([session]) };
  await recordRead(context, actor, { action: 'session-read', subjectId: id, details });
  return done(session);
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
  const details = { sessionIds: ids, referralIds: referralIdsOn(rows) };
  await recordRead(context, actor, { action: 'sessions-listed', details });
  return { rows, next: sessions.next };
}

/** Everybody on some registers, each once. */
function referralIdsOn(sessions: readonly Pick<SessionRegister, 'attendances'>[]): readonly string[] {
  return [...new Set(sessions.flatMap(({ attendances }) => attendances.map((entry) => entry.referralId)))];
}
