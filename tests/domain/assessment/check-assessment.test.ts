import { describe, expect, it } from 'vitest';
import type { AssessmentEntry, RestingValues } from '../../../src/domain/assessment/assessment.js';
import { checkAssessment } from '../../../src/domain/assessment/check-assessment.js';
import type { AssessmentContext } from '../../../src/domain/assessment/check-assessment.js';
import { fraction } from '../../../src/domain/exact/fraction.js';
import {
  aContext,
  anEntry,
  aPhysicalTest,
  aQuestionnaire,
  aStand,
  aWalk,
} from '../../support/assessment-entries.js';

const check = (entry: Partial<AssessmentEntry>, context: Partial<AssessmentContext> = {}) =>
  checkAssessment(anEntry(entry), aContext(context));

/** Kind of the verdict, and code and pointer of everything that it names. */
function verdictOf(entry: Partial<AssessmentEntry>, context: Partial<AssessmentContext> = {}) {
  const verdict = check(entry, context);
  const named =
    verdict.kind === 'faulty' ? verdict.faults : verdict.kind === 'unconfirmed' ? verdict.queries : [];
  return [verdict.kind, ...named.map(({ code, pointer }) => `${code} ${pointer}`)];
}

const resting = (values: Partial<RestingValues>) => ({
  resting: { spo2Percent: null, heartRateBpm: null, systolicMmHg: null, diastolicMmHg: null, ...values },
});

it('accepts an assessment in which nothing could be measured', () => {
  expect(verdictOf({})).toEqual(['accepted']);
});

describe('what stands twice', () => {
  it.each<[string, Partial<AssessmentEntry>, string]>([
    [
      'the same attempt',
      { walkTests: [aWalk({ distanceM: 200 }), aWalk({ distanceM: 200 })] },
      '/walkTests/1',
    ],
    [
      'the same stand',
      { sitToStands: [aStand({ repetitions: 18 }), aStand({ repetitions: 18 })] },
      '/sitToStands/1',
    ],
    [
      'the same questionnaire',
      {
        questionnaires: [
          aQuestionnaire({ notDoneReason: 'language' }),
          aQuestionnaire({ notDoneReason: 'other' }),
        ],
      },
      '/questionnaires/1',
    ],
    [
      'the same physical test',
      { physicalTests: [aPhysicalTest({ value: 28 }), aPhysicalTest({ value: 29 })] },
      '/physicalTests/1',
    ],
  ])('is refused: %s', (_name, entry, pointer) => {
    expect(verdictOf(entry)).toEqual(['faulty', `listed-twice ${pointer}`]);
  });

  it('is not two attempts at one test, nor the first attempts at two', () => {
    const walkTests = [
      aWalk({ distanceM: 200 }),
      aWalk({ distanceM: 210, attempt: 2 }),
      aWalk({ test: 'six-minute-walk', distanceM: 380 }),
    ];
    expect(verdictOf({ walkTests })).toEqual(['accepted']);
  });
});

it('refuses a second attempt without a first', () => {
  const second = aWalk({ distanceM: 210, attempt: 2 });
  const otherFirst = aWalk({ test: 'six-minute-walk', distanceM: 380 });
  expect(verdictOf({ walkTests: [otherFirst, second] })).toEqual([
    'faulty',
    'no-first-attempt /walkTests/1/attempt',
  ]);
});

it('takes a second attempt after a first that was not done', () => {
  const walkTests = [aWalk({ notDoneReason: 'no-time' }), aWalk({ distanceM: 210, attempt: 2 })];
  expect(verdictOf({ walkTests })).toEqual(['accepted']);
});

describe('pressures', () => {
  it('are refused the wrong way round, and when they are the same', () => {
    for (const diastolicMmHg of [95, 90]) {
      expect(verdictOf(resting({ systolicMmHg: 90, diastolicMmHg }))).toEqual([
        'faulty',
        'pressures-reversed /resting/systolicMmHg',
      ]);
    }
    expect(verdictOf(resting({ systolicMmHg: 91, diastolicMmHg: 90 }))).toEqual(['accepted']);
  });

  it('may stand alone', () => {
    expect(verdictOf(resting({ systolicMmHg: 120 }))).toEqual(['accepted']);
  });
});

