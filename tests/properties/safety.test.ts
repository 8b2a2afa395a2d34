import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SAFETY_ITEMS } from '../../src/domain/safety/conduct.js';
import { checkSafetyFindings } from '../../src/domain/safety/check-safety-findings.js';
import { DESATURATION_DEFINITION_IDS, desaturationOf } from '../../src/domain/safety/desaturation.js';
import type { DesaturationDefinitionId } from '../../src/domain/safety/desaturation.js';
import { restingFindings, RESTING_LIMITS_IDS } from '../../src/domain/safety/resting-limits.js';
import { SAFETY_SCREENS, STOP_REASONS, TEST_PLACES } from '../../src/domain/referral/closed-sets.js';
import { aWalk } from '../support/assessment-entries.js';
import { cautionsFor } from '../support/safety-cautions.js';

const orUnknown = (min: number, max: number) => fc.option(fc.integer({ min, max }), { nil: null });

const resting = fc.record({
  spo2Percent: orUnknown(50, 100),
  heartRateBpm: orUnknown(30, 220),
  systolicMmHg: orUnknown(60, 280),
  diastolicMmHg: orUnknown(30, 160),
});
const oxygenLPerMin = orUnknown(0, 15);
const saturation = fc.record({ startSpo2Percent: orUnknown(50, 100), lowestSpo2Percent: orUnknown(50, 100) });
const findable = SAFETY_ITEMS.filter((item) => item.canBeFound).map((item) => item.id);

describe('resting limits', () => {
  it('say each value once in each direction, and nothing of what is not recorded', () => {
    fc.assert(
      fc.property(resting, oxygenLPerMin, fc.constantFrom(...RESTING_LIMITS_IDS), (values, flow, limits) => {
        const found = restingFindings(values, { limits, oxygenLPerMin: flow });
        const fields = found.map(({ limit }) => limit.field);
        expect(fields).toEqual([...new Set(fields)]);
        for (const { limit, value } of found) expect(value).toBe(values[limit.field]);
      }),
    );
  });

  it('find by the stricter set whatever they find by the other, in the same field', () => {
    fc.assert(
      fc.property(resting, oxygenLPerMin, (values, flow) => {
        const fields = (limits: 'ats-2002' | 'ers-ats-2014') =>
          restingFindings(values, { limits, oxygenLPerMin: flow }).map(({ limit }) => limit.field);
        expect(fields('ats-2002')).toEqual(expect.arrayContaining(fields('ers-ats-2014')));
      }),
    );
  });

  it('are never left by a higher pressure or a lower SpO2', () => {
    fc.assert(
      fc.property(
        resting,
        fc.constantFrom(...RESTING_LIMITS_IDS),
        fc.integer({ min: 0, max: 40 }),
        (values, limits, by) => {
          const fields = (each: typeof values) =>
            restingFindings(each, { limits, oxygenLPerMin: 0 }).map(({ limit }) => limit.field);
          const worse = {
            ...values,
            spo2Percent: values.spo2Percent === null ? null : values.spo2Percent - by,
            systolicMmHg: values.systolicMmHg === null ? null : values.systolicMmHg + by,
            diastolicMmHg: values.diastolicMmHg === null ? null : values.diastolicMmHg + by,
          };
          expect(fields(worse)).toEqual(expect.arrayContaining([...fields(values)]));
        },
      ),
    );
  });
});

describe('desaturation', () => {
  /** Whoever desaturates by the first meaning does so by the second. */
  const IMPLIED: readonly (readonly [DesaturationDefinitionId, DesaturationDefinitionId])[] = [
    ['nadir-88', 'nadir-below-90'],
    ['fall-4-and-below-90', 'nadir-below-90'],
    ['fall-4-and-below-90', 'fall-4'],
    ['fall-4-and-88', 'fall-4-and-below-90'],
    ['fall-4-and-88', 'nadir-88'],
  ];

  it.each(IMPLIED)('by %s is desaturation by %s', (narrow, wide) => {
    fc.assert(
      fc.property(saturation, (values) => {
        const { kind } = desaturationOf(values, narrow);
        if (kind !== 'desaturated' && kind !== 'possibly-desaturated') return;
        expect(desaturationOf(values, wide).kind).toBe('desaturated');
      }),
    );
  });

  it('is always known when both values are, and never stops being so as SpO2 falls further', () => {
    const known = fc.record({
      startSpo2Percent: fc.integer({ min: 50, max: 100 }),
      lowestSpo2Percent: fc.integer({ min: 51, max: 100 }),
    });
    fc.assert(
      fc.property(known, fc.constantFrom(...DESATURATION_DEFINITION_IDS), (values, id) => {
        const { kind } = desaturationOf(values, id);
        expect(kind).not.toBe('not-known');
        if (kind === 'not-desaturated') return;
        const further = { ...values, lowestSpo2Percent: values.lowestSpo2Percent - 1 };
        expect(desaturationOf(further, id).kind).toBe(kind);
      }),
    );
  });
});

describe('findings', () => {
  it('are accepted in any order, each once', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(findable), (ids) => {
        expect(checkSafetyFindings(ids, '/safetyFindings')).toEqual({ faults: [], queries: [] });
      }),
    );
  });
});

describe('cautions of an assessment', () => {
  const walk = fc.record({
    test: fc.constantFrom('incremental-shuttle-walk', 'six-minute-walk'),
    place: fc.constantFrom(...TEST_PLACES),
    distanceM: fc.constantFrom(0, 200, 1020),
    courseLengthM: fc.constantFrom(10, 20, 30, null),
    stopReason: fc.option(fc.constantFrom(...STOP_REASONS), { nil: null }),
    notDoneReason: fc.constantFrom(null, null, 'declined' as const),
    oxygenLPerMin,
    startSpo2Percent: orUnknown(70, 100),
    lowestSpo2Percent: orUnknown(50, 100),
    startHeartRateBpm: orUnknown(30, 180),
  });
  const entry = fc.record({
    resting: fc.option(resting, { nil: null }),
    safetyScreen: fc.constantFrom(...SAFETY_SCREENS),
    safetyFindings: fc.shuffledSubarray(findable, { maxLength: 5 }),
    walkTests: fc.array(walk, { maxLength: 4 }).map((walks) =>
      walks.map((each, index) => {
        const earlier = walks.slice(0, index).filter((other) => other.test === each.test).length;
        return aWalk({ ...each, attempt: earlier === 0 ? 1 : 2 });
      }),
    ),
  });
  const settings = fc.record({
    restingLimits: fc.constantFrom(...RESTING_LIMITS_IDS),
    desaturationDefinition: fc.constantFrom(...DESATURATION_DEFINITION_IDS),
  });

  it('have no two of the same id and measure, so that each can be acknowledged by itself', () => {
    fc.assert(
      fc.property(entry, settings, (values, chosen) => {
        const keys = cautionsFor(values, {}, chosen).map(({ id, measureId }) => `${id} ${String(measureId)}`);
        expect(keys).toEqual([...new Set(keys)]);
      }),
    );
  });

  it('ask for acknowledgement of every finding, every resting value and every SpO2 below 80 %', () => {
    fc.assert(
      fc.property(entry, settings, (values, chosen) => {
        for (const caution of cautionsFor(values, {}, chosen)) {
          if (/^(found|resting|walked-despite|ended-by)-|^saturation-below-80$/.test(caution.id)) {
            expect(caution.mustBeAcknowledged, caution.id).toBe(true);
          }
        }
      }),
    );
  });
});
