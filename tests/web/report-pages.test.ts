import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { aPatient, aReferralBody } from '../support/entries.js';
import { pagesAs } from '../support/page-client.js';
import type { PageClient } from '../support/page-client.js';
import { asRecord, asRecords, itemsOf } from '../support/response.js';
import { created, givenReferral } from '../support/scenario.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

const REPORT = '/report?period=2026-27-Q2';
const CHAPTERS = ['indicators', 'comparisons', 'trend', 'breakdowns', 'sites', 'data-quality', 'definitions'];
const UPTAKE_BY_GROUP = '/report/chapters/breakdowns/uptake?period=2026-27-Q2';

/** Today is Wednesday 25 November 2026. */
let app: TestApp;
let lead: PageClient;
beforeAll(async () => {
  app = await startApp();
  for (const receivedOn of ['2026-07-06', '2026-08-03', '2026-09-14']) {
    await givenReferral(app, { receivedOn, diagnosis: 'copd' });
  }
  // One whose wait is over, so that uptake has somebody to count.
  const declined = await givenReferral(app, { receivedOn: '2026-09-21', diagnosis: 'copd' });
  const closure = { closedOn: '2026-10-01', reason: 'declined' };
  await created(app, `/api/v1/referrals/${declined}/closure`, closure);
  const patientId = await created(
    app,
    '/api/v1/patients',
    aPatient({
      nhsNumber: null,
      nhsNumberMissingReason: 'declined',
      familyName: '<b>Marsh & Co',
      givenName: '"Ann"',
    }),
  );
  const hostile = aReferralBody(patientId, app.siteId, { receivedOn: '2026-08-20', diagnosis: 'asthma' });
  await created(app, '/api/v1/referrals', hostile);
  lead = await pagesAs(app, 'lead');
});
afterAll(() => app.close());

