// The quarter of tests/support/worked-quarter.ts once more: its steps, its waits and its lost pairs, counted on paper.
import { describe, expect, it } from 'vitest';
import { buildQuarterlyReport } from '../../../src/reports/quarterly/build-quarterly-report.js';
import { outcomesOf, said } from '../../support/reported.js';
import { WORKED_INPUT } from '../../support/worked-quarter.js';

const report = buildQuarterlyReport(WORKED_INPUT);

describe('the steps of the worked quarter', () => {
  it('count how far each of the seventeen came', () => {
    // Completed R01 R02 R03 R12 R13; started R04 R05 R08 R17, and R09 who goes on; assessed R07 R18, and R11 who waits;
    // no further R06 R19, and R10 R24 who wait. Nobody was accepted and not assessed.
    expect(report.funnel.map(({ step, reached }) => [step, said(reached)])).toEqual([
      ['referred', '17 of 17'],
      ['accepted', '13 of 15, 2 open'],
      ['assessed', '13 of 15, 2 open'],
      ['started', '10 of 14, 3 open'],
      ['completed', '5 of 13, 4 open'],
    ]);
  });

  it('name who left after each, and why', () => {
    expect(
      report.funnel.map(({ left, leftBecause }) => [said(left), leftBecause.map((each) => each.id)]),
    ).toEqual([
      [
        '2 of 15, 2 open',
        ['funnel.left-after-referred.died', 'funnel.left-after-referred.triaged-not-suitable'],
      ],
      ['0 of 13', []],
      ['2 of 12, 1 open', ['funnel.left-after-assessed.declined', 'funnel.left-after-assessed.moved-away']],
      [
        '4 of 9, 1 open',
        ['completed', 'transferred', 'died', 'not-closed'].map(
          (reason) => `funnel.left-after-started.${reason}`,
        ),
      ],
      ['no figure', []],
    ]);
  });
});

describe('the wait for a start in the worked quarter', () => {
  /*
   * Days: left 6 R19, 12 R06, 21 R07, 23 R18; started 14 R05, 18 R03, 24 R04 R12, 26 R08, 28 R17, 32 R13, 63 R09, 90 R01,
   * 91 R02; still waiting 88 R10, 90 R11, 102 R24. Until day 88 nobody is cut off, so that shares are of seventeen.
   * On day 90 four are at risk, R11 among them, because a start comes before a cut on one day: 5/17 x 1/4. On day 91 two:
   * 15/68 x 1/2.
   */
  const [receipt, hospital] = report.waiting.clocks;

  it('is told of everybody, those who left and those who wait included', () => {
    expect(receipt?.referrals).toBe(17);
    expect(receipt?.days.map(({ day, atRisk }) => [day, atRisk])).toEqual([
      [30, 7],
      [60, 6],
      [90, 4],
      [120, 0],
      [180, 0],
    ]);
    const started = receipt?.days.map((each) => each.started?.percent ?? null) ?? [];
    expect(started[0]).toBeCloseTo((100 * 6) / 17, 9);
    expect(started[1]).toBeCloseTo((100 * 7) / 17, 9);
    expect(started[2]).toBeCloseTo((100 * 37) / 68, 9);
    // Nobody was followed for 120 days, and R24 still waits.
    expect(started.slice(3)).toEqual([null, null]);
    expect(receipt?.days[2]?.stillWaitingPercent).toBeCloseTo((100 * 15) / 68, 9);
    for (const { ending, percent } of receipt?.days[0]?.leftBy ?? []) {
      const left = ending === 'left-otherwise' ? 0 : 1;
      expect([ending, percent]).toEqual([ending, expect.closeTo((100 * left) / 17, 9)]);
    }
  });

  it('has the interval on the log(-log) scale', () => {
    // p = 6/17: standard error sqrt(p (1 - p) / 17) = 0.115904, p ln p = -0.367572, 1.959964 x 0.115904 / 0.367572 = 0.61802;
    // p to the power 1.85525 and to the power 0.53901.
    expect(receipt?.days[0]?.started?.interval?.low).toBeCloseTo(14.48, 2);
    expect(receipt?.days[0]?.started?.interval?.high).toBeCloseTo(57.04, 2);
  });

  it('counts who had started by a day: day 90 itself counts, and whoever waits on it is open', () => {
    expect(receipt?.days.map(({ startedByDay }) => said(startedByDay))).toEqual([
      '6 of 17',
      '7 of 17',
      // Not R02, R06, R07, R18, R19, R24.
      '9 of 15, 2 open',
      '10 of 14, 3 open',
      '10 of 14, 3 open',
    ]);
  });

  it('runs from hospital discharge for R12 and R13 alone, who started on days 28 and 30', () => {
    expect(hospital?.referrals).toBe(2);
    expect(hospital?.days[0]?.started).toEqual({ percent: 100, interval: null });
  });

  it('lists who waits at the cut: R24 for 102 days, R11 for 90, which is not more than 90, R10 for 88', () => {
    const { waiting, byStage, overDays, longest } = report.waiting.now;
    expect(waiting.numerator).toBe(3);
    expect(byStage.map(({ stage, waiting: figure }) => [stage, figure.numerator])).toEqual([
      ['awaiting-triage', 2],
      ['awaiting-assessment', 0],
      ['awaiting-start', 1],
    ]);
    expect(overDays.map(({ days, waiting: figure }) => [days, figure.numerator])).toEqual([
      [30, 3],
      [60, 3],
      [90, 1],
      [120, 0],
      [180, 0],
    ]);
    expect(longest.map(({ referralId, days }) => [referralId, days])).toEqual([
      ['R24', 102],
      ['R11', 90],
      ['R10', 88],
    ]);
  });
});

