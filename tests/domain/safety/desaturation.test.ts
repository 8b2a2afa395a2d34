import { describe, expect, it } from 'vitest';
import {
  DESATURATION_DEFINITION_IDS,
  DESATURATION_DEFINITIONS,
  desaturationOf,
} from '../../../src/domain/safety/desaturation.js';
import { DEFAULT_TEAM_SETTINGS } from '../../../src/domain/settings/team-settings.js';

describe('desaturation, by each meaning, from the start to the lowest SpO2', () => {
  it.each([
    ['nadir-below-90', 95, 90, 'not-desaturated'],
    ['nadir-below-90', 95, 89, 'desaturated'],
    ['nadir-below-90', null, 89, 'desaturated'],
    ['nadir-below-90', 95, null, 'not-known'],
    ['nadir-88', 95, 89, 'not-desaturated'],
    ['nadir-88', 95, 88, 'desaturated'],
    ['nadir-88', null, 88, 'desaturated'],
    ['nadir-88', null, null, 'not-known'],
    ['fall-4', 96, 93, 'not-desaturated'],
    ['fall-4', 96, 92, 'desaturated'],
    ['fall-4', null, 80, 'not-known'],
    ['fall-4', 96, null, 'not-known'],
    ['fall-4-and-below-90', 93, 89, 'desaturated'],
    ['fall-4-and-below-90', 92, 89, 'not-desaturated'],
    ['fall-4-and-below-90', 96, 90, 'not-desaturated'],
    // Without the start it is decided only where the level alone decides.
    ['fall-4-and-below-90', null, 90, 'not-desaturated'],
    ['fall-4-and-below-90', null, 89, 'not-known'],
    ['fall-4-and-88', 92, 88, 'possibly-desaturated'],
    ['fall-4-and-88', 91, 88, 'not-desaturated'],
    ['fall-4-and-88', 95, 89, 'not-desaturated'],
    ['fall-4-and-88', null, 88, 'not-known'],
  ] as const)('%s: %s to %s -> %s', (id, startSpo2Percent, lowestSpo2Percent, kind) => {
    expect(desaturationOf({ startSpo2Percent, lowestSpo2Percent }, id)).toMatchObject({
      definitionId: id,
      kind,
    });
  });

  it('says that three minutes cannot be judged from the lowest value, and of no other meaning', () => {
    const notInFull = DESATURATION_DEFINITION_IDS.filter(
      (id) => DESATURATION_DEFINITIONS[id].notJudged !== null,
    );
    expect(notInFull).toEqual(['fall-4-and-88']);
    expect(DESATURATION_DEFINITIONS['fall-4-and-88'].notJudged).toContain('3 minutes');
  });

  it('is judged by the lowest value alone until the team chooses', () => {
    expect(DEFAULT_TEAM_SETTINGS.desaturationDefinition).toBe('nadir-below-90');
    expect(DESATURATION_DEFINITIONS[DEFAULT_TEAM_SETTINGS.desaturationDefinition].fallPoints).toBeNull();
  });
});

describe('the stop rule', () => {
  it.each([
    [81, false],
    [80, false],
    [79, true],
    [null, null],
  ])('lowest SpO2 %s -> below: %s, whatever the meaning of desaturation', (lowestSpo2Percent, expected) => {
    for (const id of DESATURATION_DEFINITION_IDS) {
      const flag = desaturationOf({ startSpo2Percent: null, lowestSpo2Percent }, id);
      expect(flag.isBelowStopRule).toBe(expected);
    }
  });
});
