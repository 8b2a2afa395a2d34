import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decimal } from '../../src/domain/exact/fraction.js';
import { bodyMassIndex, exactBodyMassIndex } from '../../src/domain/prediction/body-mass-index.js';
import { bodeIndex } from '../../src/domain/prediction/bode.js';
import { enduranceSpeed } from '../../src/domain/prediction/endurance-speed.js';
import { levelAtDistanceM } from '../../src/domain/prediction/iswt-protocol.js';
import { isBelowLowerLimit, percentPredicted, predictResult } from '../../src/domain/prediction/predict.js';
import { PREDICTION_EQUATIONS } from '../../src/domain/prediction/registered.js';

// Not linear in age, as printed: a parabola, and age squared with age times height.
const CURVED_IN_AGE = ['britto-2013-bmi', 'cazzoletti-2022'];

const equation = fc.constantFrom(...PREDICTION_EQUATIONS);
// Heights in half centimetres and weights in tenths of a kilogram, as they are recorded.
const person = fc.record({
  sexAtBirth: fc.constantFrom('female' as const, 'male' as const),
  ageYears: fc.integer({ min: 18, max: 110 }),
  heightCm: fc.integer({ min: 240, max: 440 }).map((halves) => halves / 2),
  weightKg: fc.integer({ min: 250, max: 3000 }).map((tenths) => tenths / 10),
  peakHeartRatePercent: fc.integer({ min: 20, max: 150 }),
  isActive: fc.boolean(),
});

describe('predictions', () => {
  it('older never walks further where the equation is linear in age', () => {
    const linear = PREDICTION_EQUATIONS.filter((each) => !CURVED_IN_AGE.includes(each.id));
    expect(linear).toHaveLength(PREDICTION_EQUATIONS.length - 2);
    fc.assert(
      fc.property(
        fc.constantFrom(...linear),
        person,
        fc.integer({ min: 1, max: 92 }),
        (chosen, younger, years) => {
          const older = { ...younger, ageYears: younger.ageYears + years };
          const [first, second] = [predictResult(chosen, younger), predictResult(chosen, older)];
          fc.pre(first.kind === 'predicted' && second.kind === 'predicted');
          expect(second.predicted).toBeLessThan(first.predicted);
        },
      ),
    );
  });

  it('sex at birth that is not known never predicts', () => {
    fc.assert(
      fc.property(
        equation,
        person,
        fc.constantFrom('indeterminate' as const, 'not-known' as const, null),
        (chosen, known, sexAtBirth) => {
          expect(predictResult(chosen, { ...known, sexAtBirth })).toMatchObject({ reason: 'sex-not-known' });
        },
      ),
    );
  });

  it('any absent needed input never predicts, and any absent other input changes nothing', () => {
    const names = ['ageYears', 'heightCm', 'weightKg', 'peakHeartRatePercent', 'isActive'] as const;
    fc.assert(
      fc.property(equation, person, fc.constantFrom(...names), (chosen, known, name) => {
        const without = predictResult(chosen, { ...known, [name]: null });
        if (chosen.needs.includes(name)) expect(without.kind).toBe('not-predicted');
        else expect(without).toEqual(predictResult(chosen, known));
      }),
    );
  });

  it('percentages are positive for a positive result, zero for zero, and follow the result in proportion', () => {
    fc.assert(
      fc.property(equation, person, fc.integer({ min: 0, max: 1000 }), (chosen, known, value) => {
        const result = predictResult(chosen, known);
        fc.pre(result.kind === 'predicted');
        expect(result.predicted).toBeGreaterThan(0);
        const percent = percentPredicted(value, result.predicted);
        expect(percent > 0).toBe(value > 0);
        expect(percentPredicted(2 * value, result.predicted)).toBeCloseTo(2 * percent, 9);
      }),
    );
  });

  it('the lower limit lies below the prediction, and the prediction itself is never below it', () => {
    fc.assert(
      fc.property(equation, person, (chosen, known) => {
        const result = predictResult(chosen, known);
        fc.pre(result.kind === 'predicted');
        if (result.lowerLimit === null) expect(chosen.lowerLimitRule).toBeNull();
        else expect(result.lowerLimit).toBeLessThan(result.predicted);
        expect(isBelowLowerLimit(result.predicted, result.lowerLimit)).not.toBe(true);
      }),
    );
  });

  it('nothing is clipped: predictions above the ceiling of the shuttle walk stay and are noted', () => {
    const shuttle = PREDICTION_EQUATIONS.filter(
      (each) => each.measureId === 'incremental-shuttle-walk-distance',
    );
    fc.assert(
      fc.property(fc.constantFrom(...shuttle), person, (chosen, known) => {
        const result = predictResult(chosen, known);
        fc.pre(result.kind === 'predicted');
        expect(result.predicted).toBe(chosen.predict(known).predicted);
        expect(result.ceilingNote !== null).toBe(result.predicted > 1020);
      }),
    );
  });
});

