// The plan of the demo is shaped on published cohorts; each band names the one it was taken from. The bands are ours:
// wide enough for chance in a plan of some 2,600 referrals, narrow enough that another shape would fall out of them.
import { describe, expect, it } from 'vitest';
import { daysBetween } from '../../src/domain/calendar/plain-date.js';
import {
  aPlan,
  assessmentsOf,
  attendedThreeQuarters,
  coursesOf,
  isCompleted,
  mean,
  pairsOf,
  shareOf,
  standardDeviation,
  startOf,
  valueOf,
} from './planned.js';

const courses = coursesOf(aPlan(2));
const starters = courses.filter((course) => startOf(course) !== null);
const finishers = starters.filter(attendedThreeQuarters);
const completers = starters.filter(isCompleted);
const assessments = courses.flatMap(assessmentsOf);

const ISWD = 'incremental-shuttle-walk-distance';
const SIX_MWD = 'six-minute-walk-distance';

function expectBetween(value: number, low: number, high: number): void {
  expect(value).toBeGreaterThanOrEqual(low);
  expect(value).toBeLessThanOrEqual(high);
}

function changes(measureId: string): readonly number[] {
  return pairsOf(courses, measureId).map(({ baseline, discharge }) => discharge - baseline);
}

describe('referrals of the plan', () => {
  it('lead to a start in 60 to 70 % (56 %, Leicester 2022-23; 59 of 90, Jones 2014)', () => {
    expectBetween(
      shareOf(courses, (course) => startOf(course) !== null),
      0.6,
      0.7,
    );
  });

  it('wait 90 days at most in 60 to 75 % of starts (37 % waited longer than three months, national report 2016)', () => {
    const within = shareOf(starters, (course) => {
      const start = startOf(course);
      return start !== null && daysBetween(course.details.receivedOn, start) <= 90;
    });
    expectBetween(within, 0.6, 0.75);
  });

  it('are for COPD in three quarters, and after an exacerbation in about 15 % (our own shares)', () => {
    expectBetween(
      shareOf(courses, ({ details }) => details.diagnosis === 'copd'),
      0.71,
      0.79,
    );
    expectBetween(
      shareOf(courses, ({ details }) => details.pathway === 'after-exacerbation'),
      0.12,
      0.18,
    );
  });

  it('have the day of hospital discharge only after an exacerbation, and not always then', () => {
    const after = courses.filter(({ details }) => details.pathway === 'after-exacerbation');
    const stable = courses.filter(({ details }) => details.pathway === 'stable');
    expectBetween(
      shareOf(after, ({ details }) => details.hospitalDischargedOn !== null),
      0.88,
      0.99,
    );
    expect(stable.every(({ details }) => details.hospitalDischargedOn === null)).toBe(true);
  });

  it('come again after a closure in some, and end in a death before and after the start in a few', () => {
    expectBetween(
      shareOf(courses, (course) => course.isReferredAgain),
      0.03,
      0.1,
    );
    const deaths = courses.filter(({ closure }) => closure?.reason === 'died');
    expect(deaths.filter((course) => startOf(course) === null).length).toBeGreaterThan(5);
    expect(deaths.filter((course) => startOf(course) !== null).length).toBeGreaterThan(5);
  });

  it('are of every way of delivery and of every fate', () => {
    const modes = new Set(courses.map(({ details }) => details.deliveryMode));
    expect([...modes].sort()).toEqual(['centre', 'home', 'hybrid', null, 'remote']);
    expect([...new Set(courses.map(({ fate }) => fate))].sort()).toEqual([
      'finished',
      'left-before-assessment',
      'left-before-start',
      'not-accepted',
      'registered-in-error',
      'stopped',
    ]);
  });

  it('hold people whose ethnic category was asked and not stated (Z) apart from those never asked (99)', () => {
    const codes = courses.map(({ person }) => person.details.ethnicCategory);
    expect(codes.filter((code) => code === 'Z').length).toBeGreaterThan(10);
    expect(codes.filter((code) => code === '99').length).toBeGreaterThan(10);
    expect(courses.some(({ person }) => person.details.interpreterNeed === 'yes')).toBe(true);
    expectBetween(
      shareOf(courses, ({ person }) => person.details.homeOxygen === 'yes'),
      0.04,
      0.1,
    );
  });
});

