import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { PHYSICAL_TESTS, QUESTIONNAIRES } from '../../../src/domain/measures/registered.js';
import { givenAssessment, givenTriagedReferral } from '../../support/scenario.js';
import { pagesAs } from '../../support/page-client.js';
import type { PageClient } from '../../support/page-client.js';
import { asRecord, asRecords, itemsOf } from '../../support/response.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

/** Today is 25 November 2026; the referral was received on 2 April. */
let app: TestApp;
let pages: PageClient;
let referralId: string;
beforeAll(async () => {
  app = await startApp();
  pages = await pagesAs(app, 'clinician');
});
beforeEach(async () => {
  referralId = await givenTriagedReferral(app);
});
afterAll(() => app.close());

const sheet = (timepoint = 'baseline'): string => `/referrals/${referralId}/assessments/${timepoint}`;
const day = { 'assessedOn-day': '20', 'assessedOn-month': '4', 'assessedOn-year': '2026' };
/** CAT items 3, 3, 2, 4, 3, 2, 3, 2 add up to 22. */
const cat = Object.fromEntries(
  [3, 3, 2, 4, 3, 2, 3, 2].map((score, index) => [`q.copd-assessment-test.${index + 1}`, String(score)]),
);
const walks = {
  walkTest: 'incremental-shuttle-walk',
  place: 'course',
  courseLengthM: '10',
  walkingAid: 'none',
  oxygenLPerMin: '0',
  'walk1.distanceM': '180',
  // 3 + 4 + 5 + 6 = 18 shuttles of levels 1 to 4 and 2 of level 5: 200 m.
  'walk2.level': '5',
  'walk2.shuttles': '2',
};
const whole = (): Record<string, string> => ({
  ...day,
  siteId: app.siteId,
  safetyScreen: 'no-concern',
  heightCm: '160',
  weightKg: '68.5',
  ...walks,
  sitToStandTest: 'one-minute-sit-to-stand',
  'sitToStand.repetitions': '18',
  ...cat,
});
const stored = async () =>
  itemsOf(await app.as('clinician').get(`/api/v1/referrals/${referralId}/assessments`));
const draft = async () =>
  asRecord((await app.as('clinician').get(`/api/v1/referrals/${referralId}/drafts/baseline`)).body);

