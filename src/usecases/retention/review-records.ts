import { lastContactsBefore } from '../../domain/retention/retention.js';
import type { RecordDue } from '../../domain/retention/retention.js';
import type { Page, PageRequest } from '../../storage/page.js';
import { recordsWithoutContactSince } from '../../storage/retention/last-contacts.js';
import { currentSettings } from '../../storage/settings/settings.js';
import { recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';

/** Records past the team's retention date, the longest ago first, with the years by which they were judged. */
export async function recordsDue(
  context: Context,
  actor: TeamMember,
  page: PageRequest,
): Promise<{ readonly retentionYears: number; readonly due: Page<RecordDue> }> {
  const { retentionYears } = (await currentSettings(context.reader, actor.teamId)).settings;
  const day = lastContactsBefore(context.clock.today(), retentionYears);
  const due = await recordsWithoutContactSince(context.reader, actor.teamId, day, page);
  const patientIds = due.rows.map(({ patientId }) => patientId);
  await recordRead(context, actor, { action: 'retention-read', details: { patientIds } });
  return { retentionYears, due };
}
