import type { AuditEvent } from '../../domain/audit/audit-event.js';
import { listAuditEvents } from '../../storage/audit/audit-trail.js';
import type { AuditFilter } from '../../storage/audit/audit-trail.js';
import type { Page, PageRequest } from '../../storage/page.js';
import type { Context, TeamMember } from '../context.js';
import { recordRead } from './record-event.js';

/** The team's audit trail, latest first; that it was read is told to it as well. */
export async function listEvents(
  context: Context,
  actor: TeamMember,
  filter: AuditFilter,
  page: PageRequest,
): Promise<Page<AuditEvent>> {
  const events = await listAuditEvents(context.reader, actor.teamId, filter, page);
  await recordRead(context, actor, { action: 'audit-trail-read', details: { ...filter } });
  return events;
}
