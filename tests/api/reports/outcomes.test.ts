import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { comparisonCautions, givenBothEnds, measureIn, outcomesOfReferral } from '../../support/both-ends.js';
import type { TwoEnds } from '../../support/both-ends.js';
import { aShuttleWalk, aSixMinuteWalk } from '../../support/entries.js';
import type { Body } from '../../support/entries.js';
import { asRecord, asRecords, expectProblem } from '../../support/response.js';
import { givenReferral } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

const ISWD = 'incremental-shuttle-walk-distance';
const SIX_MINUTE = 'six-minute-walk-distance';

describe('outcomes of unlike pairs', () => {
  let service: TestApp;
  beforeAll(async () => {
    service = await startApp();
  });
  afterAll(() => service.close());

  const outcomes = async (ends: TwoEnds) => outcomesOfReferral(service, await givenBothEnds(service, ends));
  const walks = (changes: Body, distanceM: number): Body => ({
    walkTests: [aShuttleWalk(distanceM - 10, 1, changes), aShuttleWalk(distanceM, 2, changes)],
  });

  it.each<[string, Body, Body, string]>([
    [
      'another walking aid',
      { walkingAid: 'none' },
      { walkingAid: 'rollator' },
      'walking aid none at baseline, rollator at discharge',
    ],
    [
      'another flow of oxygen',
      { oxygenLPerMin: 0 },
      { oxygenLPerMin: 2 },
      'oxygen 0 l/min at baseline, 2 l/min at discharge',
    ],
    ['an aid that nobody wrote down', {}, { walkingAid: null }, 'walking aid not recorded at discharge'],
    [
      'home and course',
      { place: 'course' },
      { place: 'home' },
      'place course at baseline, home at discharge',
    ],
  ])('keep the change, and name the difference: %s', async (_name, before, after, words) => {
    const found = await outcomes({ baseline: walks(before, 200), discharge: walks(after, 260) });
    expect(measureIn(found, ISWD)).toMatchObject({
      change: 60,
      class: 'improved',
      isLikeForLike: false,
      differences: [words],
      noPairReason: null,
    });
    expect(comparisonCautions(found, ISWD)).toContain('conditions-differ');
  });

  it('name the length of the course', async () => {
    const found = await outcomes({
      baseline: { walkTests: [aSixMinuteWalk(300)] },
      discharge: {
        walkTests: [aSixMinuteWalk(340, { courseLengthM: 20 })],
        confirmed: ['/walkTests/0/courseLengthM'],
      },
    });
    expect(measureIn(found, SIX_MINUTE)).toMatchObject({
      isLikeForLike: false,
      differences: ['course length 30 m at baseline, 20 m at discharge'],
    });
  });

  it('name every difference of a pair that has several', async () => {
    const found = await outcomes({
      baseline: walks({ walkingAid: 'stick', oxygenLPerMin: 1 }, 100),
      discharge: walks({ walkingAid: 'frame', oxygenLPerMin: 2 }, 110),
    });
    expect(measureIn(found, ISWD)['differences']).toEqual([
      'walking aid stick at baseline, frame at discharge',
      'oxygen 1 l/min at baseline, 2 l/min at discharge',
    ]);
  });

  it('mark a single walk at its end and once only, and compare it all the same', async () => {
    const found = await outcomes({
      baseline: walks({}, 200),
      discharge: { walkTests: [aShuttleWalk(210, 1)] },
    });
    const { discharge } = measureIn(found, ISWD);
    expect(measureIn(found, ISWD)).toMatchObject({
      change: 10,
      class: 'little-change',
      isLikeForLike: true,
      baseline: { hadPracticeWalk: true },
      discharge: { hadPracticeWalk: false },
    });
    const said = asRecords(found['cautions']).filter((caution) => caution['id'] === 'no-practice-walk');
    expect(said).toMatchObject([
      { measureId: ISWD, assessmentId: asRecord(discharge)['assessmentId'], mustBeAcknowledged: false },
    ]);
  });

  it('give no change of an endurance walk at another speed, and say so', async () => {
    const walk = (timeS: number, speedLevel: number): Body => ({
      walkTests: [aShuttleWalk(0, 1, { test: 'endurance-shuttle-walk', distanceM: null, timeS, speedLevel })],
    });
    const found = await outcomes({ baseline: walk(240, 5), discharge: walk(600, 6) });
    expect(measureIn(found, 'endurance-shuttle-walk-time')).toMatchObject({
      change: null,
      improvement: null,
      class: null,
      isLikeForLike: null,
      noPairReason: 'Not comparable: speed level 5 at baseline, 6 at discharge',
      // Both ends are shown all the same.
      baseline: { value: 240, conditions: { speedLevel: '5' } },
      discharge: { value: 600, conditions: { speedLevel: '6' } },
    });
    const same = await outcomes({ baseline: walk(240, 5), discharge: walk(414, 5) });
    // 414 - 240 = 174 s, the threshold itself.
    expect(measureIn(same, 'endurance-shuttle-walk-time')).toMatchObject({ change: 174, class: 'improved' });
  });

  it('never compare the incremental walk of 12 levels with that of 15', async () => {
    const long: Body = { walkTests: [aShuttleWalk(300, 1, { test: 'incremental-shuttle-walk-15-level' })] };
    const found = await outcomes({ baseline: walks({}, 200), discharge: long });
    expect(measureIn(found, ISWD)).toMatchObject({ change: null, noPairReason: 'No discharge result' });
    const other = measureIn(found, 'incremental-shuttle-walk-15-level-distance');
    expect(other).toMatchObject({ change: null, noPairReason: 'No baseline result', baseline: null });
  });

  it('take zero metres for a result, and a test not done for none', async () => {
    const zero = await outcomes({
      baseline: {
        walkTests: [aShuttleWalk(0, 1), aShuttleWalk(0, 2)],
        confirmed: ['/walkTests/0/distanceM', '/walkTests/1/distanceM'],
      },
      discharge: walks({}, 50),
    });
    // 50 - 0 = 50 >= 47.5.
    expect(measureIn(zero, ISWD)).toMatchObject({ baseline: { value: 0 }, change: 50, class: 'improved' });
    const notDone = await outcomes({
      baseline: {
        walkTests: [{ test: 'incremental-shuttle-walk', attempt: 1, notDoneReason: 'unable' }],
      },
      discharge: walks({}, 50),
    });
    expect(measureIn(notDone, ISWD)).toMatchObject({ baseline: null, change: null, class: null });
  });

  it('show what there is of a person measured at one end only', async () => {
    const found = await outcomes({ baseline: walks({}, 200), discharge: null });
    expect(measureIn(found, ISWD)).toMatchObject({
      baseline: { value: 200 },
      discharge: null,
      noPairReason: 'No discharge result',
    });
  });

  it('are an empty list for a referral of which nothing was measured', async () => {
    const found = await outcomesOfReferral(service, await givenReferral(service));
    expect(found).toMatchObject({ stage: 'awaiting-triage', measures: [], cautions: [] });
  });

  it('are of the own team only, and no business of an administrator', async () => {
    const referralId = await givenReferral(service);
    const path = `/api/v1/referrals/${referralId}/outcomes`;
    expectProblem(await service.as('other-team').get(path), { status: 404, type: 'not-found' });
    expectProblem(await service.as('admin').get(path), { status: 403, type: 'not-allowed' });
    expectProblem(await service.as('clinician').get(`/api/v1/referrals/${randomUUID()}/outcomes`), {
      status: 404,
      type: 'not-found',
    });
  });

  describe('beside what is predicted', () => {
    const predictedAt = async (
      ends: Pick<TwoEnds, 'patient'> & { readonly baseline: Body; readonly measureId: string },
    ) => {
      const found = await outcomes({ ...ends, discharge: null });
      const { baseline } = measureIn(found, ends.measureId);
      return { found, predicted: asRecord(asRecord(baseline)['predicted']) };
    };

    it('give no prediction where the sex at birth is not known, say why, and assume nothing', async () => {
      const patient = { sexAtBirth: 'not-known' };
      const { found, predicted } = await predictedAt({
        patient,
        baseline: walks({}, 200),
        measureId: ISWD,
      });
      expect(predicted).toEqual({
        equationId: 'probst-2012',
        predicted: null,
        percentPredicted: null,
        lowerLimit: null,
        isBelowLowerLimit: null,
        beyondAgesStudied: false,
        notPredictedReason:
          'The equation needs the sex at birth, female or male; it is not known and is not assumed.',
      });
      expect(comparisonCautions(found, ISWD)).toContain('not-predicted');
    });

    it.each([
      ['height', { heightCm: null }],
      ['weight', { weightKg: null }],
    ])('give no prediction without a %s', async (word, changes) => {
      const baseline = { ...walks({}, 200), ...changes };
      const { predicted } = await predictedAt({ baseline, measureId: ISWD });
      expect(predicted).toMatchObject({ predicted: null, percentPredicted: null });
      expect(predicted['notPredictedReason']).toContain(word);
    });

    it('mark an age beyond those studied, and compute it all the same', async () => {
      // 86 years: 1449.701 - 11.735 x 86 - 5.686 x 26.7578125 = 1449.701 - 1009.21 - 152.144922 = 288.346078 m.
      const { found, predicted } = await predictedAt({
        patient: { bornOn: '1940-01-01' },
        baseline: walks({}, 200),
        measureId: ISWD,
      });
      expect(predicted).toMatchObject({ beyondAgesStudied: true, notPredictedReason: null });
      expect(predicted['predicted']).toBeCloseTo(288.346078, 6);
      expect(comparisonCautions(found, ISWD)).toContain('beyond-ages-studied');
    });

    it('mark a result below the lower limit of normal', async () => {
      // 2.11 x 160 - 5.78 x 72 - 2.29 x 68.5 + 667 = 337.6 - 416.16 - 156.865 + 667 = 431.575 m, less 139 is 292.575 m.
      const at = async (distanceM: number) =>
        predictedAt({ baseline: { walkTests: [aSixMinuteWalk(distanceM)] }, measureId: SIX_MINUTE });
      const below = await at(292);
      expect(below.predicted['predicted']).toBeCloseTo(431.575, 6);
      expect(below.predicted['lowerLimit']).toBeCloseTo(292.575, 6);
      expect(below.predicted['isBelowLowerLimit']).toBe(true);
      expect(comparisonCautions(below.found, SIX_MINUTE)).toContain('below-lower-limit');
      const above = await at(293);
      expect(above.predicted['isBelowLowerLimit']).toBe(false);
      expect(comparisonCautions(above.found, SIX_MINUTE)).not.toContain('below-lower-limit');
    });
  });
});
