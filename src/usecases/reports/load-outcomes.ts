import type { ReferralFacts } from '../../domain/cohort/referral-facts.js';
import type { StandingCaution } from '../../domain/safety/standing-cautions.js';
import type { Refusal } from '../../domain/refusal/refusal.js';
import type { TeamSettings } from '../../domain/settings/team-settings.js';
import { buildOutcomes } from '../../reports/outcomes/build-outcomes.js';
import type { Outcomes } from '../../reports/outcomes/outcomes-model.js';
import { diaryOfReferral } from '../../storage/diary/diary-weeks.js';
import { loadReferralFacts } from '../../storage/facts/referral-facts.js';
import { currentSettings } from '../../storage/settings/settings.js';
import { courseOfReferral } from '../../storage/referrals/referral-dates.js';
import type { Context, TeamMember } from '../context.js';
import { cautionsOf } from '../safety/acknowledge-caution.js';

/** Outcomes with the facts and the settings that they were worked out from. */
export interface LoadedOutcomes {
  readonly outcomes: Outcomes;
  readonly facts: ReferralFacts;
  readonly settings: TeamSettings;
}

/** Why a referral has no outcomes: it is not there, or was entered in error. */
export async function whyNoOutcomes(
  context: Context,
  { teamId }: TeamMember,
  referralId: string,
): Promise<Refusal> {
  const course = await courseOfReferral(context.db, teamId, referralId);
  return { code: course?.isInError === true ? 'entered-in-error' : 'not-found', what: 'referral' };
}

/** How one person changed, as at today; null when absent or of another team. Whoever shows it tells the trail. */
export async function loadOutcomes(
  context: Context,
  actor: TeamMember,
  referralId: string,
): Promise<LoadedOutcomes | null> {
  const { version, settings } = await currentSettings(context.db, actor.teamId);
  const [facts] = await loadReferralFacts(context.db, actor.teamId, [referralId], settings);
  if (facts === undefined) return null;
  const standing: { assessmentId: string; cautions: readonly StandingCaution[] }[] = [];
  for (const { assessmentId } of facts.assessments) {
    const cautions = await cautionsOf(context.db, actor, assessmentId);
    if (cautions !== null) standing.push({ assessmentId, cautions });
  }
  const diary = await diaryOfReferral(context.db, referralId);
  const asAt = context.clock.today();
  const outcomes = buildOutcomes({ facts, asAt, settings, settingsVersion: version, standing, diary });
  return outcomes === null ? null : { outcomes, facts, settings };
}