describe('the report page', () => {
  it('opens the latest quarter that is over, and its address says so', async () => {
    const response = await lead.get('/report');
    expect(response.status).toBe(303);
    expect(response.headers['location']).toBe('/report?period=2026-27-Q2');
  });

  it('has the first sections with their numbers, and leads to a page of each of the others', async () => {
    const { status, text } = await lead.get('/report?period=2026-27-Q2');
    expect(status).toBe(200);
    expect(text).toContain('Marram Coast PR team: 2026-27-Q2 (July to September 2026)');
    const ids = [...text.matchAll(/<h2 id="([a-z-]+)"/g)].map(([, id]) => id);
    expect(ids).toEqual(['summary', 'steps', 'waiting', 'completion', 'outcomes', 'predicted']);
    for (const id of ids) expect(text).toContain(`<li><a href="#${id ?? ''}">`);
    for (const chapter of CHAPTERS) {
      expect(text).toContain(`<li><a href="/report/chapters/${chapter}?period=2026-27-Q2">`);
    }
    // The headings have no numbers, so the list has none either.
    expect(text).toMatch(/<nav class="contents" aria-label="Contents"><ul>/);
    expect(text).toContain('5 referrals were received');
  });

  it.each([REPORT, ...CHAPTERS.map((id) => `/report/chapters/${id}?period=2026-27-Q2`), UPTAKE_BY_GROUP])(
    'has a table for each drawing, no id twice, and no style of its own at %s',
    async (path) => {
      const { status, text } = await lead.get(path);
      expect(status).toBe(200);
      for (const [figure] of text.matchAll(/<figure[\s\S]*?<\/figure>/g)) {
        expect(figure).toMatch(/<svg [^>]*role="img"/);
        expect(figure).toContain('<table');
      }
      const ids = [...text.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
      expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
      expect(text).not.toMatch(/NaN|Infinity|undefined|\[object/);
      expect(text).not.toMatch(/ style=/);
    },
  );

  it('has completion in groups of rows, each under the name of its reading and its rule', async () => {
    const { text } = await lead.get(REPORT);
    const [table = ''] = /<caption>Completion by reading and denominator[\s\S]*?<\/table>/.exec(text) ?? [];
    const bodies = [...table.matchAll(/<tbody>([\s\S]*?)<\/tbody>/g)].map(([, body = '']) => body);
    expect(bodies).toHaveLength(4);
    for (const body of bodies) {
      expect(body).toMatch(
        /^<tr class="group"><th scope="rowgroup" colspan="\d+"><span>[^<]+ \(rule completion\/[a-z-]+@1\)<\/span><\/th><\/tr>/,
      );
      expect([...body.matchAll(/<th scope="row">/g)]).toHaveLength(6);
      expect([...body.matchAll(/completion\/[a-z-]+@1/g)]).toHaveLength(1);
    }
    const across = /colspan="(\d+)"/.exec(table)?.[1];
    expect([...table.matchAll(/<th scope="col"/g)]).toHaveLength(Number(across));
  });

  it.each([
    REPORT,
    ...['indicators', 'comparisons', 'trend', 'data-quality'].map(
      (id) => `/report/chapters/${id}?period=2026-27-Q2`,
    ),
    UPTAKE_BY_GROUP,
  ])(
    'tells nobody counted from nothing to be said by words, explained once below each table that has them: %s',
    async (path) => {
      const { text } = await lead.get(path);
      expect(text).not.toMatch(/>-<\/t[dh]>/);
      const regions = [...text.matchAll(/<div class="table"[\s\S]*?<\/div>/g)].map(([region]) => region);
      expect(regions.length).toBeGreaterThan(0);
      for (const region of regions) {
        for (const [mark, words] of [
          ['none', 'none: nobody is counted'],
          ['n/a', 'n/a: does not apply, or cannot be said'],
        ] as const) {
          const isThere = region.includes(`<td>${mark}</td>`);
          expect([mark, region.split(words).length - 1], region.slice(0, 200)).toEqual([
            mark,
            isThere ? 1 : 0,
          ]);
        }
      }
    },
  );

  it('says on every sheet of paper whose report it is and its data cut', async () => {
    const line =
      'Marram Coast PR team, 2026-27-Q2 (July to September 2026). Data cut 25 November 2026, provisional';
    for (const path of [REPORT, UPTAKE_BY_GROUP]) {
      const { text } = await lead.get(path);
      expect(text).toContain(`<html lang="en-GB" data-sheet-line="${line}">`);
    }
  });

  it('keeps in the address what narrows and nothing else', async () => {
    const empty = 'siteId=&commissionerId=&diagnosis=asthma&pathway=&mode=';
    const dates =
      'from-day=1&from-month=8&from-year=2026&to-day=31&to-month=8&to-year=2026&cut-day=&cut-month=&cut-year=';
    const response = await lead.get(`/report?period=2026-27-Q2&${empty}&firstReferralsOnly=yes&${dates}`);
    expect(response.status).toBe(303);
    const address = '/report?period=2026-08-01..2026-08-31&diagnosis=asthma&firstReferralsOnly=true';
    expect(response.headers['location']).toBe(address);
    const { status, text } = await lead.get(address);
    expect(status).toBe(200);
    expect(text).toContain('Narrowed to diagnosis: asthma; first referrals only.');
    expect(text).toContain('1 referral was received');
  });

  it.each([
    ['period=2026-27-Q5', 'Give a financial quarter as 2026-27-Q1'],
    ['period=2027-28-Q1', 'The period has not begun at the data cut.'],
    ['period=2026-27-Q2&asAt=2026-12-01', 'The data cut cannot be in the future.'],
    ['from-day=31&from-month=4&from-year=2026', 'There is no such date. You entered 31 4 2026.'],
    ['from-day=1&from-month=4&from-year=2026', 'Give both the first and the last day.'],
  ])('says what is wrong with %s, and keeps the form', async (query, message) => {
    const { status, text } = await lead.get(`/report?${query}`);
    expect(status).toBe(422);
    expect(text).toContain(message);
    expect(text).toContain('Show the report');
  });

  it.each([
    ['diagnosis=flu', 'The diagnosis in the address cannot be read.'],
    ['siteId=dune-hall', 'The site in the address cannot be read.'],
    ['mode=centre&mode=home', 'The mode of delivery in the address cannot be read.'],
    ['asAt=2026-02-30', 'The data cut in the address cannot be read.'],
    ['firstReferralsOnly=maybe', 'The choice of first referrals in the address cannot be read.'],
    ['period=2026-27-Q1', 'The period in the address cannot be read.'],
  ])('passes over nothing that it cannot read, by whatever page: %s', async (query, message) => {
    const address = `/report?period=2026-27-Q2&${query}`;
    const { status, text } = await lead.get(address);
    expect(status).toBe(422);
    expect(text).toContain(message);
    for (const path of ['/report/figures/uptake', '/report/chapters/breakdowns', '/report/files/csv']) {
      const response = await lead.get(`${path}?period=2026-27-Q2&${query}`);
      expect([path, response.status, response.headers['location']]).toEqual([path, 303, address]);
    }
  });

  it('says of a figure, and on every sheet of paper, that it is narrowed', async () => {
    const narrowed = 'period=2026-27-Q2&diagnosis=copd&firstReferralsOnly=true';
    const figure = await lead.get(`/report/figures/uptake?${narrowed}`);
    expect(figure.text).toContain('Narrowed to diagnosis: COPD; first referrals only.');
    const report = await lead.get(`/report?${narrowed}`);
    expect(report.text).toMatch(/data-sheet-line="[^"]*, provisional, narrowed"/);
    const file = await lead.get(`/report/files/csv?${narrowed}`);
    expect(file.headers['content-disposition']).toBe(
      'attachment; filename="report-2026-27-Q2-as-at-2026-11-25-narrowed.csv"',
    );
    const whole = await lead.get('/report/figures/uptake?period=2026-27-Q2');
    expect(whole.text).not.toContain('Narrowed to');
  });

  it('is told to the trail', async () => {
    await lead.get('/report?period=2026-27-Q1&diagnosis=copd');
    const events = itemsOf(await app.as('lead').get('/api/v1/audit-events?limit=20'));
    const read = events.filter(({ action }) => action === 'report-read').map(({ details }) => details);
    expect(read).toContainEqual({
      period: '2026-27-Q1',
      asAt: '2026-11-25',
      diagnosis: 'copd',
      include: ['comparisons', 'trend'],
    });
  });
});

describe('an opened figure', () => {
  const FIGURE = '/report/figures/funnel.referred?period=2026-27-Q2';

  it('shows the same people as the API, each with the reason and a way to the referral', async () => {
    const { status, text } = await lead.get(FIGURE);
    expect(status).toBe(200);
    const members = itemsOf(
      await app.as('lead').get('/api/v1/reports/quarterly/figures/funnel.referred/members?period=2026-27-Q2'),
    );
    const linked = [...text.matchAll(/href="\/referrals\/([0-9a-f-]+)"/g)].map(([, id]) => id);
    expect(linked).toEqual(members.map(({ referralId }) => referralId));
    for (const { reason } of members) expect(text).toContain(String(reason));
  });

  it('says which months it is of and up to which day', async () => {
    const { text } = await lead.get(FIGURE);
    expect(text).toContain(
      '2026-27-Q2 (July to September 2026), data cut 25 November 2026; referral cohort.',
    );
  });

  it('shows names as text', async () => {
    const { text } = await lead.get(FIGURE);
    expect(text).toContain('&lt;b>Marsh &amp; Co');
    expect(text).not.toContain('<b>Marsh');
  });

  it('shows those who count one way alone, and the way back to its report', async () => {
    const { text } = await lead.get('/report/figures/uptake?period=2026-27-Q2&diagnosis=copd&kind=open');
    expect(text).toContain('Still open (');
    expect(text).toContain('href="/report?period=2026-27-Q2&amp;diagnosis=copd"');
    expect([...text.matchAll(/href="\/referrals\//g)]).toHaveLength(3);
    const none = await lead.get('/report/figures/uptake?period=2026-27-Q2&kind=numerator');
    expect(none.text).toContain('Nobody stands here.');
  });

  it('is not found where there is none of the name', async () => {
    expect((await lead.get('/report/figures/no-such?period=2026-27-Q2')).status).toBe(404);
  });

  it('leads from what to mend to those of whom it is missing', async () => {
    const { text } = await lead.get('/report/chapters/data-quality?period=2026-27-Q2');
    const link =
      /href="(\/report\/figures\/recorded\.[a-z-]+\?period=2026-27-Q2&amp;kind=not-numerator)"/.exec(
        text,
      )?.[1];
    const opened = await lead.get(String(link).replaceAll('&amp;', '&'));
    expect(opened.status).toBe(200);
    expect(opened.text).toMatch(/<a [^>]*aria-current="true"[^>]*>Does not count \([1-9]/);
  });

  it('opens those who wait now, whenever they were received, and a number of days alone', async () => {
    const report = await lead.get('/report?period=2026-27-Q1');
    expect(report.text).toContain('whenever they were received: 4');
    const link = '/report/figures/waiting-now.more-than-90-days?period=2026-27-Q1';
    expect(report.text).toContain(`href="${link}"`);
    const { text } = await lead.get(link);
    // From 6 July to 25 November: 25 + 31 + 30 + 31 + 25 days; from 3 August, 28 days fewer.
    expect(text).toContain('Waiting for triage, day 142');
    expect(text).toContain('everybody who waits for a start, whenever received');
    expect(text).toContain('Counts (3)');
    expect(text).toContain('Does not count (1)');
  });

  it('is what every link of the report and of its chapters leads to', async () => {
    const pages = [
      REPORT,
      ...CHAPTERS.map((id) => `/report/chapters/${id}?period=2026-27-Q2`),
      UPTAKE_BY_GROUP,
    ];
    const links = new Map<string, string>();
    for (const path of pages) {
      const { text } = await lead.get(path);
      for (const [, to = '', words = ''] of text.matchAll(/href="(\/report\/figures\/[^"]+)">([^<]*)/g)) {
        links.set(to, words);
      }
    }
    expect(links.size).toBeGreaterThan(100);
    const every = Math.ceil(links.size / 16);
    for (const [link, words] of [...links].filter((_, index) => index % every === 0)) {
      const { status, text } = await lead.get(link.replaceAll('&amp;', '&'));
      expect(status, link).toBe(200);
      if (!/^\d+$/.test(words)) continue;
      const [, counts = ''] = /<a [^>]*>Counts \((\d+)\)/.exec(text) ?? [];
      const people = [...text.matchAll(/href="\/referrals\//g)].length;
      expect([link, link.includes('kind=') ? String(people) : counts]).toEqual([link, words]);
    }
  });
});

describe('a chapter of the report', () => {
  it('covers what the report does, and leads back to it and on to its parts', async () => {
    const query = 'period=2026-27-Q2&diagnosis=copd';
    const shown = query.replace('&', '&amp;');
    const { text } = await lead.get(`/report/chapters/breakdowns?${query}`);
    expect(text).toContain(`href="/report?${shown}"`);
    expect(text).toContain('Narrowed to diagnosis: COPD.');
    expect(text).toContain(`href="/report/chapters/breakdowns/uptake?${shown}"`);
    const part = await lead.get(`/report/chapters/breakdowns/uptake?${query}`);
    expect(part.text).toContain(`<a href="/report/chapters/breakdowns?${shown}">For whom it differs</a>`);
    expect(part.text).toContain(`href="/report/chapters/breakdowns/started-within-90-days?${shown}"`);
    expect(part.text).toContain('Sex at birth: female');
    // Of so few nothing is claimed, whatever their interval leaves out.
    expect(part.text).not.toMatch(/(?:higher|lower) than the rest/);
  });

  it('gives the numbers of the report, whichever of other periods it reads', async () => {
    const trend = await lead.get('/report/chapters/trend?period=2026-27-Q2');
    expect(trend.text).toContain('Referrals received, by quarter');
    expect(trend.text).toContain('<th scope="row">2026-27-Q2 (July to September 2026)</th>');
    expect(trend.text).toContain('>Q1 is April to June, Q2 July to September');
    const api = await app.as('lead').get('/api/v1/reports/quarterly?period=2026-27-Q2&include=trend');
    const charts = asRecords(asRecord(asRecord(api.body)['trend'])['charts']);
    for (const { title } of charts) expect(trend.text).toContain(String(title).replaceAll("'", '&#39;'));
    expect(charts.length).toBeGreaterThan(5);
  });

  it.each([
    ['sites', { chapter: 'sites' }],
    ['trend', { chapter: 'trend', include: ['trend'] }],
    ['breakdowns/uptake', { chapter: 'breakdowns', part: 'uptake' }],
  ])('is told to the trail by its name: %s', async (path, named) => {
    await lead.get(`/report/chapters/${path}?period=2025-26-Q4`);
    const [event] = itemsOf(await app.as('lead').get('/api/v1/audit-events?limit=1'));
    expect(event).toMatchObject({ action: 'report-read' });
    expect(event?.['details']).toEqual({ period: '2025-26-Q4', asAt: '2026-11-25', ...named });
  });

  it.each([
    '/report/chapters/no-such',
    '/report/chapters/breakdowns/no-such',
    '/report/chapters/Not%20a%20name',
  ])('is not found at %s', async (path) => {
    expect((await lead.get(`${path}?period=2026-27-Q2`)).status).toBe(404);
  });
});

describe('the files of the report', () => {
  it('leave with the numbers of the API, and are told to the trail', async () => {
    const query = 'period=2026-27-Q2&diagnosis=copd';
    const file = await lead.get(`/report/files/json?${query}`);
    expect(file.status).toBe(200);
    expect(file.headers['content-disposition']).toBe(
      'attachment; filename="report-2026-27-Q2-as-at-2026-11-25-narrowed.json"',
    );
    const api = await app.as('lead').get(`/api/v1/reports/quarterly?${query}&include=comparisons,trend`);
    expect(file.body).toEqual(api.body);
    const events = asRecords(
      asRecord((await app.as('lead').get('/api/v1/audit-events?limit=5')).body)['items'],
    );
    expect(events.map(({ action }) => action)).toContain('report-exported');
  });

  it('are none but those that are offered', async () => {
    expect((await lead.get('/report/files/exe?period=2026-27-Q2')).status).toBe(404);
  });

  it.each(['admin', 'clinician', 'commissioner'] as const)(
    'are closed to the %s, as the report is',
    async (role) => {
      const pages = await pagesAs(app, role);
      for (const path of [
        '/report',
        '/report/chapters/trend',
        '/report/chapters/breakdowns/uptake',
        '/report/files/json',
        '/report/figures/uptake',
      ]) {
        expect((await pages.get(`${path}?period=2026-27-Q2`)).status).toBe(403);
      }
    },
  );
});
