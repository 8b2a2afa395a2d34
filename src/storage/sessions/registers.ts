import { ATTENDANCE_OUTCOMES } from '../../domain/referral/closed-sets.js';
import type { AttendanceOutcome } from '../../domain/referral/closed-sets.js';
import type { Attendance, Session, SessionDetails } from '../../domain/session/session.js';
import type { EnteredInError } from '../../domain/history/entered-in-error.js';
import type { Executor } from '../connection.js';
import { inErrorColumns } from '../in-error.js';
import { memberOf } from '../row-mapping.js';
import { findSession, sessionColumns } from './sessions.js';

/** A session with its register. */
export interface SessionRegister extends Session {
  readonly attendances: readonly Attendance[];
}

/** The team's session by id with its register; null when absent or of another team. */
export async function findRegister(
  db: Executor,
  teamId: string,
  id: string,
): Promise<SessionRegister | null> {
  const session = await findSession(db, teamId, id);
  if (session === null) return null;
  return { ...session, attendances: (await attendancesOfSessions(db, [id])).get(id) ?? [] };
}

/** The current registers of some sessions, by session; one on which nobody stands is left out. */
export async function attendancesOfSessions(
  db: Executor,
  sessionIds: readonly string[],
): Promise<ReadonlyMap<string, readonly Attendance[]>> {
  if (sessionIds.length === 0) return new Map();
  const rows = await db
    .selectFrom('attendance')
    .select(['session_id', 'referral_id', 'outcome'])
    .where('session_id', 'in', sessionIds)
    .where('superseded_at', 'is', null)
    .orderBy('referral_id')
    .execute();
  const registers = new Map<string, Attendance[]>();
  for (const row of rows) {
    const entry = { referralId: row.referral_id, outcome: memberOf(ATTENDANCE_OUTCOMES, row.outcome) };
    const register = registers.get(row.session_id);
    if (register === undefined) registers.set(row.session_id, [entry]);
    else register.push(entry);
  }
  return registers;
}

/** Stores what became of one person at a session; a former entry is superseded, not overwritten. */
export async function recordAttendance(
  db: Executor,
  attendance: {
    readonly id: string;
    readonly sessionId: string;
    readonly referralId: string;
    readonly outcome: AttendanceOutcome;
    readonly now: string;
    readonly accountId: string;
  },
): Promise<void> {
  await withdrawAttendance(db, attendance);
  await db
    .insertInto('attendance')
    .values({
      id: attendance.id,
      session_id: attendance.sessionId,
      referral_id: attendance.referralId,
      outcome: attendance.outcome,
      recorded_at: attendance.now,
      recorded_by: attendance.accountId,
      superseded_at: null,
    })
    .execute();
}

/** Takes one person off a register; the entry stays readable as superseded. */
export async function withdrawAttendance(
  db: Executor,
  attendance: { readonly sessionId: string; readonly referralId: string; readonly now: string },
): Promise<void> {
  await db
    .updateTable('attendance')
    .set({ superseded_at: attendance.now })
    .where('session_id', '=', attendance.sessionId)
    .where('referral_id', '=', attendance.referralId)
    .where('superseded_at', 'is', null)
    .execute();
}

/** What changed in a session or its register, by whom and why. */
export interface SessionChange {
  readonly former: SessionRegister;
  readonly reason: string;
  readonly now: string;
  readonly accountId: string;
}

/** Keeps the former state of a session with its register whole, with the reason, and gives it the next version. */
export async function nextSessionVersion(db: Executor, change: SessionChange): Promise<void> {
  const { former } = change;
  await db
    .insertInto('session_version')
    .values({
      session_id: former.id,
      version: former.version,
      document: JSON.stringify(former),
      superseded_at: change.now,
      superseded_by: change.accountId,
      reason: change.reason,
    })
    .execute();
  await db
    .updateTable('session')
    .set({ version: former.version + 1 })
    .where('id', '=', former.id)
    .execute();
}

/** Corrects a session; the former state is kept with its register. */
export async function correctSessionRow(
  db: Executor,
  change: SessionChange & { readonly details: SessionDetails },
): Promise<void> {
  await nextSessionVersion(db, change);
  await db
    .updateTable('session')
    .set(sessionColumns(change.details))
    .where('id', '=', change.former.id)
    .execute();
}

/** Marks a session as entered in error; null restores it. */
export async function markSessionRow(
  db: Executor,
  change: SessionChange & { readonly mark: EnteredInError | null },
): Promise<void> {
  await nextSessionVersion(db, change);
  await db
    .updateTable('session')
    .set(inErrorColumns(change.mark))
    .where('id', '=', change.former.id)
    .execute();
}
