import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { anAssessment, aShuttleWalk } from '../../support/entries.js';
import type { Body } from '../../support/entries.js';
import { asRecord, asRecords, expectProblem, itemsOf, textAt } from '../../support/response.js';
import { givenAssessment, givenReferral, givenSession } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

const at = (referralId: string): string => `/api/v1/referrals/${referralId}/assessments`;
const post = (referralId: string, changes: Body = {}) =>
  app.as('clinician').post(at(referralId), anAssessment(app.siteId, changes));
const countOf = async (referralId: string): Promise<number> =>
  itemsOf(await app.as('clinician').get(at(referralId))).length;
const cat = (items: readonly number[]): Body => ({
  questionnaires: [{ questionnaire: 'copd-assessment-test', items }],
});
const ALREADY = { status: 409, type: 'assessment-already-recorded' };

/** Everything that an assessment can hold. */
const WHOLE: Body = {
  spirometry: { fev1L: 1.21, fev1PercentPredicted: 52, fev1FvcPercent: 48 },
  resting: { spo2Percent: 95, heartRateBpm: 78, systolicMmHg: 132, diastolicMmHg: 80 },
  notes: 'Came with her daughter.',
  physicalTests: [
    {
      test: 'handgrip-strength',
      conditions: { side: 'right', device: 'hydraulic-dynamometer' },
      value: 21,
    },
  ],
};

describe('an assessment that says what another of its timepoint and day says', () => {
  it('is refused, names the one that is there, and nothing is written', async () => {
    const referralId = await givenReferral(app);
    const existingId = await givenAssessment(app, referralId);
    const before = await app.countRows();
    const response = await post(referralId);
    expectProblem(response, ALREADY);
    expect(response.body).toMatchObject({ existingId });
    expect(await app.countRows()).toEqual(before);
  });

  it.each([
    ['in another order', { walkTests: [aShuttleWalk(200, 2), aShuttleWalk(180, 1)] }],
    [
      // 3 + 4 + 5 + 6 = 18 shuttles of levels 1 to 4 and 2 of level 5: 200 m.
      'with the distance as level and shuttles',
      { walkTests: [aShuttleWalk(180, 1), aShuttleWalk(0, 2, { distanceM: null, level: 5, shuttles: 2 })] },
    ],
    ['with a value confirmed that needed none', { confirmed: ['/weightKg'] }],
    ['with fields that are empty', { notes: null, spirometry: { fev1L: null } }],
  ])('is the same %s', async (_name, changes) => {
    const referralId = await givenReferral(app);
    await givenAssessment(app, referralId);
    expectProblem(await post(referralId, changes), ALREADY);
    expect(await countOf(referralId)).toBe(1);
  });

  it('is stored once of many that come at the same time', async () => {
    const referralId = await givenReferral(app);
    const answers = await Promise.all(Array.from({ length: 8 }, () => post(referralId)));
    expect(answers.map(({ status }) => status).toSorted()).toEqual([201, ...Array<number>(7).fill(409)]);
    expect(await countOf(referralId)).toBe(1);
  });

  it('is answered as before where it comes again under its own key', async () => {
    const referralId = await givenReferral(app);
    const key = randomUUID();
    const [first, second] = [
      await post(referralId).set('idempotency-key', key),
      await post(referralId).set('idempotency-key', key),
    ];
    expect([first.status, second.status]).toEqual([201, 201]);
    expect(second.body).toEqual(first.body);
  });

  it('is refused as a correction and as a restoration too', async () => {
    const referralId = await givenReferral(app);
    const first = await givenAssessment(app, referralId);
    const other = await givenAssessment(app, referralId, { weightKg: 69 });
    const path = `/api/v1/assessments/${other}`;
    const correction = { ...anAssessment(app.siteId), reason: 'Weight read wrongly' };
    const corrected = await app.as('clinician').put(path, correction);
    expectProblem(corrected, ALREADY);
    expect(corrected.body).toMatchObject({ existingId: first });

    const mark = (step: string) =>
      app.as('lead').post(`/api/v1/assessments/${first}/${step}`, { reason: 'Typed twice' });
    const marked = await mark('entered-in-error');
    expect(marked.status, marked.text).toBe(200);
    expect((await app.as('clinician').put(path, correction)).status).toBe(200);
    const restored = await mark('restoration');
    expectProblem(restored, ALREADY);
  });
});

describe('a second assessment is taken', () => {
  it.each([
    ['of another day', { assessedOn: '2026-04-21' }],
    ['of another timepoint', { timepoint: 'discharge' }],
    ['with another value', { heightCm: 161 }],
    ['with another item score', cat([3, 3, 2, 4, 3, 2, 3, 1])],
    ['with a test more', { walkTests: [aShuttleWalk(180, 1), aShuttleWalk(200, 2)], ...WHOLE }],
    ['with another note', { notes: 'Second visit' }],
    ['at another site', () => ({ siteId: app.secondSiteId })],
  ])('%s', async (_name, changes) => {
    const referralId = await givenReferral(app);
    await givenAssessment(app, referralId);
    const response = await post(referralId, typeof changes === 'function' ? changes() : changes);
    expect(response.status, response.text).toBe(201);
    expect(await countOf(referralId)).toBe(2);
  });

  it('but a whole one, with spirometry, strength and notes, not twice', async () => {
    const referralId = await givenReferral(app);
    await givenAssessment(app, referralId, WHOLE);
    expectProblem(await post(referralId, WHOLE), ALREADY);
  });
});

