import { NOT_NARROWED } from '../../domain/cohort/narrowing.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { figuresOfReferral } from '../../reports/quarterly/open-figure.js';
import type { FigureOfReferral } from '../../reports/quarterly/open-figure.js';
import { loadReferralFacts } from '../../storage/facts/referral-facts.js';
import { sitesOfTeam } from '../../storage/providers/providers.js';
import { currentSettings } from '../../storage/settings/settings.js';
import { recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { whyNoOutcomes } from './load-outcomes.js';
import type { ReportRequest } from './report-request.js';

/** In which figures of a period one referral counts, and why; told to the trail. Reasons tell of results. */
export async function readFiguresOfReferral(
  context: Context,
  actor: TeamMember,
  referralId: string,
  { period, asAt }: Pick<ReportRequest, 'period' | 'asAt'>,
): Promise<Outcome<readonly FigureOfReferral[]>> {
  const { reader } = context;
  const { settings } = await currentSettings(reader, actor.teamId);
  const facts = await loadReferralFacts(reader, actor.teamId, [referralId], settings);
  const [own] = facts;
  if (own === undefined) return refused(await whyNoOutcomes(context, actor, referralId));
  await recordRead(context, actor, {
    action: 'figures-of-referral-read',
    patientId: own.patientId,
    referralId,
    details: { period: period.label, asAt },
  });
  const sites = await sitesOfTeam(reader, actor.teamId);
  const input = { facts, period, asAt, settings, sites, narrowing: NOT_NARROWED };
  return done(figuresOfReferral(input, referralId));
}
