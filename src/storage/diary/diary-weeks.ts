import { plainDate } from '../../domain/calendar/plain-date.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { DiaryWeek } from '../../domain/session/diary.js';
import type { Executor } from '../connection.js';

/** The current diary of a referral, earliest week first. */
export async function diaryOfReferral(db: Executor, referralId: string): Promise<readonly DiaryWeek[]> {
  const rows = await db
    .selectFrom('diary_week')
    .select(['week_starting_on', 'sessions_reported'])
    .where('referral_id', '=', referralId)
    .where('superseded_at', 'is', null)
    .orderBy('week_starting_on')
    .execute();
  return rows.map((row) => ({
    weekStartingOn: plainDate(row.week_starting_on),
    sessionsReported: row.sessions_reported,
  }));
}

/** Keeps what a person reported for a week; a former entry for the week is superseded, not overwritten. */
export async function recordDiaryWeekRow(
  db: Executor,
  week: DiaryWeek & {
    readonly id: string;
    readonly referralId: string;
    readonly now: string;
    readonly accountId: string;
  },
): Promise<void> {
  await supersede(db, week.referralId, week.weekStartingOn, week.now);
  await db
    .insertInto('diary_week')
    .values({
      id: week.id,
      referral_id: week.referralId,
      week_starting_on: week.weekStartingOn,
      sessions_reported: week.sessionsReported,
      recorded_at: week.now,
      recorded_by: week.accountId,
      superseded_at: null,
    })
    .execute();
}

async function supersede(
  db: Executor,
  referralId: string,
  weekStartingOn: PlainDate,
  now: string,
): Promise<void> {
  await db
    .updateTable('diary_week')
    .set({ superseded_at: now })
    .where('referral_id', '=', referralId)
    .where('week_starting_on', '=', weekStartingOn)
    .where('superseded_at', 'is', null)
    .execute();
}
