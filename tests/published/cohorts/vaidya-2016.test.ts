// Source: Vaidya T and others 2016, Int J COPD 11:2609 (doi 10.2147/COPD.S115439), abstract.
// Printed: 48 people with COPD; one-minute sit-to-stand change 3.8 (SD 4.2) repetitions.
// No interval is printed. By hand with t of 47 degrees of freedom: 2.012 x 4.2 / sqrt(48) = 1.22, so 2.6 to 5.0
// repetitions; with the normal quantile the half-width would be 1.19.
// Tolerance: half a unit of the last printed place for the mean and the SD. An SD printed to 0.1 leaves the half-width
// open by 0.05 x 2.012 / sqrt(48) = 0.015, which tells the two quantiles apart.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  expectPrinted,
  expectWithin,
  halfWidth,
  momentsOfGroups,
  peopleOf,
} from '../../support/cohort-groups.js';
import type { Group } from '../../support/cohort-groups.js';
import { outcomeOf, readReport } from '../../support/published-cohort.js';
import type { OutcomeShown } from '../../support/published-cohort.js';
import { givenAssessment, givenReferral, givenSession } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

/** Whole repetitions; baselines are not printed. Changes: 182 over 48 people, mean 3.79; SD 4.19. */
const STANDS: readonly Group[] = [
  [26, 18, 0],
  [19, 18, 8],
  [3, 18, 10],
];

const BASELINE = { timepoint: 'baseline', assessedOn: '2026-04-20', walkTests: [], questionnaires: [] };
const DISCHARGE = { ...BASELINE, timepoint: 'discharge', assessedOn: '2026-06-26' };
const stands = (repetitions: number) => ({
  sitToStands: [{ test: 'one-minute-sit-to-stand', repetitions }],
});

/** Every entry goes through the API here. */
describe('one-minute sit-to-stand, Vaidya 2016', () => {
  let app: TestApp;
  let outcome: OutcomeShown;
  beforeAll(async () => {
    app = await startApp();
    const attendances: { referralId: string; outcome: string }[] = [];
    for (const { baseline, discharge } of peopleOf(STANDS)) {
      const referralId = await givenReferral(app);
      await givenAssessment(app, referralId, { ...BASELINE, ...stands(baseline) });
      await givenAssessment(app, referralId, { ...DISCHARGE, ...stands(discharge) });
      attendances.push({ referralId, outcome: 'attended' });
    }
    const sessionId = await givenSession(app);
    const register = await app.as('lead').put(`/api/v1/sessions/${sessionId}/attendances`, { attendances });
    expect(register.status, register.text).toBe(200);
    outcome = outcomeOf(await readReport(app), 'one-minute-sit-to-stand');
  });
  afterAll(() => app.close());

  it('is constructed from as many people with the printed mean and SD', () => {
    const { change } = momentsOfGroups(STANDS);
    expect(change.n).toBe(48);
    expectPrinted(change.mean, '3.8');
    expectPrinted(change.sd, '4.2');
  });

  it('gives the printed mean and SD, and the t interval they make', () => {
    const { change } = outcome.likeForLike;
    expect(change.n).toBe(48);
    expectPrinted(change.mean, '3.8');
    expectPrinted(change.sd, '4.2');
    expectWithin(halfWidth(change.interval), 1.22, 0.015);
  });

  it('counts who reached the threshold of 3 repetitions', () => {
    // 19 + 3 people gained eight or ten, 26 gained none.
    expect(outcome.likeForLike.midReached).toMatchObject({ numerator: 22, denominator: 48 });
    expect(outcome.likeForLike.littleChange?.numerator).toBe(26);
    expect(outcome.likeForLike.worse?.numerator).toBe(0);
  });
});
