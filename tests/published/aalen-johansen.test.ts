// Sources:
// (1) Scrucca L, Santucci A, Aversa F. Bone Marrow Transplant 2007;40:381-387, sample data of the paper, group 0 (data read
//     in a public copy; attribution from memory). Nobody is cut off before day 26, so each incidence is so many of 17 and
//     its standard error the square root of p(1-p)/17: a check that needs no program.
// (2) Freireich EJ and others. Blood 1963;21:699-716, remission under 6-mercaptopurine; survival and standard error as R
//     (survfit) prints them. With one cause the incidence is 1 less survival, its standard error that of Greenwood.
// (3) Twenty people on a waiting list, made for the purpose and worked in exact fractions: 419/960 had started by day 90.
import { describe, expect, it } from 'vitest';
import { cumulativeIncidence, incidenceSteps } from '../../src/domain/statistics/cumulative-incidence.js';
import type { TimeToEvent } from '../../src/domain/statistics/cumulative-incidence.js';
import { expectPrinted, expectWithin } from '../support/cohort-groups.js';

describe('bone marrow transplants', () => {
  const TIMES = [13, 1, 72, 7, 8, 9, 5, 1, 22, 0, 0, 35, 4, 14, 26, 3, 12];
  const STATUS = [2, 1, 0, 2, 2, 2, 2, 2, 2, 2, 1, 0, 2, 2, 2, 2, 1];
  const CAUSES = [null, 'relapse', 'transplant'] as const;
  const people = TIMES.map((day, index) => ({ day, cause: CAUSES[STATUS[index] ?? 0] ?? null }));
  // Day, at risk, relapsed and died of the transplant so far, of 17.
  const ROWS = [
    [0, 17, 1, 1],
    [1, 15, 2, 2],
    [3, 13, 2, 3],
    [4, 12, 2, 4],
    [5, 11, 2, 5],
    [7, 10, 2, 6],
    [8, 9, 2, 7],
    [9, 8, 2, 8],
    [12, 7, 3, 8],
    [13, 6, 3, 9],
    [14, 5, 3, 10],
    [22, 4, 3, 11],
    [26, 3, 3, 12],
  ] as const;
  const days = ROWS.map(([day]) => day);
  const found = cumulativeIncidence(people, ['relapse', 'transplant'], days);

  it.each(ROWS.map((row, index) => [row, index] as const))('%j', ([day, atRisk, relapsed, died], index) => {
    expect(found.atRisk[index]).toEqual({ day, count: atRisk });
    for (const [cause, count] of [
      ['relapse', relapsed],
      ['transplant', died],
    ] as const) {
      const share = count / 17;
      expectWithin(found.byCause[cause][index]?.estimate, share, 1e-12);
      expectWithin(found.byCause[cause][index]?.standardError, Math.sqrt((share * (1 - share)) / 17), 1e-12);
    }
    expectWithin(found.notEnded[index]?.estimate, 1 - (relapsed + died) / 17, 1e-12);
  });
});

describe('the same as a curve', () => {
  it('rises on the days on which somebody left the wait, and ends where the last was seen', () => {
    const people = [
      { day: 3, cause: 'started' as const },
      { day: 3, cause: 'left' as const },
      { day: 5, cause: null },
      { day: 8, cause: 'started' as const },
      { day: 9, cause: null },
    ];
    // Of five, one each on day 3; of the three fifths still waiting two are seen on day 8, and one of those starts.
    expect(incidenceSteps(people, ['started', 'left'])).toEqual([
      { day: 3, byCause: { started: 1 / 5, left: 1 / 5 } },
      { day: 8, byCause: { started: 1 / 5 + (3 / 5) * (1 / 2), left: 1 / 5 } },
      { day: 9, byCause: { started: 1 / 5 + (3 / 5) * (1 / 2), left: 1 / 5 } },
    ]);
    expect(incidenceSteps([], ['started'])).toEqual([]);
  });
});

