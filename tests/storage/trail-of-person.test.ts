import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openRecord } from '../../src/app/open-record.js';
import type { OpenRecord } from '../../src/app/open-record.js';
import { clockAt } from '../../src/app/system-clock.js';
import { listEventsAboutPerson } from '../../src/storage/audit/about-person.js';
import { appendAuditEvents } from '../../src/storage/audit/audit-trail.js';
import type { UnchainedEvent } from '../../src/storage/audit/audit-trail.js';
import { listAuditEvents } from '../../src/storage/audit/list-trail.js';
import type { TrailSearch } from '../../src/storage/audit/list-trail.js';
import type { Page, PageRequest } from '../../src/storage/page.js';
import { TEST_INSTANT } from '../support/start-app.js';

const ID = (letter: string) => `${letter.repeat(8)}-0000-4000-8000-000000000000`;
const [ANNE, TWIN, OTHER] = [ID('a'), ID('b'), ID('c')];
const [HER_REFERRAL, OTHER_REFERRAL] = [ID('d'), ID('e')];
const IDS = { patientIds: [ANNE, TWIN], referralIds: [HER_REFERRAL] };

const folder = mkdtempSync(join(tmpdir(), 'tidemark-trail-'));
let record: OpenRecord;
let stored: readonly { readonly event: UnchainedEvent; readonly sequence: number }[];

/** A trail of a few hundred events of two teams, some out of their time, as readings that were told later are. */
const TRAIL = fc
  .array(
    fc.record({
      teamId: fc.constantFrom('team', 'team', 'team', 'other', null),
      accountId: fc.constantFrom('one', 'two'),
      patientId: fc.constantFrom(ANNE, TWIN, OTHER, null, null, null),
      named: fc.subarray([ANNE, OTHER, HER_REFERRAL, OTHER_REFERRAL]),
      late: fc.nat(3),
    }),
    { minLength: 300, maxLength: 300 },
  )
  .map((events) =>
    events.map(({ named, late, ...event }, index) => ({
      ...event,
      occurredAt: `2026-11-25T10:${String(Math.max(0, Math.floor(index / 6) - late)).padStart(2, '0')}:00.000Z`,
      role: 'lead',
      action: 'work-list-read',
      referralId: null,
      subjectId: null,
      details: JSON.stringify({ referralIds: named }),
    })),
  );

beforeAll(async () => {
  record = await openRecord(join(folder, 'record.sqlite'), clockAt(TEST_INSTANT));
  const [events = []] = fc.sample(TRAIL, { numRuns: 1, seed: 20_261_125 });
  await appendAuditEvents(record.connection.db, events);
  stored = events.map((event, index) => ({ event, sequence: index + 1 }));
});
afterAll(async () => {
  await record.connection.close();
  rmSync(folder, { recursive: true });
});

const isAbout = ({ patientId, details }: UnchainedEvent) =>
  patientId === null
    ? [...IDS.patientIds, ...IDS.referralIds].some((id) => details.includes(id))
    : IDS.patientIds.includes(patientId);
const isOf = ({ event }: { readonly event: UnchainedEvent }, search: TrailSearch) =>
  event.teamId === search.teamId &&
  (search.accountId === null || event.accountId === search.accountId) &&
  (search.from === null || event.occurredAt >= search.from) &&
  (search.to === null || event.occurredAt < search.to);
const latestFirst = (found: typeof stored) => found.map(({ sequence }) => sequence).reverse();

async function allPages(
  page: (request: PageRequest) => Promise<Page<{ readonly sequence: number }>>,
  limit: number,
) {
  const [sequences, lengths]: [number[], number[]] = [[], []];
  for (let after: PageRequest['after'] = null, count = 0; count < 400; count += 1) {
    const { rows, next } = await page({ limit, after });
    sequences.push(...rows.map(({ sequence }) => sequence));
    lengths.push(rows.length);
    if (next === null) return { sequences, lengths };
    after = next;
  }
  throw new Error('The pages have no end.');
}

const SEARCHES: readonly TrailSearch[] = [
  { teamId: 'team', accountId: null, from: null, to: null },
  { teamId: 'other', accountId: null, from: null, to: null },
  { teamId: 'nobody', accountId: null, from: null, to: null },
  { teamId: 'team', accountId: 'two', from: null, to: null },
  { teamId: 'team', accountId: null, from: '2026-11-25T10:10:00.000Z', to: '2026-11-25T10:30:00.000Z' },
  { teamId: 'team', accountId: 'one', from: null, to: '2026-11-25T10:20:00.000Z' },
  { teamId: 'team', accountId: null, from: '2026-11-26T00:00:00.000Z', to: null },
];

describe.each(SEARCHES)('the trail of %o', (search) => {
  it.each([1, 7, 500])('is paged whole and in order, %i at a time', async (limit) => {
    const { db } = record.connection;
    const { sequences } = await allPages((request) => listAuditEvents(db, search, request), limit);
    expect(sequences).toEqual(latestFirst(stored.filter((each) => isOf(each, search))));
  });

  it.each([
    [1, { atATime: 2, mostForAPage: 4 }],
    [3, { atATime: 5, mostForAPage: 5 }],
    [20, { atATime: 7, mostForAPage: 30 }],
    [500, { atATime: 1000, mostForAPage: 1000 }],
  ])('tells all that is about one person, lists that name them too, %i at a time', async (limit, pace) => {
    const { db } = record.connection;
    const page = (request: PageRequest) => listEventsAboutPerson(db, search, IDS, request, pace);
    const { sequences, lengths } = await allPages(page, limit);
    const expected = stored.filter((each) => isOf(each, search) && isAbout(each.event));
    expect(sequences).toEqual(latestFirst(expected));
    expect(lengths.every((length) => length <= limit)).toBe(true);
  });
});

it('looks no further for one page than it may: the page is short, and goes on', async () => {
  const { db } = record.connection;
  const ids = { patientIds: [ID('f')], referralIds: [] };
  const search: TrailSearch = { teamId: 'team', accountId: null, from: null, to: null };
  const pace = { atATime: 5, mostForAPage: 10 };
  const { rows, next } = await listEventsAboutPerson(db, search, ids, { limit: 50, after: null }, pace);
  const ofNobody = stored.filter(({ event }) => event.patientId === null);
  expect([rows, next]).toEqual([[], { key: '', id: String(ofNobody.at(-10)?.sequence) }]);
});
