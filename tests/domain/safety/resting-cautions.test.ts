import { describe, expect, it } from 'vitest';
import type { RestingValues } from '../../../src/domain/assessment/assessment.js';
import { aWalk } from '../../support/assessment-entries.js';
import { cautionsFor, inShort, textOf } from '../../support/safety-cautions.js';

function resting(changes: Partial<RestingValues>): RestingValues {
  return { spo2Percent: null, heartRateBpm: null, systolicMmHg: null, diastolicMmHg: null, ...changes };
}

/** Two walks that raise nothing by themselves. */
function walks(changes: Parameters<typeof aWalk>[0] = {}) {
  return [aWalk({ distanceM: 200, ...changes }), aWalk({ attempt: 2, distanceM: 220, ...changes })];
}

describe('resting values beyond a limit', () => {
  it('must be acknowledged, with the value, the limit and its source', () => {
    const [caution] = cautionsFor({ resting: resting({ systolicMmHg: 184 }) });
    expect(caution).toEqual({
      id: 'resting-systolic-above-180',
      measureId: null,
      text: 'Systolic pressure at rest 184 mmHg: above 180 mmHg, a relative contraindication to a walk test.',
      citation: expect.objectContaining({ id: 'ats-2002-resting-limits' }) as unknown,
      mark: 'quoted in another paper',
      mustBeAcknowledged: true,
      by: 'registered-clinician',
    });
  });

  it('follow the set that the team chose', () => {
    const entry = { resting: resting({ systolicMmHg: 184, diastolicMmHg: 120 }) };
    expect(inShort(cautionsFor(entry))).toEqual([
      'resting-systolic-above-180 !',
      'resting-diastolic-above-100 !',
    ]);
    expect(inShort(cautionsFor(entry, {}, { restingLimits: 'ers-ats-2014' }))).toEqual([
      'resting-diastolic-at-120 !',
    ]);
  });

  it('are nothing where nothing is recorded', () => {
    expect(cautionsFor({ resting: resting({}), walkTests: walks() })).toEqual([]);
    expect(cautionsFor({ resting: null, walkTests: walks() })).toEqual([]);
  });

  it('are looked for at the start of each walk as well, and said once', () => {
    const cautions = cautionsFor({
      resting: resting({ heartRateBpm: 122 }),
      walkTests: [
        aWalk({ distanceM: 200, startHeartRateBpm: 118 }),
        aWalk({ attempt: 2, distanceM: 220, startHeartRateBpm: 125 }),
      ],
    });
    expect(inShort(cautions)).toEqual(['resting-heart-rate-above-120 !']);
    expect(textOf(cautions, 'resting-heart-rate-above-120')).toMatch(
      /^Heart rate at rest 122 beats\/min, 125 beats\/min at the start of ISWT 2: above 120 beats\/min/,
    );
  });

  it('are not looked for at the start of a walk that was not done', () => {
    expect(
      cautionsFor({ walkTests: [aWalk({ notDoneReason: 'not-safe', startHeartRateBpm: 140 })] }),
    ).toEqual([]);
  });
});

describe('SpO2 of 85 % or less at rest', () => {
  const low = resting({ spo2Percent: 85 });
  const ABSOLUTE = 'resting-saturation-at-or-below-85 !';
  const LOCAL = 'resting-saturation-below-91 !';

  it.each([
    ['no walk', [], ABSOLUTE],
    ['walked on room air', walks({ oxygenLPerMin: 0 }), ABSOLUTE],
    ['oxygen not recorded', walks(), ABSOLUTE],
    ['walked with oxygen', walks({ oxygenLPerMin: 2 }), LOCAL],
    ['one walk with oxygen, one not recorded', [walks({ oxygenLPerMin: 2 })[0], walks()[1]], ABSOLUTE],
    [
      'one walk with oxygen, one on room air',
      [walks({ oxygenLPerMin: 2 })[0], walks({ oxygenLPerMin: 0 })[1]],
      ABSOLUTE,
    ],
  ])('%s', (_, walkTests, expected) => {
    const done = walkTests.filter((walk) => walk !== undefined);
    expect(inShort(cautionsFor({ resting: low, walkTests: done }))).toEqual([expected]);
  });

  it('says when room air is not recorded, and only then', () => {
    const unknown = cautionsFor({ resting: low, walkTests: walks() });
    const known = cautionsFor({ resting: low, walkTests: walks({ oxygenLPerMin: 0 }) });
    const partly = [aWalk({ distanceM: 200, oxygenLPerMin: 0 }), aWalk({ attempt: 2, distanceM: 220 })];
    const once = cautionsFor({ resting: low, walkTests: partly });
    const words = 'Whether it was on room air is not recorded.';
    expect(textOf(unknown, 'resting-saturation-at-or-below-85')).toContain(words);
    expect(textOf(known, 'resting-saturation-at-or-below-85')).not.toContain(words);
    expect(textOf(once, 'resting-saturation-at-or-below-85')).not.toContain(words);
  });
});
