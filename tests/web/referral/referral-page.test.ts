import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { INDICATORS } from '../../../src/domain/indicators/registered.js';
import { aPatient, aShuttleWalk } from '../../support/entries.js';
import { givenBothEnds } from '../../support/both-ends.js';
import { movingClock } from '../../support/moving-clock.js';
import { walkTheLine } from '../../support/one-person.js';
import type { WalkedLine } from '../../support/one-person.js';
import { pagesAs } from '../../support/page-client.js';
import { asRecord, asRecords } from '../../support/response.js';
import { givenAssessment, givenReferral, givenTriagedReferral } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp, TestRole } from '../../support/start-app.js';

let service: TestApp;
let person: WalkedLine;
beforeAll(async () => {
  const clock = movingClock('2026-04-01');
  service = await startApp(clock);
  person = await walkTheLine(service, clock);
});
afterAll(() => service.close());

const pageOf = async (role: TestRole, path = `/referrals/${person.referralId}`) =>
  (await pagesAs(service, role)).get(path);
/** The text that a reader sees, its spaces made ordinary. */
const textOf = (html: string) =>
  html
    .replaceAll(/<(?:head|style|title|desc)\b[\s\S]*?<\/(?:head|style|title|desc)>/g, ' ')
    .replaceAll(/<[^>]+>/g, ' ')
    .replaceAll(/\s+/g, ' ')
    .replaceAll(' ,', ',');
const rowOf = (html: string, name: string) => {
  const rows = [...html.matchAll(/<tr>([\s\S]*?)<\/tr>/g)].map(([, row = '']) => textOf(row));
  return rows.find((row) => row.includes(name)) ?? '';
};

describe('the course as a file', () => {
  const address = () => `/referrals/${person.referralId}/fhir`;

  it('is offered to clinicians, and is the bundle that the API gives', async () => {
    expect((await pageOf('clinician')).text).toContain(`<a href="${address()}" download="course.fhir.json">`);
    const file = await pageOf('clinician', address());
    expect(file.headers['content-type']).toBe('application/fhir+json');
    expect(file.headers['content-disposition']).toBe('attachment; filename="course.fhir.json"');
    expect(asRecords(asRecord(file.body)['entry']).length).toBeGreaterThan(20);
    expect(file.body).toEqual((await service.as('clinician').get(`/api/v1${address()}`)).body);
  });

  it('is not offered to administrators, and not given to them', async () => {
    expect((await pageOf('admin')).text).not.toContain(address());
    expect((await pageOf('admin', address())).status).toBe(403);
  });
});