describe('programmes of the plan', () => {
  it('are completed by 60 to 75 % of starters (57 % of 787, Boutou 2014; 66 % of 7060, Stone 2021)', () => {
    expectBetween(completers.length / starters.length, 0.6, 0.75);
  });

  it('are completed less by the most deprived fifth: 50 against 70 % (n = 7413, Steiner 2017)', () => {
    const completed = (quintile: number): number => {
      const own = starters.filter(({ person }) => person.details.deprivationQuintile === quintile);
      return shareOf(own, isCompleted);
    };
    expectBetween(completed(1), 0.45, 0.58);
    expectBetween(completed(5), 0.64, 0.8);
  });

  it('end without a discharge walk in 15 to 25 % of finishers (565 of 675 measured twice, Kon 2014)', () => {
    const missing = shareOf(
      finishers,
      ({ discharge }) => valueOf(discharge, ISWD) === null && valueOf(discharge, SIX_MWD) === null,
    );
    expectBetween(missing, 0.15, 0.25);
  });

  it('end with a written plan for three quarters of completers (26 % left without, national report 2016)', () => {
    expectBetween(
      shareOf(completers, ({ closure }) => (closure?.exercisePlanGivenOn ?? null) !== null),
      0.7,
      0.8,
    );
  });

  it('have registers with every outcome, most of them attended (our own shares)', () => {
    const contacts = courses.flatMap((course) => course.contacts);
    const share = (outcome: string): number => shareOf(contacts, (contact) => contact.outcome === outcome);
    expectBetween(share('attended'), 0.75, 0.87);
    expectBetween(share('did-not-attend'), 0.04, 0.12);
    expectBetween(share('cancelled-by-patient'), 0.04, 0.12);
    expectBetween(share('cancelled-by-service'), 0.02, 0.06);
  });
});

