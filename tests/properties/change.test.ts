import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tQuantile } from '../../src/domain/statistics/normal-and-t.js';
import { pairedChange } from '../../src/domain/statistics/paired-change.js';
import { summarise } from '../../src/domain/statistics/summary.js';

/** Changes as they are recorded: tenths of a unit, from -500 to 500. */
const changes = fc.array(
  fc.integer({ min: -5000, max: 5000 }).map((tenths) => tenths / 10),
  { minLength: 2, maxLength: 60 },
);

function numbersOf(values: readonly number[]): {
  mean: number;
  sd: number;
  low: number;
  high: number;
  srm: number | null;
} {
  const { mean, sd, interval, standardisedResponseMean } = pairedChange(values);
  if (mean === null || sd === null || interval === null) throw new Error('Two pairs have an interval.');
  return { mean, sd, low: interval.low, high: interval.high, srm: standardisedResponseMean };
}

describe('mean change', () => {
  it('turns its sign with every change, and its interval is mirrored', () => {
    fc.assert(
      fc.property(changes, (values) => {
        const [forward, backward] = [numbersOf(values), numbersOf(values.map((value) => -value))];
        expect(backward.mean).toBeCloseTo(-forward.mean, 9);
        expect(backward.low).toBeCloseTo(-forward.high, 9);
        expect(backward.high).toBeCloseTo(-forward.low, 9);
        expect(backward.sd).toBeCloseTo(forward.sd, 9);
        expect(backward.srm === null).toBe(forward.srm === null);
      }),
    );
  });

  it('lies in the middle of its interval', () => {
    fc.assert(
      fc.property(changes, (values) => {
        const { mean, low, high } = numbersOf(values);
        expect(low).toBeLessThanOrEqual(mean);
        expect(high).toBeGreaterThanOrEqual(mean);
        expect(mean - low).toBeCloseTo(high - mean, 8);
      }),
    );
  });

  it('has an interval without width exactly when all changes are equal', () => {
    fc.assert(
      fc.property(changes, fc.boolean(), (values, makeEqual) => {
        const first = values[0] ?? Number.NaN;
        const tried = makeEqual ? values.map(() => first) : values;
        const { low, high, srm } = numbersOf(tried);
        const allEqual = tried.every((value) => value === first);
        expect(low === high).toBe(allEqual);
        expect(srm === null).toBe(allEqual);
      }),
    );
  });

  it('moves with a shift of all changes, and its spread does not', () => {
    fc.assert(
      fc.property(changes, fc.integer({ min: -200, max: 200 }), (values, shift) => {
        const [here, there] = [numbersOf(values), numbersOf(values.map((value) => value + shift))];
        expect(there.mean).toBeCloseTo(here.mean + shift, 8);
        expect(there.sd).toBeCloseTo(here.sd, 8);
        expect(there.high - there.low).toBeCloseTo(here.high - here.low, 6);
      }),
    );
  });
});

describe('summary', () => {
  it('does not depend on the order of the values', () => {
    const shuffled = changes.chain((values) =>
      fc.tuple(
        fc.constant(values),
        fc.shuffledSubarray(values, { minLength: values.length, maxLength: values.length }),
      ),
    );
    fc.assert(
      fc.property(shuffled, ([values, reordered]) => {
        expect(summarise(reordered)).toEqual(summarise(values));
      }),
    );
  });

  it('keeps smallest, lower quartile, median, upper quartile and largest in order, and the mean between the ends', () => {
    fc.assert(
      fc.property(changes, (values) => {
        const { mean, median, lowerQuartile, upperQuartile } = summarise(values);
        const [smallest, largest] = [Math.min(...values), Math.max(...values)];
        const inOrder = [smallest, lowerQuartile, median, upperQuartile, largest].map(Number);
        expect(inOrder).toEqual([...inOrder].sort((a, b) => a - b));
        expect(mean).toBeGreaterThanOrEqual(smallest - 1e-9);
        expect(mean).toBeLessThanOrEqual(largest + 1e-9);
      }),
    );
  });
});

describe("quantile of Student's t", () => {
  const probability = fc.double({ min: 1e-9, max: 1 - 1e-9, noNaN: true });
  const degreesOfFreedom = fc.integer({ min: 1, max: 10_000 });

  it('rises with the probability', () => {
    fc.assert(
      fc.property(probability, probability, degreesOfFreedom, (p, q, df) => {
        fc.pre(q - p > 1e-6);
        expect(tQuantile(p, df)).toBeLessThan(tQuantile(q, df));
      }),
    );
  });

  it('is mirrored about one half', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1023 }), degreesOfFreedom, (part, df) => {
        // Parts of 1024 and their complements are exact, so nothing but the function itself is tested.
        expect(tQuantile(1 - part / 1024, df) + 0).toBe(0 - tQuantile(part / 1024, df));
      }),
    );
  });

  it('widens the interval as degrees of freedom grow fewer', () => {
    fc.assert(
      fc.property(degreesOfFreedom, (df) => {
        expect(tQuantile(0.975, df)).toBeGreaterThan(tQuantile(0.975, df + 1));
      }),
    );
  });
});
