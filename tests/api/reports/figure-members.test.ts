import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Figure } from '../../../src/domain/indicators/figure.js';
import { givenDemo, reportOf } from '../../support/report.js';
import { figuresIn } from '../../support/reported.js';
import { expectProblem, itemsOf } from '../../support/response.js';
import { givenReferral } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp, TestClient } from '../../support/start-app.js';

const QUARTER = 'period=2026-27-Q2';

interface Member {
  readonly referralId: string;
  readonly patientId: string;
  readonly familyName: string;
  readonly receivedOn: string;
  readonly kind: string;
  readonly exclusion: string | null;
  readonly reason: string;
}

interface Members {
  readonly figure: Figure;
  readonly rule: { readonly numerator: string; readonly denominator: string };
  readonly items: readonly Member[];
  readonly nextCursor: string | null;
}

let service: TestApp;
let lead: TestClient;
beforeAll(async () => {
  service = await startApp();
  const [first] = await givenDemo(service);
  if (first === undefined) throw new Error('The scenario has a lead.');
  lead = first;
});
afterAll(() => service.close());

const pathOf = (figureId: string, query = ''): string =>
  `/api/v1/reports/quarterly/figures/${figureId}/members?${QUARTER}${query}`;

async function opened(figureId: string, query = ''): Promise<Members> {
  const response = await lead.get(pathOf(figureId, query));
  expect(response.status, response.text).toBe(200);
  return response.body as Members;
}

describe('the members of a figure', () => {
  it('are as many as it counts, for figures of every part of the report', async () => {
    const figures = new Map(figuresIn(await reportOf(lead, QUARTER)).map((figure) => [figure.id, figure]));
    const asked = [...figures.keys()].filter((_, index) => index % 40 === 0);
    for (const id of [...asked, 'uptake', 'completed-of-started', 'mid-reached.cat-total']) {
      const { figure, items } = await opened(id, '&limit=200');
      expect(figure, id).toEqual(figures.get(id));
      const count = (kind: string): number => items.filter((each) => each.kind === kind).length;
      expect(count('numerator'), id).toBe(figure.numerator);
      expect(count('numerator') + count('not-numerator'), id).toBe(figure.denominator);
      expect(count('open'), id).toBe(figure.open);
      for (const { id: exclusion, count: left } of figure.excluded) {
        expect(items.filter((each) => each.exclusion === exclusion).length, id).toBe(left);
      }
      expect(items.every(({ reason, familyName }) => reason !== '' && familyName !== '')).toBe(true);
    }
    expect(asked.length).toBeGreaterThan(10);
  });

  it('come with the rule in words, and can be narrowed to one kind', async () => {
    const { figure, rule, items } = await opened('uptake', '&kind=not-numerator&limit=200');
    expect(rule.numerator).toContain('First supervised session attended');
    expect(new Set(items.map(({ kind }) => kind))).toEqual(new Set(['not-numerator']));
    expect(items).toHaveLength(figure.denominator - figure.numerator);
  });

  it('are read page by page, none twice and none left out', async () => {
    const all = (await opened('uptake', '&limit=200')).items.map(({ referralId }) => referralId);
    const pages: string[] = [];
    let cursor: string | null = '';
    while (cursor !== null) {
      const next: Members = await opened('uptake', `&limit=2${cursor === '' ? '' : `&cursor=${cursor}`}`);
      pages.push(...next.items.map(({ referralId }) => referralId));
      cursor = next.nextCursor;
    }
    expect(all.length).toBeGreaterThan(4);
    expect(pages).toEqual(all);
  });

  it('are those of the narrowed report', async () => {
    const narrow = '&diagnosis=bronchiectasis';
    const narrowed = await opened('uptake', narrow);
    const [figure] = figuresIn(await reportOf(lead, QUARTER + narrow)).filter(({ id }) => id === 'uptake');
    expect(narrowed.figure).toEqual(figure);
    expect(narrowed.figure.denominator).toBeLessThan((await opened('uptake')).figure.denominator);
  });

  it('are told to the trail: which figure, and whom it showed', async () => {
    const { items } = await opened('completed-of-started', '&limit=3');
    const [event] = itemsOf(await lead.get('/api/v1/audit-events?limit=1'));
    expect(event).toMatchObject({
      action: 'figure-opened',
      details: {
        figureId: 'completed-of-started',
        period: '2026-27-Q2',
        referralIds: items.map(({ referralId }) => referralId),
      },
    });
  });

  it.each([
    ['no such figure', 'no-such-figure', ''],
    ['a measure that is none', 'mid-reached.six-hour-walk', ''],
    ['a group that is none', 'uptake.by-sex.unheard-of', ''],
    ['a site of nobody', `uptake.by-site.${randomUUID()}`, ''],
    ['a statement to the database', `uptake'%20or%201=1%20--`, ''],
  ])('are not found for %s', async (_name, figureId, query) => {
    expectProblem(await lead.get(pathOf(figureId, query)), { status: 404, type: 'not-found' });
  });

  it('go on from nobody of another figure', async () => {
    const { nextCursor } = await opened('uptake', '&limit=1');
    const other = await lead.get(pathOf('completed-of-started', `&cursor=${nextCursor ?? ''}`));
    expectProblem(other, { status: 400, type: 'malformed-request', pointers: ['cursor'] });
    const narrowed = pathOf('uptake', `&kind=excluded&cursor=${nextCursor ?? ''}`);
    expectProblem(await lead.get(narrowed), { status: 400, type: 'malformed-request', pointers: ['cursor'] });
  });
});

