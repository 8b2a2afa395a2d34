import { describe, expect, it } from 'vitest';
import { aStand, aWalk } from '../../support/assessment-entries.js';
import { cautionsFor, inShort, textOf } from '../../support/safety-cautions.js';

const ISWD = 'incremental-shuttle-walk-distance';
const SIX = { test: 'six-minute-walk', distanceM: 300 } as const;

function walks(first: Parameters<typeof aWalk>[0], second: Parameters<typeof aWalk>[0] = {}) {
  return [aWalk({ distanceM: 200, ...first }), aWalk({ attempt: 2, distanceM: 220, ...second })];
}

describe('desaturation', () => {
  it('is shown by the meaning that the team chose, and asks for nothing', () => {
    const walkTests = walks({ startSpo2Percent: 95, lowestSpo2Percent: 89 });
    const cautions = cautionsFor({ walkTests });
    expect(inShort(cautions)).toEqual([`desaturation ${ISWD}`]);
    expect(textOf(cautions, 'desaturation')).toBe(
      'ISWT: SpO2 fell from 95 % to 89 %. Desaturation by this meaning: lowest SpO2 below 90 %.',
    );
    expect(cautionsFor({ walkTests }, {}, { desaturationDefinition: 'nadir-88' })).toEqual([]);
    expect(inShort(cautionsFor({ walkTests }, {}, { desaturationDefinition: 'fall-4' }))).toEqual([
      `desaturation ${ISWD}`,
    ]);
  });

  it('is possible where the meaning asks for more than the record shows', () => {
    const cautions = cautionsFor(
      { walkTests: walks({ startSpo2Percent: 95, lowestSpo2Percent: 86 }) },
      {},
      { desaturationDefinition: 'fall-4-and-88' },
    );
    expect(textOf(cautions, 'desaturation')).toMatch(/Possible desaturation .*3 minutes cannot be judged\.$/);
  });

  it('is said of the lower of two walks, once', () => {
    const cautions = cautionsFor({
      walkTests: walks(
        { startSpo2Percent: 94, lowestSpo2Percent: 88 },
        { startSpo2Percent: 93, lowestSpo2Percent: 86 },
      ),
    });
    expect(inShort(cautions)).toEqual([`desaturation ${ISWD}`]);
    expect(textOf(cautions, 'desaturation')).toContain('from 93 % to 86 %');
  });

  it('is not said where it is not known', () => {
    expect(cautionsFor({ walkTests: walks({ startSpo2Percent: 95 }) })).toEqual([]);
    const setting = { desaturationDefinition: 'fall-4' } as const;
    expect(cautionsFor({ walkTests: walks({ lowestSpo2Percent: 85 }) }, {}, setting)).toEqual([]);
  });
});

describe('a lowest SpO2 below 80 %', () => {
  it.each([
    [80, [`desaturation ${ISWD}`]],
    [79, [`saturation-below-80 ${ISWD} !`, `desaturation ${ISWD}`]],
  ])('%i %%', (lowestSpo2Percent, expected) => {
    expect(inShort(cautionsFor({ walkTests: walks({}, { lowestSpo2Percent }) }))).toEqual(expected);
  });

  it('must be acknowledged even where desaturation is not known', () => {
    const setting = { desaturationDefinition: 'fall-4' } as const;
    const cautions = cautionsFor({ walkTests: walks({ lowestSpo2Percent: 78 }) }, {}, setting);
    expect(inShort(cautions)).toEqual([`saturation-below-80 ${ISWD} !`]);
    expect(textOf(cautions, 'saturation-below-80')).toContain('fell to 78 %');
  });
});

describe('a walk that ended with a sign to stop', () => {
  it.each([
    ['chest-pain', [`ended-by-chest-pain ${ISWD} !`]],
    ['dizziness', [`ended-by-dizziness ${ISWD} !`]],
    ['end-of-test', []],
    ['breathlessness', []],
    ['leg-fatigue', []],
    ['could-not-keep-pace', []],
    ['low-oxygen-saturation', []],
    ['pain', []],
    ['operator-safety', []],
    ['other', []],
  ] as const)('%s', (stopReason, expected) => {
    expect(inShort(cautionsFor({ walkTests: walks({ stopReason }) }))).toEqual(expected);
  });
});