describe('units', () => {
  it('the body mass index is the same by centimetres, by metres and as an exact fraction', () => {
    fc.assert(
      fc.property(person, ({ heightCm, weightKg }) => {
        const heightM = heightCm / 100;
        const index = bodyMassIndex({ heightCm, weightKg });
        expect(index).toBeCloseTo(weightKg / (heightM * heightM), 9);
        const exact = exactBodyMassIndex({ heightCm, weightKg });
        expect(exact.numerator / exact.denominator).toBeCloseTo(index, 9);
      }),
    );
  });

  it('a height in metres typed as centimetres never predicts where the height is used', () => {
    const using = PREDICTION_EQUATIONS.filter((each) => each.needs.includes('heightCm'));
    fc.assert(
      fc.property(fc.constantFrom(...using), person, (chosen, known) => {
        const inMetres = { ...known, heightCm: known.heightCm / 100 };
        expect(predictResult(chosen, inMetres)).toMatchObject({ reason: 'height-not-accepted' });
      }),
    );
  });
});

describe('shuttle walk and BODE', () => {
  const distance = fc.integer({ min: 1, max: 102 }).map((shuttles) => shuttles * 10);

  it('a longer walk never ends in a lower level nor gives a lower endurance speed', () => {
    fc.assert(
      fc.property(distance, distance, (a, b) => {
        const [shorter, longer] = [Math.min(a, b), Math.max(a, b)];
        const [first, second] = [levelAtDistanceM(shorter), levelAtDistanceM(longer)];
        expect(second?.level.level).toBeGreaterThanOrEqual(first?.level.level ?? Number.NaN);
        const [slow, fast] = [enduranceSpeed(shorter), enduranceSpeed(longer)];
        if (slow.kind !== 'derived' || fast.kind !== 'derived') throw new Error('no speed');
        expect(fast.enduranceKmPerH).toBeGreaterThanOrEqual(slow.enduranceKmPerH);
      }),
    );
  });

  it('BODE stays within 0 to 10 and a longer walk never adds points', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 150 }),
        fc.integer({ min: 0, max: 900 }),
        fc.integer({ min: 0, max: 4 }),
        fc.integer({ min: 120, max: 500 }),
        fc.integer({ min: 0, max: 100 }),
        (fev1PercentPredicted, sixMinuteWalkDistanceM, mmrcGrade, tenths, further) => {
          const parts = {
            diagnosis: 'copd' as const,
            fev1PercentPredicted,
            sixMinuteWalkDistanceM,
            mmrcGrade,
            bodyMassIndex: decimal(tenths / 10),
          };
          const before = bodeIndex(parts);
          const after = bodeIndex({ ...parts, sixMinuteWalkDistanceM: sixMinuteWalkDistanceM + further });
          if (before.kind !== 'scored' || after.kind !== 'scored') throw new Error('not scored');
          expect(before.points).toBeGreaterThanOrEqual(0);
          expect(before.points).toBeLessThanOrEqual(10);
          expect(after.points).toBeLessThanOrEqual(before.points);
        },
      ),
    );
  });
});