describe('the sheet of an assessment', () => {
  it('records what the API would, and leads to its results', async () => {
    const response = await pages.submit(sheet(), whole());
    expect(response.status, response.text).toBe(303);
    const [assessment] = await stored();
    expect(assessment).toMatchObject({
      scores: [{ measure: 'cat-total', value: 22, basis: 'items' }],
      entry: {
        timepoint: 'baseline',
        assessedOn: '2026-04-20',
        siteId: app.siteId,
        heightCm: 160,
        weightKg: 68.5,
        safetyScreen: 'no-concern',
        walkTests: [
          { attempt: 1, distanceM: 180, courseLengthM: 10, walkingAid: 'none', oxygenLPerMin: 0 },
          { attempt: 2, distanceM: 200, level: null },
        ],
        sitToStands: [{ test: 'one-minute-sit-to-stand', repetitions: 18 }],
      },
    });
    const recorded = await pages.get(String(response.headers['location']));
    expect(recorded.text).toContain('The assessment is recorded');
    expect(recorded.text).toContain('200\u00a0m');
  });

  it('is carried out once, however often the button is pressed', async () => {
    const { text } = await pages.get(sheet());
    const hidden = Object.fromEntries(
      ['_csrf', '_key', 'draftVersion'].map((name) => [
        name,
        new RegExp(`name="${name}" value="([^"]*)"`).exec(text.slice(text.indexOf('class="sheet"')))?.[1] ??
          '',
      ]),
    );
    const fields = { ...hidden, ...whole() };
    const answers = await Promise.all([1, 2, 3].map(() => pages.post(sheet(), fields)));
    expect(answers.map(({ status }) => status)).toEqual([303, 303, 303]);
    expect(new Set(answers.map(({ headers }) => headers['location'])).size).toBe(1);
    expect(await stored()).toHaveLength(1);
  });

  it('is not taken a second time with the same content: it says so on the sheet and leads to the one that is there', async () => {
    const first = await pages.submit(sheet(), whole());
    const again = await pages.submit(sheet(), whole());
    expect(again.status).toBe(409);
    expect(again.text).toContain('The assessment is recorded already');
    expect(again.text).toContain(`href="${String(first.headers['location'])}"`);
    expect(again.text).toContain(
      'Test clinician recorded the baseline assessment of 20 April 2026 on 25 November 2026, 10:00',
    );
    expect(again.text).not.toContain('A baseline assessment is recorded already');
    expect(again.text).toContain('value="68.5"');
    expect(await stored()).toHaveLength(1);
    // A reload loses nothing of it either.
    expect((await pages.get(sheet())).text).toContain('value="68.5"');
    const second = await pages.submit(sheet(), { ...whole(), weightKg: '69' });
    expect(second.status, second.text).toBe(303);
    expect(await stored()).toHaveLength(2);
  });

  it('says which counts where one is recorded already', async () => {
    await givenAssessment(app, referralId);
    expect((await pages.get(sheet())).text).toContain('of each measure the latest up to the start counts');
  });

  it('names what is wrong at the field and at the top, and keeps what was typed, on the page and as a draft', async () => {
    const wrong = {
      ...whole(),
      'walk1.distanceM': '285',
      weightKg: 'sixty',
      'q.copd-assessment-test.8': '9',
    };
    const response = await pages.submit(sheet(), wrong);
    expect(response.status).toBe(422);
    expect(response.text).toContain('href="#field-walk1_distanceM"');
    expect(response.text).toContain('Give a number. You entered sixty.');
    expect(response.text).toContain('href="#field-q_copd-assessment-test_8"');
    for (const typed of ['285', 'sixty', '9']) expect(response.text).toContain(`value="${typed}"`);
    expect(await stored()).toEqual([]);
    expect(await draft()).toMatchObject({
      state: 'open',
      fields: { 'walk1.distanceM': ['285'], weightKg: ['sixty'] },
    });
  });

  it('asks about an unusual value, takes it when it is confirmed, and asks again when it is another', async () => {
    const unusual = { ...whole(), weightKg: '190' };
    const asked = await pages.submit(sheet(), unusual);
    expect(asked.status).toBe(422);
    expect(asked.text).toContain('190 is right');
    const changed = await pages.submit(sheet(), { ...unusual, weightKg: '195', 'confirm.weightKg': '190' });
    expect(changed.status).toBe(422);
    expect(await stored()).toEqual([]);
    const confirmed = await pages.submit(sheet(), { ...unusual, 'confirm.weightKg': '190' });
    expect(confirmed.status, confirmed.text).toBe(303);
    expect(await stored()).toMatchObject([{ entry: { weightKg: 190, confirmed: ['/weightKg'] } }]);
  });

  it('takes a reason for every test that was not done', async () => {
    const response = await pages.submit(sheet(), {
      ...day,
      siteId: app.siteId,
      safetyScreen: 'concern',
      safetyFindings: ['unstable-angina'],
      walkTest: 'six-minute-walk',
      'walk1.notDoneReason': 'not-safe',
      sitToStandTest: 'one-minute-sit-to-stand',
      'sitToStand.notDoneReason': 'unable',
      'q.copd-assessment-test.notDoneReason': 'language',
    });
    expect(response.status, response.text).toBe(303);
    expect(await stored()).toMatchObject([
      {
        entry: {
          safetyFindings: ['unstable-angina'],
          walkTests: [{ notDoneReason: 'not-safe', distanceM: null }],
          sitToStands: [{ notDoneReason: 'unable' }],
          questionnaires: [{ notDoneReason: 'language' }],
        },
      },
    ]);
  });

  it('takes a reason for each questionnaire and each physical test that there is', async () => {
    const questionnaires = QUESTIONNAIRES.map(({ id }) => id);
    const physicalTests = PHYSICAL_TESTS.map(({ id }) => id);
    const reasons = [
      ...questionnaires.map((id) => [`q.${id}.notDoneReason`, 'no-time'] as const),
      ...physicalTests.map((id) => [`p.${id}.notDoneReason`, 'no-equipment'] as const),
    ];
    const { text } = await pages.get(sheet());
    for (const [name] of reasons) expect(text).toContain(`<select name="${name}"`);
    const response = await pages.submit(sheet(), {
      ...day,
      siteId: app.siteId,
      safetyScreen: 'no-concern',
      ...Object.fromEntries(reasons),
    });
    expect(response.status, response.text).toBe(303);
    const [assessment] = await stored();
    const entry = asRecord(asRecord(assessment)['entry']);
    const told = (list: unknown, name: string) =>
      asRecords(list).map((each) => [each[name], each['notDoneReason']]);
    expect(told(entry['questionnaires'], 'questionnaire').sort()).toEqual(
      questionnaires.map((id) => [id, 'no-time']).sort(),
    );
    expect(told(entry['physicalTests'], 'test').sort()).toEqual(
      physicalTests.map((id) => [id, 'no-equipment']).sort(),
    );
  });

  it('takes zero for a result, and an empty field for nothing', async () => {
    const response = await pages.submit(sheet(), {
      ...whole(),
      'walk1.distanceM': '0',
      'confirm.walk1.distanceM': '0',
      'walk2.level': '',
      'walk2.shuttles': '',
    });
    expect(response.status, response.text).toBe(303);
    const [assessment] = await stored();
    expect(asRecord(asRecord(assessment)['entry'])['walkTests']).toMatchObject([
      { attempt: 1, distanceM: 0 },
    ]);
  });
});