describe('a single walk', () => {
  it.each([
    ['ISWT', { distanceM: 200 }, [`no-practice-walk ${ISWD}`]],
    ['6MWT', SIX, ['no-practice-walk six-minute-walk-distance']],
    ['2MWT', { test: 'two-minute-walk', distanceM: 120 }, []],
    ['ESWT', { test: 'endurance-shuttle-walk', timeS: 300, speedLevel: 4 }, []],
  ] as const)('%s', (_, walk, expected) => {
    expect(inShort(cautionsFor({ walkTests: [aWalk(walk)] }))).toEqual(expected);
  });

  it('is one whose second was not done', () => {
    const second = { attempt: 2, notDoneReason: 'declined' } as const;
    const walkTests = [aWalk({ distanceM: 200 }), aWalk(second)];
    expect(inShort(cautionsFor({ walkTests }))).toEqual([`no-practice-walk ${ISWD}`]);
  });

  it('is none where no walk was done', () => {
    expect(cautionsFor({ walkTests: [aWalk({ notDoneReason: 'declined' })] })).toEqual([]);
  });
});

describe('the length of the course', () => {
  const SECOND = { ...SIX, attempt: 2 } as const;

  it.each([
    ['6MWT on 30 m', SIX, SECOND, 30, []],
    ['6MWT on 20 m', SIX, SECOND, 20, ['course-length-not-usual six-minute-walk-distance']],
    ['6MWT, not recorded', SIX, SECOND, null, []],
    ['ISWT on 10 m', { distanceM: 200 }, { distanceM: 220, attempt: 2 }, 10, []],
  ] as const)('%s', (_, first, second, courseLengthM, expected) => {
    const walkTests = [aWalk({ ...first, courseLengthM }), aWalk({ ...second, courseLengthM })];
    expect(inShort(cautionsFor({ walkTests }))).toEqual(expected);
  });

  it('cites who asks for 30 m, and says common practice where nobody does', () => {
    const two = { test: 'two-minute-walk', distanceM: 120, courseLengthM: 15 } as const;
    const [six] = cautionsFor({
      walkTests: [aWalk({ ...SIX, courseLengthM: 15 }), aWalk({ ...SECOND, courseLengthM: 20 })],
    });
    const [twoMinutes] = cautionsFor({ walkTests: [aWalk(two)] });
    expect(six?.text).toContain('course of 15 and 20 m');
    expect([six?.citation.id, twoMinutes?.mark]).toEqual(['ats-2002-course', 'common practice']);
  });
});

describe('a result at the ceiling', () => {
  it.each([
    ['ISWT of 1020 m', [{ distanceM: 1010 }, { distanceM: 1020 }], [`ceiling ${ISWD}`]],
    ['ISWT of 1010 m', [{ distanceM: 1000 }, { distanceM: 1010 }], []],
    [
      'ESWT of 1200 s',
      [{ test: 'endurance-shuttle-walk', timeS: 1200, speedLevel: 4 }],
      ['ceiling endurance-shuttle-walk-time'],
    ],
  ] as const)('%s', (_, attempts, expected) => {
    const walkTests = attempts.map((walk, index) => aWalk({ ...walk, attempt: index === 0 ? 1 : 2 }));
    expect(inShort(cautionsFor({ walkTests }))).toEqual(expected);
  });
});

describe('a test at home', () => {
  it('is marked for each measure, and asks for nothing', () => {
    const cautions = cautionsFor({
      walkTests: walks({ place: 'home' }, { place: 'home' }),
      sitToStands: [aStand({ place: 'home', repetitions: 0 })],
    });
    expect(inShort(cautions)).toEqual([`done-at-home ${ISWD}`, 'done-at-home one-minute-sit-to-stand']);
  });

  it('is marked even when the better of two walks was on a course', () => {
    expect(inShort(cautionsFor({ walkTests: walks({ place: 'home' }, { place: 'course' }) }))).toEqual([
      `done-at-home ${ISWD}`,
    ]);
  });

  it('is not marked where it was not done', () => {
    expect(cautionsFor({ sitToStands: [aStand({ place: 'home', notDoneReason: 'no-equipment' })] })).toEqual(
      [],
    );
  });
});