describe('a large change from baseline', () => {
  const baseline = new Map([
    ['incremental-shuttle-walk-distance', fraction(400)],
    ['one-minute-sit-to-stand', fraction(15)],
  ]);
  const discharge = (entry: Partial<AssessmentEntry>) =>
    verdictOf({ timepoint: 'discharge', ...entry }, { baseline });

  it.each([600, 200])('of 200 m is none: %i m', (distanceM) => {
    expect(discharge({ walkTests: [aWalk({ distanceM })] })).toEqual(['accepted']);
  });

  it.each([610, 190])('of more than 200 m is asked about, either way: %i m', (distanceM) => {
    expect(discharge({ walkTests: [aWalk({ distanceM })] })).toEqual([
      'unconfirmed',
      'please-check /walkTests/0/distanceM',
    ]);
  });

  it('is asked about at the better attempt', () => {
    const walkTests = [aWalk({ distanceM: 500 }), aWalk({ distanceM: 610, attempt: 2 })];
    expect(discharge({ walkTests })).toEqual(['unconfirmed', 'please-check /walkTests/1/distanceM']);
  });

  it('of more than 20 repetitions is asked about', () => {
    expect(discharge({ sitToStands: [aStand({ repetitions: 35 })] })).toEqual(['accepted']);
    expect(discharge({ sitToStands: [aStand({ repetitions: 36 })] })).toEqual([
      'unconfirmed',
      'please-check /sitToStands/0/repetitions',
    ]);
  });

  it('passes once it is confirmed', () => {
    const entry = { walkTests: [aWalk({ distanceM: 610 })], confirmed: ['/walkTests/0/distanceM'] };
    expect(discharge(entry)).toEqual(['accepted']);
  });

  it('needs a baseline of the same measure', () => {
    expect(discharge({ walkTests: [aWalk({ test: 'six-minute-walk', distanceM: 650 })] })).toEqual([
      'accepted',
    ]);
  });
});

describe('confirmation', () => {
  it('names what is open beside the faults, so that one round is enough', () => {
    expect(verdictOf({ heightCm: 201, weightKg: 1 })).toEqual([
      'faulty',
      'out-of-range /weightKg',
      'please-check /heightCm',
    ]);
  });

  it('of a value outside the limits does not help', () => {
    expect(verdictOf({ heightCm: 221, confirmed: ['/heightCm'] })).toEqual([
      'faulty',
      'out-of-range /heightCm',
    ]);
  });

  it('of an unusual age is asked for at the date', () => {
    const young = { bornOn: '1997-01-01' as AssessmentContext['bornOn'] };
    expect(verdictOf({}, young)).toEqual(['unconfirmed', 'please-check /assessedOn']);
    expect(verdictOf({ confirmed: ['/assessedOn'] }, young)).toEqual(['accepted']);
  });
});

describe('an accepted entry', () => {
  it('has the scores of all its questionnaires by measure', () => {
    const questionnaires = [
      aQuestionnaire({
        questionnaire: 'patient-health-questionnaire-9',
        items: Array.from({ length: 9 }, () => 1),
      }),
      aQuestionnaire({ items: Array.from({ length: 8 }, () => 2) }),
    ];
    const verdict = check({ questionnaires });
    if (verdict.kind !== 'accepted') throw new Error(verdict.kind);
    expect(verdict.checked.scores.map(({ measure, value }) => [measure, value])).toEqual([
      ['cat-total', fraction(16)],
      ['phq-9', fraction(9)],
    ]);
  });

  it('has the settled distance, and neither level nor shuttles', () => {
    const verdict = check({ walkTests: [aWalk({ level: 5, shuttles: 2 })] });
    if (verdict.kind !== 'accepted') throw new Error(verdict.kind);
    expect(verdict.checked.entry.walkTests).toEqual([aWalk({ distanceM: 200 })]);
  });
});
