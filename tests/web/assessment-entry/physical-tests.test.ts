import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { PHYSICAL_TESTS } from '../../../src/domain/measures/registered.js';
import { pagesAs } from '../../support/page-client.js';
import type { PageClient } from '../../support/page-client.js';
import { asRecord, asRecords, itemsOf } from '../../support/response.js';
import { givenTriagedReferral } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

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
const begun = (month = '4'): Record<string, string> => ({
  'assessedOn-day': '20',
  'assessedOn-month': month,
  'assessedOn-year': '2026',
  siteId: app.siteId,
  safetyScreen: 'no-concern',
});
const GRIP = {
  'p.handgrip-strength.condition.side': 'left',
  'p.handgrip-strength.condition.device': 'hydraulic-dynamometer',
  'p.handgrip-strength.value.handgrip-strength': '24.5',
};
const stored = async () =>
  itemsOf(await app.as('clinician').get(`/api/v1/referrals/${referralId}/assessments`));
const entryOf = (assessment: unknown) => asRecord(asRecord(assessment)['entry']);

describe('physical tests on the sheet of an assessment', () => {
  it('are all there, each with its conditions, its parts and the reason why it was not done', async () => {
    const { text } = await pages.get(sheet());
    expect(PHYSICAL_TESTS.length).toBeGreaterThan(0);
    for (const { id, conditions, parts, measures } of PHYSICAL_TESTS) {
      const names = [
        ...conditions.map((condition) => `p.${id}.condition.${condition.id}`),
        ...parts.flatMap((part) => [`p.${id}.part.${part.id}`, `p.${id}.unable.${part.id}`]),
        ...measures.map((measure) => `p.${id}.value.${measure.id}`),
        `p.${id}.notDoneReason`,
      ];
      for (const name of names) expect(text).toContain(`name="${name}"`);
    }
  });

  it('are recorded as the API would: typed, from parts, unable, and not done', async () => {
    const response = await pages.submit(sheet(), {
      ...begun(),
      ...GRIP,
      'p.four-metre-gait-speed.part.four-metre-walk': '5',
      'p.four-metre-gait-speed.condition.start': 'standing',
      'p.short-physical-performance-battery.unable.five-chair-stands': 'yes',
      'p.quadriceps-strength.notDoneReason': 'no-equipment',
    });
    expect(response.status, response.text).toBe(303);
    const [assessment] = await stored();
    const byTest = new Map(
      asRecords(entryOf(assessment)['physicalTests']).map((each) => [each['test'], each]),
    );
    expect(byTest.get('handgrip-strength')).toMatchObject({
      conditions: { side: 'left', device: 'hydraulic-dynamometer' },
      measure: 'handgrip-strength',
      value: 24.5,
      parts: null,
      notDoneReason: null,
    });
    expect(byTest.get('four-metre-gait-speed')).toMatchObject({
      conditions: { start: 'standing' },
      parts: { 'four-metre-walk': 5 },
    });
    expect(byTest.get('short-physical-performance-battery')).toMatchObject({
      parts: { 'five-chair-stands': 'unable' },
      notDoneReason: null,
    });
    expect(byTest.get('quadriceps-strength')).toMatchObject({ value: null, notDoneReason: 'no-equipment' });
    // 4 m in 5 s.
    expect(asRecords(asRecord(assessment)['physicalResults'])).toEqual(
      expect.arrayContaining([
        expect.objectContaining({ measure: 'four-metre-gait-speed', value: 0.8 }),
        expect.objectContaining({ measure: 'handgrip-strength', value: 24.5 }),
      ]),
    );
    expect((await pages.get(String(response.headers['location']))).text).toContain('24.5\u00a0kg');
  });

  it('show their figures as they are typed, and say why there is none', async () => {
    const checked = await pages.submit(
      sheet(),
      {
        ...begun(),
        'p.four-metre-gait-speed.part.four-metre-walk': '5',
        'p.short-physical-performance-battery.part.tandem': '10',
      },
      `${sheet()}/check`,
    );
    expect(checked.text).toMatch(/data-figures="p.four-metre-gait-speed"><span>4MGS 0.8\u00a0m\/s/);
    expect(checked.text).toMatch(
      /data-figures="p.short-physical-performance-battery"><span>SPPB: no result\. No total without/,
    );
  });

  it('say at their fields what is wrong, and keep what was typed on the page and in the draft', async () => {
    const wrong = {
      ...begun(),
      'p.handgrip-strength.value.handgrip-strength': '95',
      'p.four-metre-gait-speed.part.four-metre-walk': '5',
      'p.four-metre-gait-speed.unable.four-metre-walk': 'yes',
      'p.quadriceps-strength.value.quadriceps-strength': '20',
      'p.quadriceps-strength.value.quadriceps-torque': '80',
      'p.short-physical-performance-battery.part.tandem': '11',
    };
    const response = await pages.submit(sheet(), wrong);
    expect(response.status).toBe(422);
    for (const field of [
      'p_handgrip-strength_value_handgrip-strength',
      'p_four-metre-gait-speed_part_four-metre-walk',
      'p_quadriceps-strength_value_quadriceps-torque',
      'p_short-physical-performance-battery_part_tandem',
    ]) {
      expect(response.text).toContain(`href="#field-${field}"`);
    }
    expect(response.text).toMatch(/name="p.handgrip-strength.value.handgrip-strength"[^>]*value="95"/);
    expect(response.text).toMatch(/name="p.four-metre-gait-speed.unable.four-metre-walk"[^>]*checked/);
    expect(await stored()).toEqual([]);
    const draft = await app.as('clinician').get(`/api/v1/referrals/${referralId}/drafts/baseline`);
    expect(asRecord(draft.body)['fields']).toMatchObject({
      'p.quadriceps-strength.value.quadriceps-torque': ['80'],
      'p.four-metre-gait-speed.unable.four-metre-walk': ['yes'],
    });
  });

  it('at discharge show the baseline, and carry over what must be the same, but no result', async () => {
    await pages.submit(sheet(), { ...begun(), ...GRIP });
    const { text } = await pages.get(sheet('discharge'));
    expect(text).toContain('Baseline 24.5\u00a0kg');
    expect(text).toMatch(/name="p.handgrip-strength.condition.side"[\s\S]*?value="left" selected/);
    expect(text).toMatch(/name="p.handgrip-strength.value.handgrip-strength"(?![^>]*value=)/);
    const response = await pages.submit(sheet('discharge'), {
      ...begun('6'),
      'p.handgrip-strength.condition.side': 'left',
    });
    expect(response.status).toBe(303);
    expect((await stored()).map((each) => entryOf(each)['physicalTests'])).toMatchObject([
      [{ test: 'handgrip-strength' }],
      [],
    ]);
  });
});
