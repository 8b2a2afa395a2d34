/** Standard normal quantile at 0.975; a constant, because a tabled or approximated one moves the fourth decimal of a limit. */
export const Z_95 = 1.959963984540054;

/**
 * Quantile of Student's t distribution, for the confidence interval of a mean change.
 *
 * @param probability above 0 and below 1; 0.975 for a two-sided 95 % interval
 * @param degreesOfFreedom above 0, need not be whole
 * @returns the quantile, within 1e-10 of its size up to a million degrees of freedom
 * @throws RangeError when either argument is outside its range
 * @source Definition of the distribution: Abramowitz & Stegun, Handbook of Mathematical Functions, 26.7.1 and 26.5
 *   (from memory); proved against closed forms and a table in the tests.
 * @example tQuantile(0.975, 9) -> 2.26215716...
 */
export function tQuantile(probability: number, degreesOfFreedom: number): number {
  if (!(probability > 0 && probability < 1)) throw new RangeError('Probability must lie between 0 and 1.');
  if (!(degreesOfFreedom > 0 && Number.isFinite(degreesOfFreedom))) {
    throw new RangeError('Degrees of freedom must be above 0.');
  }
  if (probability < 0.5) return -quantileOfUpperTail(probability, degreesOfFreedom);
  return quantileOfUpperTail(1 - probability, degreesOfFreedom);
}

/**
 * The tail beyond t > 0 falls and is convex, so Newton's steps from 0 climb to the root and never pass it.
 * The limit of steps is far above need: about 35 for a Cauchy tail of 1e-10.
 */
function quantileOfUpperTail(tail: number, degreesOfFreedom: number): number {
  let t = 0;
  for (let step = 0; step < 2000; step += 1) {
    const next = t + (upperTail(t, degreesOfFreedom) - tail) / density(t, degreesOfFreedom);
    if (!(next > t * (1 + Number.EPSILON))) return t;
    t = next;
  }
  return t;
}

function density(t: number, degreesOfFreedom: number): number {
  const shape = -((degreesOfFreedom + 1) / 2) * Math.log1p((t * t) / degreesOfFreedom);
  return Math.exp(logGammaRatio(degreesOfFreedom / 2) + shape) / Math.sqrt(Math.PI * degreesOfFreedom);
}

/** Probability beyond t >= 0: half the regularised incomplete beta function at df / (df + t^2). */
function upperTail(t: number, degreesOfFreedom: number): number {
  if (t === 0) return 0.5;
  const a = degreesOfFreedom / 2;
  const square = t * t;
  const x = degreesOfFreedom / (degreesOfFreedom + square);
  const y = square / (degreesOfFreedom + square);
  const logFront =
    logGammaRatio(a) -
    a * Math.log1p(square / degreesOfFreedom) +
    0.5 * Math.log(y) -
    0.5 * Math.log(Math.PI);
  const front = Math.exp(logFront);
  const converges = x < (a + 1) / (a + 2.5);
  return converges
    ? (0.5 * front * betaFraction(x, a, 0.5)) / a
    : 0.5 - (0.5 * front * betaFraction(y, 0.5, a)) / 0.5;
}

/** Continued fraction of the incomplete beta function (Abramowitz & Stegun 26.5.8), evaluated by Lentz's method. */
function betaFraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / awayFromZero(1 - ((a + b) * x) / (a + 1));
  let value = d;
  for (let m = 1; m < 100_000; m += 1) {
    const before = value;
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / awayFromZero(1 + even * d);
    c = awayFromZero(1 + even / c);
    value *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / awayFromZero(1 + odd * d);
    c = awayFromZero(1 + odd / c);
    value *= d * c;
    if (Math.abs(value - before) <= Number.EPSILON * Math.abs(value)) break;
  }
  return value;
}

function awayFromZero(value: number): number {
  return Math.abs(value) < 1e-300 ? 1e-300 : value;
}

/**
 * log(Gamma(a + 1/2) / Gamma(a)) as one series: the difference of two logarithms of gamma loses digits when a is large.
 * Below 20 the argument is first raised by Gamma(a + 1) = a Gamma(a).
 */
function logGammaRatio(a: number): number {
  let shifted = a;
  let correction = 0;
  while (shifted < 20) {
    correction += Math.log(shifted / (shifted + 0.5));
    shifted += 1;
  }
  const inverse = 1 / shifted;
  const square = inverse * inverse;
  const series = inverse * (-1 / 8 + square * (1 / 192 + square * (-1 / 640 + square * (17 / 14336))));
  return correction + 0.5 * Math.log(shifted) + series;
}
