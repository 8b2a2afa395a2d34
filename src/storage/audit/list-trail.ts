import type { Expression, ExpressionBuilder, SqlBool } from 'kysely';
import type { AuditEvent } from '../../domain/audit/audit-event.js';
import type { Executor } from '../connection.js';
import { pageOf } from '../page.js';
import type { Page, PageRequest } from '../page.js';
import type { Tables } from '../tables.js';
import { endOfTrail, eventFromRow } from './audit-trail.js';

/** What the trail is searched by. */
export interface AuditFilter {
  readonly accountId: string | null;
  readonly patientId: string | null;
  /** UTC instants, from included, to not. */
  readonly from: string | null;
  readonly to: string | null;
}

/** A search that is not for one patient: those are found by `listEventsAboutPerson`. */
export type TrailSearch = { readonly teamId: string } & Omit<AuditFilter, 'patientId'>;

/** So many events at the end of the trail are looked at first, then further ones. */
const STRETCHES = [400, 1600, 6400] as const;

/**
 * The events of a team, latest first.
 *
 * They are read from the end of the trail in stretches: were they asked for by team and sorted, a page would take as long
 * as the team's trail is. That is done only where the stretches hold too few, which those of a small team may.
 */
export async function listAuditEvents(
  db: Executor,
  search: TrailSearch,
  request: PageRequest,
): Promise<Page<AuditEvent>> {
  const { from, below } = await rangeOf(db, search, request);
  const most = request.limit + 1;
  const events: AuditEvent[] = [];
  let reached = below;
  for (const length of search.accountId === null ? STRETCHES : []) {
    const lowest = Math.max(from, reached - length);
    const part = { from: lowest, below: reached, most: most - events.length };
    if (part.most > 0) events.push(...(await eventsOfStretch(db, search, part)));
    reached = lowest;
  }
  const rest = { from, below: reached, most: most - events.length };
  if (rest.most > 0 && reached > from) events.push(...(await eventsByIndex(db, search, rest)));
  return pageOf(events, request, positionOf);
}

/** A part of the trail, and how many events of it are wanted. */
export interface Part {
  readonly from: number;
  readonly below: number;
  readonly most: number;
}

/** Events by the index of an account, or of a team. */
async function eventsByIndex(db: Executor, search: TrailSearch, part: Part): Promise<readonly AuditEvent[]> {
  const rows = await db
    .selectFrom('audit_event')
    .selectAll()
    .where('sequence', '>=', part.from)
    .where('sequence', '<', part.below)
    .where((eb) => eb.and(conditionsOf(eb, search)))
    .orderBy('sequence', 'desc')
    .limit(part.most)
    .execute();
  return rows.map(eventFromRow);
}

/** The same by looking at every event of the part: the inner limit keeps the database from asking by team and sorting. */
async function eventsOfStretch(
  db: Executor,
  search: TrailSearch,
  part: Part,
): Promise<readonly AuditEvent[]> {
  const rows = await db
    .selectFrom((eb) =>
      eb
        .selectFrom('audit_event')
        .selectAll()
        .where('sequence', '>=', part.from)
        .where('sequence', '<', part.below)
        .orderBy('sequence', 'desc')
        .limit(part.below - part.from)
        .as('audit_event'),
    )
    .selectAll()
    .where((eb) => eb.and(conditionsOf(eb, search)))
    .orderBy('sequence', 'desc')
    .limit(part.most)
    .execute();
  return rows.map(eventFromRow);
}

/** Where a page of the trail goes on: below an event. */
export function positionOf({ sequence }: Pick<AuditEvent, 'sequence'>): { key: string; id: string } {
  return { key: '', id: String(sequence) };
}

/** The part of the trail in which events of a search can stand: from, and up to but not with. */
export async function rangeOf(
  db: Executor,
  { teamId, from, to }: TrailSearch,
  { after }: PageRequest,
): Promise<{ readonly from: number; readonly below: number }> {
  const time = from === null && to === null ? null : await rangeOfTime(db, teamId, from ?? '', to ?? '9999');
  const below = time?.below ?? (await endOfTrail(db)).sequence + 1;
  return { from: time?.from ?? 1, below: after === null ? below : Math.min(below, Number(after.id)) };
}

async function rangeOfTime(
  db: Executor,
  teamId: string,
  from: string,
  to: string,
): Promise<{ readonly from: number; readonly below: number }> {
  const { first, last } = await db
    .selectFrom('audit_event')
    .select(({ fn }) => [fn.min('sequence').as('first'), fn.max('sequence').as('last')])
    .where('team_id', '=', teamId)
    .where('occurred_at', '>=', from)
    .where('occurred_at', '<', to)
    .executeTakeFirstOrThrow();
  return { from: Number(first ?? 1), below: Number(last ?? 0) + 1 };
}

/** The conditions of a search on each event. */
export function conditionsOf(
  eb: ExpressionBuilder<Tables, 'audit_event'>,
  { teamId, accountId, from, to }: TrailSearch,
): Expression<SqlBool>[] {
  return [
    eb('team_id', '=', teamId),
    ...(accountId === null ? [] : [eb('account_id', '=', accountId)]),
    ...(from === null ? [] : [eb('occurred_at', '>=', from)]),
    ...(to === null ? [] : [eb('occurred_at', '<', to)]),
  ];
}