describe('measurements of the plan', () => {
  it('begin at an ISWD of about 200 m, SD about 130 (217.7 (139.8), n = 531; 168.5 (114.6), n = 372)', () => {
    const baselines = courses.flatMap(({ baseline }) => valueOf(baseline, ISWD) ?? []);
    expectBetween(mean(baselines), 180, 220);
    expectBetween(standardDeviation(baselines), 115, 145);
    expect(baselines.filter((distanceM) => distanceM % 10 !== 0)).toEqual([]);
  });

  it('gain 50 to 70 m of ISWD, SD about 65 (61.8 m, n = 531; 65.9 m with an implied SD of 68.9, n = 372)', () => {
    expectBetween(mean(changes(ISWD)), 50, 70);
    expectBetween(standardDeviation(changes(ISWD)), 57, 73);
  });

  it('have a 6MWD of about 348 m and a gain of about 32 m at one site (n = 1217; 32.3 (71.2) m, n = 575)', () => {
    const baselines = courses.flatMap(({ baseline }) => valueOf(baseline, SIX_MWD) ?? []);
    expectBetween(mean(baselines), 325, 365);
    expectBetween(mean(changes(SIX_MWD)), 20, 45);
    const sites = new Set(
      assessments.filter((each) => valueOf(each, SIX_MWD) !== null).map(({ siteName }) => siteName),
    );
    expect([...sites]).toEqual(['Old Beacon Rooms']);
  });

  it('change the CAT by about -3 from about 21, SD about 6.5 (-3.0 (6.8), n = 419, Smid 2017)', () => {
    expectBetween(mean(pairsOf(courses, 'cat-total').map(({ baseline }) => baseline)), 19.5, 22.5);
    expectBetween(mean(changes('cat-total')), -3.6, -2.4);
    expectBetween(standardDeviation(changes('cat-total')), 5.8, 7.2);
  });

  it.each([
    ['hads-anxiety', -2.2, -1.2, 'Smid 2017: -1.7'],
    ['hads-depression', -2.6, -1.5, 'Smid 2017: -2.1'],
    ['one-minute-sit-to-stand', 3.1, 4.5, 'Vaidya 2016: 3.8'],
    ['crq-dyspnoea', 0.65, 1.05, 'PMID 12775865: 0.87'],
    ['crq-fatigue', 0.55, 0.95, 'PMID 12775865: 0.76'],
    ['crq-emotional-function', 0.4, 0.8, 'PMID 12775865: 0.60'],
    ['crq-mastery', 0.5, 0.95, 'PMID 12775865: 0.76'],
    ['phq-9', -3, -1, 'no source'],
    ['gad-7', -2.5, -0.4, 'no source'],
    ['mrc-dyspnoea', -0.5, -0.2, 'no source'],
  ])('change the %s by %f to %f (%s)', (measureId, low, high) => {
    expect(changes(measureId).length).toBeGreaterThan(150);
    expectBetween(mean(changes(measureId)), low, high);
  });

  it('go without a practice walk in about 15 % (our own share)', () => {
    const walks = assessments.flatMap(({ results }) =>
      results.filter(({ hadPracticeWalk }) => hadPracticeWalk !== null),
    );
    expectBetween(
      shareOf(walks, ({ hadPracticeWalk }) => hadPracticeWalk === false),
      0.12,
      0.18,
    );
  });

  it('are walked with another aid at discharge in about 5 % (our own share)', () => {
    const aidOf = (assessment: (typeof assessments)[number] | null): string | null =>
      assessment?.entry.walkTests[0]?.walkingAid ?? null;
    const both = starters.filter(
      ({ baseline, discharge }) => aidOf(baseline) !== null && aidOf(discharge) !== null,
    );
    expectBetween(
      shareOf(both, ({ baseline, discharge }) => aidOf(baseline) !== aidOf(discharge)),
      0.03,
      0.07,
    );
  });

  it('say why, wherever a test was not done', () => {
    const notDone = assessments.flatMap(({ entry }) =>
      [...entry.walkTests, ...entry.sitToStands, ...entry.questionnaires].filter(
        ({ notDoneReason }) => notDoneReason !== null,
      ),
    );
    const reasons = new Set(notDone.map(({ notDoneReason }) => notDoneReason));
    expect(reasons.size).toBeGreaterThanOrEqual(6);
    expectBetween(notDone.length / assessments.length, 0.15, 0.5);
  });

  it('raise a safety concern in a few, most of them with what was found', () => {
    const concerns = assessments.filter(({ entry }) => entry.safetyScreen === 'concern');
    expectBetween(concerns.length / assessments.length, 0.03, 0.1);
    expectBetween(
      shareOf(concerns, ({ entry }) => entry.safetyFindings.length > 0),
      0.5,
      0.9,
    );
  });

  it('were typed wrongly and corrected in a few', () => {
    expectBetween(
      shareOf(assessments, ({ slip }) => slip !== null),
      0.005,
      0.025,
    );
  });
});

