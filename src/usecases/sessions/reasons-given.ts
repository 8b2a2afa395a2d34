import { addDays } from '../../domain/calendar/plain-date.js';
import { REGISTER_STEP } from '../../domain/session/session.js';
import { reasonsOfRegisters } from '../../storage/sessions/register-reasons.js';
import type { Context, TeamMember } from '../context.js';

const DAYS_BACK = 56;
const MOST = 5;

/** Why the member's team has lately changed its registers, the latest first, so that nobody types it again. */
export async function reasonsGiven(context: Context, actor: TeamMember): Promise<readonly string[]> {
  const since = addDays(context.clock.today(), -DAYS_BACK);
  return reasonsOfRegisters(context.reader, actor.teamId, { since, without: REGISTER_STEP, limit: MOST });
}