describe('the page of a referral', () => {
  it('says who it is, where they stand and what comes next', async () => {
    const text = textOf((await pageOf('clinician')).text);
    expect(text).toMatch(/Sandwort, Mavis 72 years, female\./);
    expect(text).toContain('closed Nothing is left to do.');
    expect(text).toContain('NHS number 999 000 0018');
  });

  it('tells the course as dated events in their order', async () => {
    const { text } = await pageOf('admin');
    const events = [...text.matchAll(/<time datetime="([^"]+)">[^<]*<\/time><span>([^<]*)<\/span>/g)].map(
      ([, on, words]) => [on, words],
    );
    expect(events).toEqual([
      ['2026-04-02', 'Referral received'],
      ['2026-04-03', 'Triage: accepted'],
      ['2026-04-07', 'Offered: assessment, accepted'],
      ['2026-04-20', 'Baseline assessment'],
      ['2026-05-04', 'Programme started'],
      ['2026-05-11', 'Offered: place in the programme, accepted'],
      ['2026-05-14', 'Latest class attended'],
      ['2026-06-22', 'Discharge assessment'],
      ['2026-06-22', 'Exercise plan given'],
      ['2026-06-24', 'Closed: programme finished'],
    ]);
  });

  // The walk of the hand-worked example: 200 m, then 250 m; the MID for COPD after 7 weeks is 47.5 m (35 to 61 and others in print).
  it('shows baseline beside discharge with change, MID and class in words', async () => {
    const row = rowOf((await pageOf('clinician')).text, 'Incremental shuttle walk distance');
    expect(row).toContain('metres, higher is better 200 20 April 2026');
    expect(row).toContain('250 22 June 2026');
    expect(row).toContain('+50 improved by the MID or more');
    expect(row).toContain('47.5 m');
    expect(row).toMatch(/% predicted \(Probst 2012\)/);
  });

  it('turns the sign where lower is better', async () => {
    const row = rowOf((await pageOf('clinician')).text, 'COPD Assessment Test');
    expect(row).toMatch(
      /points 0 to 40, lower is better 22 .* 20 .* \u22122 improved by the MID or more .* 1 /,
    );
  });

  it('has the numbers that the API has', async () => {
    const { text } = await pageOf('clinician');
    const answer = await service.as('clinician').get(`/api/v1/referrals/${person.referralId}/outcomes`);
    const measures = asRecords(asRecord(answer.body)['measures']);
    expect(measures.length).toBeGreaterThan(5);
    for (const measure of measures) {
      const change = Number(measure['change']);
      const places = measure['unit'] === 'mean item score' ? 2 : 1;
      const shown = String(Math.abs(Number(change.toFixed(places))));
      expect(rowOf(text, String(measure['name'])), String(measure['name'])).toContain(shown);
    }
  });

  it('draws the changes with their numbers in words', async () => {
    const { text } = await pageOf('clinician');
    expect(text).toContain('<svg');
    expect(/<desc[^>]*>([^<]*)<\/desc>/.exec(text)?.[1]).toContain('ISWD: +50');
    expect(text).not.toMatch(/<svg[^>]*style=/);
  });

  it('counts sessions, never adding supervised to others', async () => {
    const text = textOf((await pageOf('clinician')).text);
    expect(text).toContain('Supervised, attended 3 of 4 expected (4 planned in 4 weeks)');
    expect(text).toContain('Did not attend 1');
    expect(text).toContain('Unsupervised, attended 2');
    expect(text).toContain('Reported in the diary 5 sessions in 2 weeks of diary');
  });

  it('says in which indicators of a quarter the person counts, and why', async () => {
    const { text } = await pageOf('clinician');
    expect(rowOf(text, 'Started within 90 days of receipt')).toMatch(/counts Started on day 32/);
    expect(rowOf(text, 'Started within 28 days of hospital discharge')).toMatch(
      /left out Not referred after an exacerbation/,
    );
    expect(text).toMatch(/aria-current="true"[^>]*>2026-27-Q1 \(April to June 2026\)</);
    for (const { title } of INDICATORS) expect(rowOf(text, title), title).toMatch(/./);
    const others = await pageOf('clinician', `/referrals/${person.referralId}/figures?quarter=2026-27-Q1`);
    expect(others.status).toBe(200);
    expect(textOf(others.text)).toContain('Other figures of 2026-27-Q1');
    expect(others.text).not.toMatch(/in the denominator only|left out/);
    const rows = others.text.match(/<tr>/g)?.length ?? 0;
    // The head of the table is a row as well.
    expect(text).toContain(`${rows - 1} other figures of 2026-27-Q1`);
  });

  it('says of an indicator of another quarter by which day, and of one to come that it counts nowhere yet', async () => {
    const referralId = await givenReferral(service, { receivedOn: '2026-03-20' });
    const { text } = await pageOf('clinician', `/referrals/${referralId}`);
    expect(text).toContain('aria-current="true">2025-26-Q4 (January to March 2026)<');
    expect(text).toMatch(/<summary>\d+ indicators not of this quarter<\/summary>/);
    expect(rowOf(text, 'Discharge assessment done')).toContain(
      'Neither assessed for discharge nor closed: counts in no quarter yet',
    );
    expect(rowOf(text, 'Completed, of those started')).toContain('Has not started: counts in no quarter yet');
    expect(rowOf(text, 'Started within 90 days of receipt')).not.toContain('counts in no quarter');
    for (const { title } of INDICATORS) expect(rowOf(text, title), title).toMatch(/./);
  });

  it('has a history in words, without ids, codes and dates as a program writes them', async () => {
    const { text } = await pageOf('clinician', `/referrals/${person.referralId}/history`);
    const main = textOf(/<main[\s\S]*<\/main>/.exec(text)?.[0] ?? '');
    expect(main).not.toMatch(/[0-9a-f]{8}-[0-9a-f]{4}-|\d{4}-\d{2}-\d{2}/);
    expect(rowOf(text, 'Diagnosis').trim()).toMatch(/^Diagnosis COPD$/);
    expect(rowOf(text, 'NHS number')).toMatch(/999 \d{3} \d{4}/);
    expect(rowOf(text, 'Closed on')).toContain('24 June 2026');
    expect(rowOf(text, 'Reason for closing')).toContain('programme finished');
    expect(rowOf(text, 'Offered for the day')).toContain('20 April 2026');
    expect(rowOf(text, 'Site')).toMatch(/[A-Z]/);
  });

  it('is told to the audit trail, by what of it was shown', async () => {
    const count = async (action: string) => {
      const rows = await service.record.connection.db
        .selectFrom('audit_event')
        .select('sequence')
        .where('action', '=', action)
        .where('referral_id', '=', person.referralId)
        .execute();
      return rows.length;
    };
    const actions = ['referral-read', 'outcomes-read', 'figures-of-referral-read'];
    const before = await Promise.all(actions.map(count));
    await pageOf('clinician');
    const after = await Promise.all(actions.map(count));
    expect(after).toEqual(before.map((rows) => rows + 1));
  });
});

