import { anAssessment } from '../support/entries.js';

/** The day on which the benchmark takes place. */
export const BENCH_INSTANT = '2026-11-25T10:00:00.000Z';

/** A full baseline visit: two shuttle walks, a sit-to-stand test and three questionnaires item by item. */
export function wholeAssessment(siteId: string): Readonly<Record<string, unknown>> {
  return anAssessment(siteId, {
    spirometry: { fev1L: 1.42, fev1PercentPredicted: 51, fev1FvcPercent: 48 },
    resting: { spo2Percent: 95, heartRateBpm: 78, systolicMmHg: 132, diastolicMmHg: 78 },
    walkTests: [shuttleWalk(1, 210), shuttleWalk(2, 230)],
    sitToStands: [
      {
        test: 'one-minute-sit-to-stand',
        repetitions: 19,
        handsUsed: false,
        chairHeightCm: 46,
        place: 'course',
      },
    ],
    questionnaires: [
      { questionnaire: 'copd-assessment-test', items: [3, 3, 2, 4, 3, 2, 3, 2] },
      {
        questionnaire: 'hospital-anxiety-and-depression-scale',
        items: [1, 2, 1, 1, 0, 2, 1, 2, 1, 1, 2, 1, 1, 0],
      },
      {
        questionnaire: 'chronic-respiratory-questionnaire',
        form: 'self-reported',
        items: [3, 3, 4, 3, 2, 5, 4, 3, 5, 4, 3, 5, 4, 4, 3, 5, 3, 4, 5, 4],
      },
    ],
  });
}

function shuttleWalk(attempt: 1 | 2, distanceM: number): Readonly<Record<string, unknown>> {
  return {
    test: 'incremental-shuttle-walk',
    attempt,
    place: 'course',
    distanceM,
    courseLengthM: 10,
    walkingAid: 'none',
    oxygenLPerMin: 0,
    startSpo2Percent: 95,
    lowestSpo2Percent: 89,
    startHeartRateBpm: 80,
    peakHeartRateBpm: 118,
    startBreathlessness: 1,
    endBreathlessness: 4,
    startFatigue: 1,
    endFatigue: 3,
    stops: 0,
    stopReason: 'breathlessness',
  };
}
