import type { AuditEvent } from '../../domain/audit/audit-event.js';
import { listEventsAboutPerson } from '../../storage/audit/about-person.js';
import { listAuditEvents } from '../../storage/audit/list-trail.js';
import type { AuditFilter } from '../../storage/audit/list-trail.js';
import type { Page, PageRequest } from '../../storage/page.js';
import { idsOfPerson } from '../../storage/retention/delete-person.js';
import type { Context, TeamMember } from '../context.js';
import { recordRead } from './record-event.js';

/**
 * The team's audit trail, latest first; that it was read is told to it as well.
 *
 * @param filter of one patient: events of the record and of duplicates that were merged into it, and events that list the
 *   person among others. Such a page may have fewer rows than asked for, or none, and still go on
 */
export async function listEvents(
  context: Context,
  actor: TeamMember,
  filter: AuditFilter,
  page: PageRequest,
): Promise<Page<AuditEvent>> {
  const { patientId, ...others } = filter;
  const { reader } = context;
  const search = { teamId: actor.teamId, ...others };
  const events =
    patientId === null
      ? await listAuditEvents(reader, search, page)
      : await listEventsAboutPerson(reader, search, await idsOfPerson(reader, patientId), page);
  await recordRead(context, actor, { action: 'audit-trail-read', details: { ...filter } });
  return events;
}
