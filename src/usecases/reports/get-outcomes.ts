import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { buildOutcomes } from '../../reports/outcomes/build-outcomes.js';
import type { Outcomes } from '../../reports/outcomes/outcomes-model.js';
import type { StandingCaution } from '../../domain/safety/standing-cautions.js';
import { diaryOfReferral } from '../../storage/diary/diary-weeks.js';
import { cautionsOf } from '../safety/acknowledge-caution.js';
import { loadReferralFacts } from '../../storage/facts/referral-facts.js';
import { currentSettings } from '../../storage/settings/settings.js';
import { recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';

/** How one person changed, judged by the team's present settings. */
export async function getOutcomes(
  context: Context,
  actor: TeamMember,
  referralId: string,
): Promise<Outcome<Outcomes>> {
  const { version, settings } = await currentSettings(context.db, actor.teamId);
  const [facts] = await loadReferralFacts(context.db, actor.teamId, [referralId], settings);
  if (facts === undefined) return refused({ code: 'not-found', what: 'referral' });
  const standing: { assessmentId: string; cautions: readonly StandingCaution[] }[] = [];
  for (const { assessmentId } of facts.assessments) {
    const cautions = await cautionsOf(context.db, actor, assessmentId);
    if (cautions !== null) standing.push({ assessmentId, cautions });
  }
  const { patientId } = facts;
  await recordRead(context, actor, { action: 'outcomes-read', patientId, referralId });
  const diary = await diaryOfReferral(context.db, referralId);
  const asAt = context.clock.today();
  const outcomes = buildOutcomes({ facts, asAt, settings, settingsVersion: version, standing, diary });
  return outcomes === null ? refused({ code: 'not-found', what: 'referral' }) : done(outcomes);
}
