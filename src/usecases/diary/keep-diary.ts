import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { checkDiaryWeek } from '../../domain/session/diary.js';
import type { DiaryWeek } from '../../domain/session/diary.js';
import { diaryOfReferral, recordDiaryWeekRow } from '../../storage/diary/diary-weeks.js';
import { findReferral } from '../../storage/referrals/referrals.js';
import { recordEvent, recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';

/** Records what a person reports of one week at home; an entry for the same week replaces the former, which is kept. */
export async function recordDiaryWeek(
  context: Context,
  actor: TeamMember,
  referralId: string,
  week: DiaryWeek,
): Promise<Outcome<readonly DiaryWeek[]>> {
  return context.db.transaction().execute(async (trx) => {
    const referral = await findReferral(trx, actor.teamId, referralId);
    if (referral === null) return refused({ code: 'not-found', what: 'referral' });
    if (referral.enteredInError !== null) return refused({ code: 'entered-in-error', what: 'referral' });
    const dates = { receivedOn: referral.receivedOn, closedOn: referral.closure?.closedOn ?? null };
    const faults = checkDiaryWeek(week, dates, context.clock.today());
    if (faults.length > 0) return refused({ code: 'rules-broken', faults });
    const [now, id] = [context.clock.now(), context.newId()];
    await recordDiaryWeekRow(trx, { ...week, id, referralId, now, accountId: actor.accountId });
    const diary = await diaryOfReferral(trx, referralId);
    await recordEvent(context, trx, actor, {
      action: 'diary-week-recorded',
      patientId: referral.patientId,
      referralId,
      details: { ...week },
    });
    return done(diary);
  });
}

/** The exercise diary of a referral, earliest week first. */
export async function readDiary(
  context: Context,
  actor: TeamMember,
  referralId: string,
): Promise<Outcome<readonly DiaryWeek[]>> {
  const referral = await findReferral(context.db, actor.teamId, referralId);
  if (referral === null) return refused({ code: 'not-found', what: 'referral' });
  const { patientId } = referral;
  await recordRead(context, actor, { action: 'diary-read', patientId, referralId });
  return done(await diaryOfReferral(context.db, referralId));
}