describe('groups of the worked quarter', () => {
  it('stand beside the rest, with the interval of Newcombe: 8 of 9 stable, 2 of 3 after an exacerbation', () => {
    const uptake = report.breakdowns.find(({ figureId }) => figureId === 'uptake');
    const rows = uptake?.dimensions.find(({ dimension }) => dimension === 'pathway')?.rows ?? [];
    expect(rows.map(({ group, figure }) => [group, said(figure)])).toEqual([
      ['stable', '8 of 9, 3 open'],
      ['after-exacerbation', '2 of 3'],
    ]);
    // Wilson: 0.5650 to 0.9801 and 0.2077 to 0.9385. Below: sqrt(0.3239^2 + 0.2718^2) = 0.4229; above: sqrt(0.0912^2 +
    // 0.4590^2) = 0.4680.
    expect(rows[0]?.differenceToRest?.points).toBeCloseTo(22.22, 2);
    expect(rows[0]?.differenceToRest?.interval.low).toBeCloseTo(-20.06, 1);
    expect(rows[0]?.differenceToRest?.interval.high).toBeCloseTo(69.02, 1);
  });
});

describe('outcomes of the worked quarter beside their means', () => {
  it('have median, quartiles of type 7 and the standardised response mean', () => {
    const walk = outcomesOf(report, 'incremental-shuttle-walk-distance');
    // 40, 50, 60: quartiles half-way; SD 10. Like for like 50 and 60: a quarter of the way; SD sqrt 50.
    expect(walk.allPairs.changeSummary).toMatchObject({ median: 50, lowerQuartile: 45, upperQuartile: 55 });
    expect(walk.allPairs.change.standardisedResponseMean).toBeCloseTo(5, 9);
    expect(walk.likeForLike.changeSummary).toMatchObject({
      median: 55,
      lowerQuartile: 52.5,
      upperQuartile: 57.5,
    });
    expect(walk.likeForLike.change.standardisedResponseMean).toBeCloseTo(55 / Math.sqrt(50), 9);
    // -2, -2, -1, 1, 3.
    expect(outcomesOf(report, 'cat-total').likeForLike.changeSummary).toMatchObject({
      median: -1,
      lowerQuartile: -2,
      upperQuartile: 1,
    });
  });

  it('tell what became of each of the ten starters discharged', () => {
    const lostOf = (measureId: string): readonly unknown[] => {
      const found = report.dataQuality.pairsLost.find((each) => each.measureId === measureId);
      const lost = found?.lost.map(({ reason, referrals }) => [reason, referrals]) ?? [];
      return [found?.starters, found?.pairs, Object.fromEntries(lost)];
    };
    // No discharge assessment: R05, R16, R17, R23.
    expect(lostOf('cat-total')).toEqual([10, 5, { 'not-measured': 1, 'no-discharge-assessment': 4 }]);
    expect(lostOf('incremental-shuttle-walk-distance')).toEqual([
      10,
      2,
      { 'not-measured': 3, 'no-discharge-assessment': 4, 'not-like-for-like': 1 },
    ]);
    expect(lostOf('endurance-shuttle-walk-time')).toEqual([
      10,
      2,
      { 'not-measured': 7, 'not-comparable': 1 },
    ]);
  });

  it('say what is not recorded: no triage of the thirteen assessed, no commissioner of anybody', () => {
    const recorded = new Map(report.dataQuality.completeness.map((figure) => [figure.id, said(figure)]));
    expect(recorded.get('recorded.triage')).toBe('0 of 13');
    expect(recorded.get('recorded.commissioner')).toBe('0 of 17');
    // Asked of R12, R13 and R19.
    expect(recorded.get('recorded.hospital-discharge')).toBe('2 of 3');
    expect(recorded.get('recorded.height-and-weight')).toBe('9 of 9');
  });
});
