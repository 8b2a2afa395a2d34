import { sql } from 'kysely';
import type { AuditEvent } from '../../domain/audit/audit-event.js';
import type { Executor } from '../connection.js';
import { letOthersWork } from '../let-others-work.js';
import type { Page, PageRequest } from '../page.js';
import type { PersonIds } from '../retention/delete-person.js';
import { eventFromRow } from './audit-trail.js';
import { conditionsOf, positionOf, rangeOf } from './list-trail.js';
import type { Part, TrailSearch } from './list-trail.js';

/** How many events that belong to no one person are looked through. */
interface Pace {
  /** So many at a time, and then others get their turn. */
  readonly atATime: number;
  /** So many for one page; the next page goes on below them. */
  readonly mostForAPage: number;
}

const PACE: Pace = { atATime: 1000, mostForAPage: 20_000 };

/**
 * The events of a team about one person, latest first: those of the person's own record, and those that list the person
 * among others, such as a work list that was read.
 *
 * A list is found by the ids that its details hold, for which there is no index: only events that belong to no one person
 * are looked through, as many as a page may take the time for. A page may therefore have fewer rows than asked for, or
 * none, and still go on.
 *
 * @param ids the person's, with those of duplicates that were merged into the record
 */
export async function listEventsAboutPerson(
  db: Executor,
  search: TrailSearch,
  ids: PersonIds,
  request: PageRequest,
  pace = PACE,
): Promise<Page<AuditEvent>> {
  const range = await rangeOf(db, search, request);
  const most = request.limit + 1;
  const own = await ownEvents(db, search, ids, { ...range, most });
  // Nothing further down than the last of these can stand on this page.
  const from = own[request.limit]?.sequence ?? range.from;
  const lists = await listsThatName(db, search, ids, { from, below: range.below, most }, pace);
  const found = [...own.filter(({ sequence }) => sequence >= lists.reached), ...lists.events].sort(
    (a, b) => b.sequence - a.sequence,
  );
  const rows = found.slice(0, request.limit);
  const last = rows.at(-1);
  if (found.length > request.limit && last !== undefined) return { rows, next: positionOf(last) };
  return { rows, next: lists.reached > range.from ? positionOf({ sequence: lists.reached }) : null };
}

async function ownEvents(
  db: Executor,
  search: TrailSearch,
  { patientIds }: PersonIds,
  { from, below, most }: Part,
): Promise<readonly AuditEvent[]> {
  const rows = await db
    .selectFrom('audit_event')
    .selectAll()
    .where('patient_id', 'in', patientIds)
    .where('sequence', '>=', from)
    .where('sequence', '<', below)
    .where((eb) => eb.and(conditionsOf(eb, search)))
    .orderBy('sequence', 'desc')
    .limit(most)
    .execute();
  return rows.map(eventFromRow);
}

/** Events of no one person whose details name one of the ids. @returns them, and down to where was looked */
async function listsThatName(
  db: Executor,
  search: TrailSearch,
  { patientIds, referralIds }: PersonIds,
  { from, below, most }: Part,
  { atATime, mostForAPage }: Pace,
): Promise<{ readonly events: readonly AuditEvent[]; readonly reached: number }> {
  const ids = [...patientIds, ...referralIds];
  const events: AuditEvent[] = [];
  let reached = below;
  for (let looked = 0; looked < mostForAPage && events.length < most; looked += atATime) {
    const lowest = await lowestOfNext(db, { from, below: reached, most: atATime });
    if (lowest === null) return { events, reached: from };
    const rows = await db
      .selectFrom('audit_event')
      .selectAll()
      .where('patient_id', 'is', null)
      .where('sequence', '>=', lowest)
      .where('sequence', '<', reached)
      .where((eb) => eb.and(conditionsOf(eb, search)))
      .where((eb) => eb.or(ids.map((id) => sql<boolean>`details like ${`%${id}%`}`)))
      .orderBy('sequence', 'desc')
      .execute();
    events.push(...rows.map(eventFromRow));
    reached = lowest;
    await letOthersWork();
  }
  return { events, reached };
}

/** The lowest of the next few events that belong to no one person; null where there are none. */
async function lowestOfNext(db: Executor, { from, below, most }: Part): Promise<number | null> {
  const { lowest } = await db
    .selectFrom((eb) =>
      eb
        .selectFrom('audit_event')
        .select('sequence')
        .where('patient_id', 'is', null)
        .where('sequence', '>=', from)
        .where('sequence', '<', below)
        .orderBy('sequence', 'desc')
        .limit(most)
        .as('next'),
    )
    .select(({ fn }) => fn.min('sequence').as('lowest'))
    .executeTakeFirstOrThrow();
  return lowest === null ? null : Number(lowest);
}