describe('the steps of a referral', () => {
  const stepsOf = (html: string) => {
    const nav = /<nav[^>]*aria-label="Steps of this referral">([\s\S]*?)<\/nav>/.exec(html)?.[1] ?? '';
    return [...nav.matchAll(/<a class="([^"]*)" href="([^"]*)"/g)].map(([, kind = '', href = '']) => ({
      isNext: kind.includes('primary'),
      path: href.replace(/^\/referrals\/[^/]+\//, ''),
    }));
  };
  const pathsOf = (html: string) => stepsOf(html).map(({ path }) => path);

  it('lead a clinician and an administrator each to what they may do, the next one first', async () => {
    const path = `/referrals/${await givenReferral(service)}`;
    expect(stepsOf((await pageOf('clinician', path)).text)).toEqual([
      { path: 'triage', isNext: true },
      { path: 'offers', isNext: false },
      { path: 'assessments/baseline', isNext: false },
      { path: 'closing', isNext: false },
    ]);
    expect(pathsOf((await pageOf('admin', path)).text)).toEqual(['offers', 'closing']);
  });

  it('leave out what was done, and all but a follow-up and the letters once the referral is closed', async () => {
    const triaged = `/referrals/${await givenTriagedReferral(service)}`;
    expect(pathsOf((await pageOf('clinician', triaged)).text)).toEqual([
      'offers',
      'assessments/baseline',
      'planned-start',
      'closing',
    ]);
    const closed = ['closing', 'assessments/follow-up', 'letters/gp', 'letters/patient'];
    expect(pathsOf((await pageOf('clinician')).text)).toEqual(closed);
    expect(pathsOf((await pageOf('admin')).text)).toEqual(['closing']);
  });

  it('say that a start is planned already, and ask for it no more', async () => {
    const path = `/referrals/${await givenTriagedReferral(service)}`;
    await givenAssessment(service, path.replace('/referrals/', ''));
    const stepOf = (html: string) => stepsOf(html).find((step) => step.path === 'planned-start');
    const before = (await pageOf('clinician', path)).text;
    expect(stepOf(before)?.isNext).toBe(true);
    expect(before).toContain('Plan the start');
    const change = { changes: { plannedStartOn: '2026-12-08' }, reason: 'Start planned' };
    const planned = await service.as('clinician').patch(`/api/v1${path}`, change);
    expect(planned.status, planned.text).toBe(200);
    const after = (await pageOf('clinician', path)).text;
    expect(stepOf(after)?.isNext).toBe(false);
    expect(after).toContain('Change the planned start');
  });

  it('all lead to a page that is there', async () => {
    for (const role of ['clinician', 'admin'] as const) {
      for (const { path } of stepsOf((await pageOf(role)).text)) {
        expect((await pageOf(role, `/referrals/${person.referralId}/${path}`)).status, path).toBe(200);
      }
    }
  });
});

describe('an administrator', () => {
  it('sees the same page without scores, cautions and figures', async () => {
    const text = textOf((await pageOf('admin')).text);
    expect(text).toContain('Sandwort, Mavis');
    expect(text).toContain('Baseline assessment');
    expect(text).toContain('3 of 4 expected');
    expect(text).not.toMatch(
      /shuttle|Questionnaire|HADS|CRQ|CAT\b|predicted|MID|points|250 m|Where this person counts/i,
    );
    expect((await pageOf('admin', `/referrals/${person.referralId}/figures`)).status).toBe(403);
  });

  it('is shown no score in the history either', async () => {
    const path = `/referrals/${await givenReferral(service, { mrcGrade: 3 })}/history`;
    const { status, text } = await pageOf('admin', path);
    expect(status).toBe(200);
    expect(textOf(text)).toContain('Version 1 of the referral');
    expect(text).not.toContain('MRC dyspnoea grade');
    expect((await pageOf('clinician', path)).text).toContain('MRC dyspnoea grade');
  });
});

describe('a comparison that is not like for like', () => {
  it('is marked with the difference named', async () => {
    const walk = (walkingAid: string) => ({
      walkTests: [aShuttleWalk(200, 1, { walkingAid }), aShuttleWalk(210, 2, { walkingAid })],
    });
    const referralId = await givenBothEnds(service, { baseline: walk('none'), discharge: walk('rollator') });
    const row = rowOf(
      (await pageOf('clinician', `/referrals/${referralId}`)).text,
      'Incremental shuttle walk',
    );
    expect(row).toMatch(/conditions differ: .*rollator/);
  });
});

it('a referral on which nothing was measured says so', async () => {
  const { text } = await pageOf('clinician', `/referrals/${await givenReferral(service)}`);
  expect(text).toContain('Nothing has been measured yet.');
  expect(text).toContain('Next: decide at triage.');
});

it('a referral of another team, and one that is not there, are as if there were none', async () => {
  const theirs = await service
    .as('other-team')
    .post('/api/v1/patients', aPatient({ nhsNumber: '9990000026' }));
  const patientId = String(asRecord(theirs.body)['id']);
  const body = {
    patientId,
    siteId: service.otherTeam.siteId,
    receivedOn: '2026-04-02',
    source: 'general-practice',
    diagnosis: 'copd',
    pathway: 'stable',
  };
  const referral = await service.as('other-team').post('/api/v1/referrals', body);
  expect(referral.status).toBe(201);
  const id = String(asRecord(referral.body)['id']);
  for (const path of [
    `/referrals/${id}`,
    `/referrals/${id}/history`,
    `/referrals/${id}/figures`,
    '/referrals/none',
  ]) {
    expect((await pageOf('lead', path)).status, path).toBe(404);
  }
});