describe('of two assessments of one timepoint', () => {
  /** A starter of 5 May 2026 with a CAT of 20 at discharge on 1 July; baselines by their CAT, in the order of entry. */
  async function givenCourse(baselines: readonly (readonly [day: string, score: number])[]): Promise<{
    readonly referralId: string;
    readonly ids: readonly string[];
  }> {
    const referralId = await givenReferral(app);
    const ids: string[] = [];
    const only = (score: number): Body => ({ walkTests: [], sitToStands: [], ...cat(catOf(score)) });
    for (const [assessedOn, score] of baselines) {
      ids.push(await givenAssessment(app, referralId, { assessedOn, ...only(score) }));
    }
    await givenAssessment(app, referralId, { timepoint: 'discharge', assessedOn: '2026-07-01', ...only(20) });
    const session = await givenSession(app);
    const attendances = [{ referralId, outcome: 'attended' }];
    await app.as('lead').put(`/api/v1/sessions/${session}/attendances`, { attendances });
    return { referralId, ids };
  }
  /** Eight item scores of 0 to 5 that add up to a total. */
  const catOf = (total: number): readonly number[] =>
    Array.from({ length: 8 }, (_, index) => Math.floor(total / 8) + (index < total % 8 ? 1 : 0));
  const changeOf = async (referralId: string): Promise<unknown> => {
    const outcomes = await app.as('clinician').get(`/api/v1/referrals/${referralId}/outcomes`);
    const found = asRecords(asRecord(outcomes.body)['measures']);
    return found.find(({ measureId }) => measureId === 'cat-total')?.['change'];
  };

  it.each([
    [
      'the later day counts, in whatever order they were entered',
      [
        ['2026-04-20', 26],
        ['2026-04-10', 30],
      ],
      -6,
    ],
    [
      'of one day the one entered last counts',
      [
        ['2026-04-20', 26],
        ['2026-04-20', 25],
      ],
      -5,
    ],
    [
      'one after the start does not count beside one before it',
      [
        ['2026-04-20', 26],
        ['2026-05-20', 22],
      ],
      -6,
    ],
  ] as const)('%s', async (_name, baselines, change) => {
    const { referralId } = await givenCourse(baselines);
    expect(await changeOf(referralId)).toBe(change);
  });

  it('the one entered last still counts after the other was corrected', async () => {
    const { referralId, ids } = await givenCourse([
      ['2026-04-20', 26],
      ['2026-04-20', 25],
    ]);
    const path = `/api/v1/assessments/${ids[0] ?? ''}`;
    const entry = asRecord(asRecord((await app.as('clinician').get(path)).body)['entry']);
    const corrected = await app
      .as('clinician')
      .put(path, { ...entry, weightKg: 70, reason: 'Scale was off' });
    expect(corrected.status, corrected.text).toBe(200);
    expect(await changeOf(referralId)).toBe(-5);
    const [first, second] = itemsOf(await app.as('clinician').get(at(referralId)));
    expect([first, second].map((each) => textAt(asRecord(each), 'id'))).toEqual(ids);
  });

  it('the quality of the record tells how many have two, and who', async () => {
    const own = await startApp();
    const referralId = await givenReferral(own);
    for (const weightKg of [68, 69]) await givenAssessment(own, referralId, { weightKg });
    const session = await givenSession(own);
    await own.as('lead').put(`/api/v1/sessions/${session}/attendances`, {
      attendances: [{ referralId, outcome: 'attended' }],
    });
    await givenAssessment(own, referralId, { timepoint: 'discharge', assessedOn: '2026-07-01' });
    const report = await own.as('lead').get('/api/v1/reports/quarterly?period=2026-27-Q2');
    const figures = asRecords(asRecord(asRecord(report.body)['dataQuality'])['entry']);
    const said = figures
      .filter(({ id }) => String(id).startsWith('several-assessments.'))
      .map(({ id, numerator, denominator }) => [id, numerator, denominator]);
    expect(said).toEqual([
      ['several-assessments.baseline', 1, 1],
      ['several-assessments.discharge', 0, 1],
    ]);
    const path = '/api/v1/reports/quarterly/figures/several-assessments.baseline/members?period=2026-27-Q2';
    const [member] = itemsOf(await own.as('lead').get(path));
    expect(member).toMatchObject({
      referralId,
      kind: 'numerator',
      reason: '2 baseline assessments; more than once: ISWD, 1-min STS, CAT',
    });
    await own.close();
  });
});
