import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { aShuttleWalk } from '../../support/entries.js';
import { givenBothEnds } from '../../support/both-ends.js';
import { pagesAs } from '../../support/page-client.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let service: TestApp;
beforeAll(async () => {
  service = await startApp();
});
afterAll(() => service.close());

describe('cautions that both assessments raise', () => {
  it('say which of them did, and name the walk once', async () => {
    const walked = {
      walkTests: ([1, 2] as const).map((attempt) =>
        aShuttleWalk(200 + attempt * 10, attempt, { startSpo2Percent: 95, lowestSpo2Percent: 88 }),
      ),
    };
    const referralId = await givenBothEnds(service, { baseline: walked, discharge: walked });
    const { text } = await (await pagesAs(service, 'clinician')).get(`/referrals/${referralId}`);
    const told = [...text.matchAll(/<li><span>([^<]*SpO2 fell[^<]*)<\/span>/g)].map(
      ([, words = '']) => words.split('. ')[0],
    );
    expect(told.length).toBeGreaterThan(1);
    expect(new Set(told.map((words) => words?.replace(/ of \d+ \w+ \d{4}/, '')))).toEqual(
      new Set([
        'Baseline assessment: ISWT: SpO2 fell from 95 % to 88 %',
        'Discharge assessment: ISWT: SpO2 fell from 95 % to 88 %',
      ]),
    );
  });
});
