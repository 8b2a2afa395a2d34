import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import type { Outcomes } from '../../reports/outcomes/outcomes-model.js';
import { recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { loadOutcomes, whyNoOutcomes } from './load-outcomes.js';

/** How one person changed, judged by the team's present settings. */
export async function getOutcomes(
  context: Context,
  actor: TeamMember,
  referralId: string,
): Promise<Outcome<Outcomes>> {
  const loaded = await loadOutcomes(context, actor, referralId);
  if (loaded === null) return refused(await whyNoOutcomes(context, actor, referralId));
  const { patientId } = loaded.facts;
  await recordRead(context, actor, { action: 'outcomes-read', patientId, referralId });
  return done(loaded.outcomes);
}