describe('checking without recording', () => {
  it('shows distance, score, share of predicted and change from baseline', async () => {
    await givenAssessment(app, referralId);
    const response = await pages.submit(
      sheet('discharge'),
      {
        ...whole(),
        'assessedOn-day': '22',
        'assessedOn-month': '6',
        'walk2.level': '6',
        'walk2.shuttles': '0',
      },
      `${sheet('discharge')}/check`,
    );
    expect(response.status, response.text).toBe(200);
    // Levels 1 to 5 hold 25 shuttles; the baseline was 200 m and 22 points.
    expect(response.text).toContain('250\u00a0m');
    expect(response.text).toMatch(
      /ISWD 250\u00a0m; \d+\u00a0% of predicted .*; \+50\u00a0m, better by the MID or more; baseline 200\u00a0m/,
    );
    expect(response.text).toContain('CAT 22; no change; baseline 22');
    expect((await stored()).map((each) => asRecord(each['entry'])['timepoint'])).toEqual(['baseline']);
  });

  it('keeps the draft, which another person finds and goes on with', async () => {
    await pages.submit(
      sheet(),
      { ...day, 'walk1.distanceM': '180', notes: 'Cold & windy <hall>' },
      `${sheet()}/check`,
    );
    const lead = await pagesAs(app, 'lead');
    const page = await lead.get(sheet());
    expect(page.text).toContain('value="180"');
    expect(page.text).toContain('by Test clinician');
    expect(page.text).toContain('Cold &amp; windy');
    const recorded = await lead.submit(sheet(), whole());
    expect(recorded.status).toBe(303);
    expect(await draft()).toMatchObject({ state: 'recorded', fields: {} });
  });

  it('can be thrown away', async () => {
    await pages.submit(sheet(), { ...day, 'walk1.distanceM': '180' }, `${sheet()}/check`);
    const response = await pages.submit(sheet(), {}, `${sheet()}/discard`);
    expect(response.status).toBe(303);
    expect(await draft()).toMatchObject({ state: 'discarded', fields: {} });
    expect((await pages.get(sheet())).text).not.toContain('value="180"');
  });
});

