import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { pagesAs } from '../../support/page-client.js';
import { reportOf } from '../../support/report.js';
import { asRecord, asRecords, itemsOf, textAt } from '../../support/response.js';
import { created, givenAssessment, givenReferral, givenSession } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

/*
 * Of the quarter April to June 2026: an offer, a class and an assessment of one person, and the referral of another, each
 * marked as entered in error with a reason of its own.
 */
const QUERY = 'period=2026-27-Q1';
const REASONS = {
  referrals: 'Meant for another team',
  offers: 'Typed twice',
  sessions: 'The hall was closed',
  assessments: 'Another person',
} as const;

let app: TestApp;
let referralId: string;
let otherId: string;
let sessionId: string;
beforeAll(async () => {
  app = await startApp();
  [referralId, otherId] = [await givenReferral(app), await givenReferral(app)];
  const at = `/api/v1/referrals/${referralId}`;
  await created(app, `${at}/triage`, { decision: 'accepted', decidedOn: '2026-04-03' });
  const offer = { kind: 'assessment', offeredOn: '2026-04-07', response: 'accepted' };
  const offered = await app.as('lead').post(`${at}/offers`, offer);
  const [made] = asRecords(asRecord(offered.body)['offers']);
  const assessmentId = await givenAssessment(app, referralId);
  sessionId = await givenSession(app);
  const paths = {
    referrals: `/api/v1/referrals/${otherId}`,
    offers: `${at}/offers/${textAt(asRecord(made), 'id')}`,
    sessions: `/api/v1/sessions/${sessionId}`,
    assessments: `/api/v1/assessments/${assessmentId}`,
  };
  for (const kind of ['referrals', 'offers', 'sessions', 'assessments'] as const) {
    const marked = await app.as('lead').post(`${paths[kind]}/entered-in-error`, { reason: REASONS[kind] });
    expect(marked.status, kind).toBe(200);
  }
});
afterAll(() => app.close());

const listed = async (query: string) =>
  itemsOf(await app.as('lead').get(`/api/v1/reports/quarterly/entries-in-error?${query}`));

describe('the entries in error that a report counts', () => {
  it('open one by one, each with its reason and whose it is', async () => {
    const items = await listed(QUERY);
    expect(items.map((each) => [each['kind'], each['reason'], each['referralId']])).toEqual([
      ['referrals', REASONS.referrals, otherId],
      ['offers', REASONS.offers, referralId],
      ['sessions', REASONS.sessions, null],
      ['assessments', REASONS.assessments, referralId],
    ]);
    for (const { kind, familyName } of items) expect(familyName === null).toBe(kind === 'sessions');
  });

  it('are as many as the report says, and none of another period', async () => {
    const quality = asRecord((await reportOf(app.as('lead'), QUERY))['dataQuality']);
    const counts = asRecord(quality['entriesInError']);
    const items = await listed(QUERY);
    for (const kind of Object.keys(REASONS)) {
      expect(items.filter((each) => each['kind'] === kind)).toHaveLength(Number(counts[kind]));
    }
    expect(await listed('period=2026-27-Q2')).toEqual([]);
  });

  it('are told to the trail with whom they showed', async () => {
    await listed(QUERY);
    const [told] = itemsOf(await app.as('lead').get('/api/v1/audit-events?limit=1'));
    expect(told).toMatchObject({ action: 'entries-in-error-listed' });
    expect(told?.['details']).toEqual({ period: '2026-27-Q1', referralIds: [otherId, referralId] });
  });

  it('are a page to which the report leads, and which leads to each', async () => {
    const lead = await pagesAs(app, 'lead');
    const { text: chapter } = await lead.get(`/report/chapters/data-quality?${QUERY}`);
    for (const kind of Object.keys(REASONS)) {
      expect(chapter).toContain(`<a href="/report/entries-in-error?${QUERY}#${kind}">1</a>`);
    }
    const { status, text } = await lead.get(`/report/entries-in-error?${QUERY}`);
    expect(status).toBe(200);
    for (const [kind, reason] of Object.entries(REASONS)) {
      expect(text).toContain(`<section id="${kind}">`);
      expect(text).toContain(reason);
    }
    expect(text).toContain(`href="/referrals/${referralId}"`);
    expect(text).toContain(`href="/classes/${sessionId}"`);
    const none = await lead.get('/report/entries-in-error?period=2026-27-Q2');
    expect(none.text).toContain('Nothing is marked as entered in error.');
  });
});