describe('remission under 6-mercaptopurine', () => {
  const ENDED = [6, 6, 6, 7, 10, 13, 16, 22, 23];
  const CUT_OFF = [6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35];
  const people: readonly TimeToEvent<'relapse'>[] = [
    ...ENDED.map((day) => ({ day, cause: 'relapse' as const })),
    ...CUT_OFF.map((day) => ({ day, cause: null })),
  ];

  it.each([
    [6, 21, '0.857', '0.0764', 0.61971796, 0.95155175],
    [7, 17, '0.807', '0.0869', 0.56314656, 0.92280902],
    [10, 15, '0.753', '0.0963', 0.50319951, 0.88936184],
    [13, 12, '0.690', '0.1068', 0.43161022, 0.84906596],
    [16, 11, '0.627', '0.1141', 0.36751086, 0.80491219],
    [22, 7, '0.538', '0.1282', 0.26777894, 0.74679072],
    [23, 6, '0.448', '0.1346', 0.18805201, 0.68014263],
  ] as const)('at week %i', (week, atRisk, survival, standardError, low, high) => {
    const { byCause, atRisk: risk, notEnded } = cumulativeIncidence(people, ['relapse'], [week]);
    const [relapse] = byCause.relapse;
    expect(risk[0]?.count).toBe(atRisk);
    expectPrinted(notEnded[0]?.estimate, survival);
    expectPrinted(1 - (relapse?.estimate ?? Number.NaN), survival);
    expectPrinted(relapse?.standardError, standardError);
    // The limits of the survival curve on the same scale lie elsewhere, but must overlap those of its complement.
    expect(1 - (relapse?.interval?.low ?? 0)).toBeGreaterThan(low);
    expect(1 - (relapse?.interval?.high ?? 1)).toBeLessThan(high);
  });
});

describe('a waiting list of twenty', () => {
  const [S, D, X, W] = ['started', 'declined', 'died', null] as const;
  const people: readonly TimeToEvent<'started' | 'declined' | 'died'>[] = (
    [
      [20, S],
      [35, S],
      [35, D],
      [41, W],
      [50, S],
      [58, S],
      [60, X],
      [60, W],
      [72, S],
      [75, S],
      [88, S],
      [90, S],
      [90, W],
      [95, D],
      [110, S],
      [120, W],
      [130, S],
      [150, W],
      [200, S],
      [210, W],
    ] as const
  ).map(([day, cause]) => ({ day, cause }));
  const days = [20, 60, 90, 95, 130, 200, 210, 211];
  const found = cumulativeIncidence(people, ['started', 'declined', 'died'], days);

  it('had started by day 90 in 419 of 960, where a curve that takes leaving for waiting says 0.475', () => {
    const at90 = found.byCause.started[2];
    expectWithin(at90?.estimate, 419 / 960, 1e-12);
    expectWithin(at90?.standardError, 0.11667389, 5e-9);
    expectWithin(at90?.interval?.low, 0.2101959, 5e-8);
    expectWithin(at90?.interval?.high, 0.64359488, 5e-9);
    // One cause, all other leaving taken for being cut off: 1 less Kaplan-Meier, always the greater.
    const naive = cumulativeIncidence(
      people.map(({ day, cause }) => ({ day, cause: cause === 'started' ? cause : null })),
      ['started'],
      [90],
    );
    expectWithin(naive.byCause.started[0]?.estimate, 0.475, 1e-12);
  });

  it.each([
    [0, 0.05, 0, 0, 0.95],
    [1, 0.20625, 0.05, 0.053125, 0.690625],
    [3, 0.4364583333, 0.1157738095, 0.053125, 0.3946428571],
    [4, 0.5844494048, 0.1157738095, 0.053125, 0.2466517857],
    [5, 0.7077752976, 0.1157738095, 0.053125, 0.1233258929],
  ])('by cause, row %i', (index, started, declined, died, waiting) => {
    expectWithin(found.byCause.started[index]?.estimate, started, 5e-11);
    expectWithin(found.byCause.declined[index]?.estimate, declined, 5e-11);
    expectWithin(found.byCause.died[index]?.estimate, died, 5e-11);
    expectWithin(found.notEnded[index]?.estimate, waiting, 5e-11);
  });

  it('counts a person last seen on day 90 as at risk on it, and says nothing beyond the last day seen', () => {
    expect(found.atRisk[2]).toEqual({ day: 90, count: 9 });
    expect(found.byCause.started[6]?.estimate).not.toBeNull();
    expect(found.byCause.started[7]).toEqual({
      day: 211,
      estimate: null,
      standardError: null,
      interval: null,
    });
  });
});

describe('where there is little to say', () => {
  it('nobody: nothing is known', () => {
    const { byCause, atRisk } = cumulativeIncidence([], ['started'], [30]);
    expect([byCause.started[0]?.estimate, atRisk[0]?.count]).toEqual([null, 0]);
  });

  it('all started: 1 on every later day, without limits', () => {
    const { byCause } = cumulativeIncidence([{ day: 3, cause: 'started' as const }], ['started'], [2, 3, 90]);
    expect(byCause.started.map(({ estimate, interval }) => [estimate, interval])).toEqual([
      [0, null],
      [1, null],
      [1, null],
    ]);
  });

  it('refuses days that are none', () => {
    expect(() => cumulativeIncidence([{ day: -1, cause: null }], ['started'], [30])).toThrow(RangeError);
    expect(() => cumulativeIncidence([{ day: 1.5, cause: null }], ['started'], [30])).toThrow(RangeError);
  });
});
