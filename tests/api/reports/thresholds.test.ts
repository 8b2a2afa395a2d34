import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { comparisonCautions, givenBothEnds, measureIn, outcomesOfReferral } from '../../support/both-ends.js';
import { aShuttleWalk } from '../../support/entries.js';
import type { Body } from '../../support/entries.js';
import { asRecord } from '../../support/response.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

const ISWD = 'incremental-shuttle-walk-distance';
const walk = (distanceM: number): Body => ({
  walkTests: [aShuttleWalk(distanceM, 1), aShuttleWalk(distanceM, 2)],
});
const questionnaire = (id: string, measure: string, value: number, more: Body = {}): Body => ({
  questionnaires: [{ questionnaire: id, typedScores: [{ measure, value }], ...more }],
});

describe('thresholds beside the outcomes', () => {
  let service: TestApp;
  beforeEach(async () => {
    service = await startApp();
  });
  afterEach(() => service.close());

  const outcomes = async (baseline: Body, discharge: Body, referral: Body = {}) =>
    outcomesOfReferral(service, await givenBothEnds(service, { referral, baseline, discharge }));
  const choose = async (changes: Body): Promise<void> => {
    const settings = asRecord((await service.as('lead').get('/api/v1/settings')).body);
    const { version, ...choices } = settings;
    expect(version).toBe(0);
    const body = { ...choices, ...changes, reason: 'Agreed by the team' };
    const response = await service.as('lead').put('/api/v1/settings', body);
    expect(response.status, response.text).toBe(200);
  };

  it('say what a threshold off the grid of its measure amounts to, with its source', async () => {
    const found = await outcomes(walk(200), walk(240));
    expect(measureIn(found, ISWD)).toMatchObject({
      change: 40,
      class: 'little-change',
      improvementThreshold: {
        thresholdId: 'iswd-singh-2008',
        value: 47.5,
        chosenBy: 'catalogue default',
        population: 'COPD, after 7 weeks of rehabilitation',
        populationNote: null,
        source: { id: 'singh-2008', status: 'retrieved', mark: null },
      },
    });
    expect(asRecord(measureIn(found, ISWD)['improvementThreshold'])['amountsTo']).toMatch(/at least 50 m/);
    expect(comparisonCautions(found, ISWD)).not.toContain('threshold-source-not-read');
  });

  it.each([
    // Walks of 190 and 150 m: 40 m more and less of 200 is within 47.5 m; 50 m is not.
    [200, 160, 'little-change'],
    [200, 150, 'worse'],
    [200, 250, 'improved'],
  ])('judge %d to %d m as %s: reaching the threshold counts', async (before, after, judged) => {
    const found = await outcomes(walk(before), walk(after));
    expect(measureIn(found, ISWD)['class']).toBe(judged);
  });

  it('mark a threshold whose source was not read, beside the figure and as a caution', async () => {
    const id = 'chronic-respiratory-questionnaire';
    const typed = (value: number): Body => questionnaire(id, 'crq-total', value, { form: 'self-reported' });
    const found = await outcomes(typed(3), typed(4));
    expect(measureIn(found, 'crq-total')).toMatchObject({
      class: 'improved',
      improvementThreshold: {
        thresholdId: 'crq-total-extension',
        source: { status: 'from-memory', mark: 'from memory, check before use' },
      },
    });
    expect(comparisonCautions(found, 'crq-total')).toContain('threshold-source-not-read');
  });

  it('mark a threshold that was found in another disease', async () => {
    const found = await outcomes(walk(200), walk(240), { diagnosis: 'asthma' });
    const note = 'Threshold found in COPD, used for asthma: not reaching it is no proof of no benefit';
    expect(measureIn(found, ISWD)).toMatchObject({ improvementThreshold: { populationNote: note } });
    expect(comparisonCautions(found, ISWD)).toContain('threshold-of-another-diagnosis');
  });

  it("judge by the team's own choice, and by its choice for a diagnosis before that", async () => {
    await choose({
      thresholds: { [ISWD]: 'iswd-daynes-2025' },
      thresholdsByDiagnosis: { [`${ISWD}/bronchiectasis`]: 'iswd-lee-2014' },
    });
    // 40 m is short of 48 m, and more than the 35 m for bronchiectasis.
    const ofAll = await outcomes(walk(200), walk(240));
    expect(ofAll).toMatchObject({ settingsVersion: 1 });
    expect(measureIn(ofAll, ISWD)).toMatchObject({
      class: 'little-change',
      improvementThreshold: { thresholdId: 'iswd-daynes-2025', value: 48, chosenBy: 'team' },
    });
    const ofSome = await outcomes(walk(200), walk(240), { diagnosis: 'bronchiectasis' });
    expect(measureIn(ofSome, ISWD)).toMatchObject({
      class: 'improved',
      improvementThreshold: { thresholdId: 'iswd-lee-2014', value: 35, chosenBy: 'team, for this diagnosis' },
    });
  });

  it('show the change only, where no threshold is published', async () => {
    const long = (distanceM: number): Body => ({
      walkTests: [aShuttleWalk(distanceM, 1, { test: 'incremental-shuttle-walk-15-level' })],
    });
    const found = await outcomes(long(300), long(500));
    expect(measureIn(found, 'incremental-shuttle-walk-15-level-distance')).toMatchObject({
      change: 200,
      improvement: 200,
      class: 'change-only',
      improvementThreshold: null,
      worseningThreshold: null,
    });
  });
});