describe('the figures of a referral', () => {
  const figuresOf = async (client: TestClient, referralId: string, query = QUARTER) =>
    client.get(`/api/v1/referrals/${referralId}/figures?${query}`);

  it('say the same as the members of each figure', async () => {
    const [member] = (await opened('completed-of-started')).items;
    const response = await figuresOf(lead, member?.referralId ?? '');
    expect(response.status).toBe(200);
    const items = itemsOf(response);
    expect(items.length).toBeGreaterThan(20);
    for (const { figureId, kind, reason } of items.filter((_, index) => index % 20 === 0)) {
      const { items: members } = await opened(String(figureId), '&limit=200');
      const own = members.find(({ referralId }) => referralId === member?.referralId);
      expect([figureId, own?.kind, own?.reason]).toEqual([figureId, kind, reason]);
    }
  });

  it('are none in a period that the referral does not touch, and told to the trail', async () => {
    const referralId = await givenReferral(service);
    const clinician = service.as('clinician');
    const response = await figuresOf(clinician, referralId, 'period=2025-26-Q1&asAt=2025-08-01');
    expect(response.body).toMatchObject({ period: '2025-26-Q1', asAt: '2025-08-01', items: [] });
    const [event] = itemsOf(await service.as('lead').get('/api/v1/audit-events?limit=1'));
    expect(event).toMatchObject({ action: 'figures-of-referral-read', referralId });
  });

  it('are those of the waiting list of any report at whose cut the person waits', async () => {
    const referralId = await givenReferral(service, { receivedOn: '2026-10-06' });
    const response = await figuresOf(service.as('clinician'), referralId, 'period=2026-27-Q2');
    const items = itemsOf(response);
    // From 6 October to 25 November: 25 + 25 days.
    expect(new Set(items.map(({ reason }) => reason))).toEqual(new Set(['Waiting for triage, day 50']));
    const numerators = items.filter(({ kind }) => kind === 'numerator').map(({ figureId }) => figureId);
    expect(numerators).toEqual([
      'waiting-now.all',
      'waiting-now.awaiting-triage',
      'waiting-now.more-than-30-days',
    ]);
  });

  it('are not found where the referral is not', async () => {
    expectProblem(await figuresOf(lead, randomUUID()), { status: 404, type: 'not-found' });
  });

  it('need a period', async () => {
    const response = await figuresOf(service.as('clinician'), randomUUID(), 'asAt=2026-07-01');
    expectProblem(response, { status: 400, type: 'malformed-request', pointers: ['period'] });
  });
});