describe('what was added to the plan: endurance walks, physical tests, planned starts, follow-up', () => {
  const ESWT = 'endurance-shuttle-walk-time';
  const sitesOf = (measureId: string): readonly string[] => [
    ...new Set(
      assessments.filter((each) => valueOf(each, measureId) !== null).map(({ siteName }) => siteName),
    ),
  ];
  const at = (siteName: string) => assessments.filter((each) => each.siteName === siteName);

  it('walk about 196 s of the ESWT at baseline and 342 s longer (195.8 (118.8) to 537.4 (378.3) s, n = 531)', () => {
    const baselines = courses.flatMap(({ baseline }) => valueOf(baseline, ESWT) ?? []);
    expectBetween(mean(baselines), 175, 215);
    expectBetween(standardDeviation(baselines), 95, 140);
    expectBetween(mean(changes(ESWT)), 270, 370);
    expect(sitesOf(ESWT)).toEqual(['Dune Hall']);
    expectBetween(
      shareOf(at('Dune Hall'), (each) => valueOf(each, ESWT) !== null),
      0.75,
      0.95,
    );
  });

  it('end at the ceiling of 1200 s in a few, and never beyond it', () => {
    const times = assessments.flatMap((each) => valueOf(each, ESWT) ?? []);
    expect(Math.max(...times)).toBe(1200);
    expectBetween(
      shareOf(times, (timeS) => timeS === 1200),
      0.005,
      0.1,
    );
  });

  it('are walked at another speed at discharge in about 8 %, so that there is no pair (our own share)', () => {
    const speedOf = (assessment: (typeof assessments)[number] | null) =>
      assessment?.entry.walkTests.find(({ test }) => test === 'endurance-shuttle-walk')?.speedLevel ?? null;
    const both = courses.filter(
      ({ baseline, discharge }) => speedOf(baseline) !== null && speedOf(discharge) !== null,
    );
    expectBetween(
      shareOf(both, ({ baseline, discharge }) => speedOf(baseline) !== speedOf(discharge)),
      0.02,
      0.12,
    );
  });

  it.each([
    ['handgrip-strength', 'Saltmarsh Centre', 0.2, 1.6],
    ['four-metre-gait-speed', 'Old Beacon Rooms', 0.03, 0.11],
  ])('have %s at %s, a little better at discharge (no source)', (measureId, siteName, low, high) => {
    expect(sitesOf(measureId)).toEqual([siteName]);
    expectBetween(
      shareOf(at(siteName), (each) => valueOf(each, measureId) !== null),
      0.8,
      0.97,
    );
    expectBetween(mean(changes(measureId)), low, high);
  });

  it('write down the planned start of about 60 % of starters, which is the day of the place they took', () => {
    expectBetween(
      shareOf(starters, ({ plannedStart }) => plannedStart !== null),
      0.54,
      0.66,
    );
    for (const { plannedStart, offers } of starters) {
      if (plannedStart === null) continue;
      expect(offers.some(({ appointmentOn }) => appointmentOn === plannedStart.startOn)).toBe(true);
      expect(plannedStart.recordedOn <= plannedStart.startOn).toBe(true);
    }
  });

  it('see about 30 % of completers again five to eight months after discharge, after the closure (our own share)', () => {
    const eligible = courses.filter(
      ({ discharge, closure }) => discharge !== null && closure?.reason === 'completed',
    );
    expectBetween(
      shareOf(eligible, ({ followUp }) => followUp !== null),
      0.24,
      0.34,
    );
    for (const { followUp, discharge, closure } of courses) {
      if (followUp === null) continue;
      const { assessedOn, timepoint } = followUp.entry;
      expect(timepoint).toBe('follow-up');
      expectBetween(daysBetween(discharge?.entry.assessedOn ?? assessedOn, assessedOn), 145, 245);
      expect(assessedOn > (closure?.closedOn ?? '9999')).toBe(true);
    }
  });

  it('keep part of the gain at follow-up (gains fade over one to two years)', () => {
    const seen = courses.filter(({ followUp }) => valueOf(followUp, ISWD) !== null);
    const gains = (end: 'discharge' | 'followUp') =>
      seen.flatMap((course) => {
        const [before, after] = [valueOf(course.baseline, ISWD), valueOf(course[end], ISWD)];
        return before === null || after === null ? [] : [after - before];
      });
    expectBetween(mean(gains('followUp')) / mean(gains('discharge')), 0.4, 0.8);
  });

  it('see nobody at a follow-up who was referred again before it', () => {
    for (const { person, followUp, details } of courses) {
      const again = courses.filter(
        (other) => other.person === person && other.details.receivedOn > details.receivedOn,
      );
      const seenOn = followUp?.entry.assessedOn ?? '';
      expect(again.filter((other) => seenOn >= other.details.receivedOn)).toEqual([]);
    }
  });
});