describe('two people on one assessment', () => {
  it('the second is told by whom it was saved, keeps what was typed, and may go on with it', async () => {
    const lead = await pagesAs(app, 'lead');
    const before = await lead.get(sheet());
    const version = /name="draftVersion" value="(\d+)"/.exec(before.text)?.[1] ?? '';
    await pages.submit(sheet(), { ...day, heightCm: '171' }, `${sheet()}/check`);
    const late = await lead.submit(sheet(), { ...whole(), draftVersion: version });
    expect(late.status).toBe(409);
    expect(late.text).toContain(
      'Test clinician, 25 November 2026, 10:00, saved this draft on another page or device',
    );
    expect(late.text).toContain('value="68.5"');
    expect(await stored()).toEqual([]);
    expect(await draft()).toMatchObject({ fields: { heightCm: ['171'] } });
    const again = await lead.submit(sheet(), whole());
    expect(again.status).toBe(303);
    expect(await stored()).toHaveLength(1);
  });

  it('of whom one has recorded it, the other is told', async () => {
    const lead = await pagesAs(app, 'lead');
    await pages.submit(sheet(), { ...day, heightCm: '171' }, `${sheet()}/check`);
    const version = /name="draftVersion" value="(\d+)"/.exec((await lead.get(sheet())).text)?.[1] ?? '';
    await pages.submit(sheet(), whole());
    const late = await lead.submit(sheet(), { ...whole(), weightKg: '69', draftVersion: version });
    expect(late.status).toBe(409);
    expect(late.text).toContain('recorded this assessment');
    expect(late.text).toContain('is recorded already');
    expect(await stored()).toHaveLength(1);
  });
});

describe('the address that the script saves to', () => {
  it('answers with figures, what is missing next, and faults of what was typed only', async () => {
    const saved = await pages.submit(sheet(), { ...whole(), weightKg: '400' }, `${sheet()}/draft`);
    expect(saved.status, saved.text).toBe(200);
    expect(saved.body).toMatchObject({
      version: 1,
      words: 'Draft saved 25 November 2026, 10:00 by Test clinician.',
      faults: [{ field: 'weightKg' }],
      next: { what: 'resting values', id: 'field-spo2Percent' },
    });
    const figures = asRecord(asRecord(saved.body)['figures']);
    expect(figures['walk2']).toEqual(['200\u00a0m: level 5, 2 shuttles']);
    expect(figures['q.copd-assessment-test']).toEqual(['CAT 22']);
  });

  it('refuses to save over what somebody else has saved since, and says whose it is', async () => {
    const lead = await pagesAs(app, 'lead');
    await lead.submit(sheet(), { heightCm: '171' }, `${sheet()}/draft`);
    const late = await pages.submit(sheet(), { heightCm: '160', draftVersion: '0' }, `${sheet()}/draft`);
    expect(late.status).toBe(409);
    expect(late.body).toMatchObject({ version: 1 });
    expect(late.text).toContain('Test lead');
    expect(await draft()).toMatchObject({ fields: { heightCm: ['171'] } });
  });
});

describe('the door', () => {
  it.each(['admin', 'commissioner'] as const)('is closed to the %s', async (role) => {
    const response = await (await pagesAs(app, role)).get(sheet());
    expect(response.status).toBe(403);
  });

  it('leads nowhere for another team, another kind of assessment, or no referral', async () => {
    for (const path of [
      sheet('midway'),
      '/referrals/00000000-0000-4000-8000-000000000000/assessments/baseline',
      '/referrals/nobody/assessments/baseline',
    ]) {
      expect((await pages.get(path)).status, path).toBe(404);
    }
  });
});
