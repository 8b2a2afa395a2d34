/** A stream of numbers that is the same for the same seed and label. */
export interface Random {
  /** The next number, 0 or more and below 1. */
  readonly next: () => number;
}

const TWO_TO_32 = 4_294_967_296;

/**
 * A stream of its own for every label, so that one more person does not change what happens to the others.
 *
 * @param seed whole number
 * @param label what the stream is for, such as `marram-coast/17`
 * @returns a small fast counter generator of 128 bits (sfc32), started from a hash of seed and label
 */
export function randomFor(seed: number, label: string): Random {
  let [a, b, c, counter] = [hashOf(`${seed}/a/${label}`), hashOf(`${seed}/b/${label}`), seed >>> 0, 1];
  const next = (): number => {
    const drawn = (a + b + counter) >>> 0;
    counter = (counter + 1) >>> 0;
    a = (b ^ (b >>> 9)) >>> 0;
    b = (c + (c << 3)) >>> 0;
    c = (((c << 21) | (c >>> 11)) + drawn) >>> 0;
    return drawn / TWO_TO_32;
  };
  for (let round = 0; round < 12; round += 1) next();
  return { next };
}

/** Whether something happens that happens in this share of cases, 0 to 1. */
export function chance(random: Random, share: number): boolean {
  return random.next() < share;
}

/** A whole number from `low` to `high`, both included. */
export function wholeBetween(random: Random, low: number, high: number): number {
  return low + Math.floor(random.next() * (high - low + 1));
}

/** A normally distributed number, by the method of Box and Muller. */
export function normal(random: Random, mean: number, sd: number): number {
  const radius = Math.sqrt(-2 * Math.log(1 - random.next()));
  return mean + sd * radius * Math.cos(2 * Math.PI * random.next());
}

/** A positive number whose logarithm is normal. @param spread standard deviation of the natural logarithm */
export function logNormal(random: Random, median: number, spread: number): number {
  return median * Math.exp(normal(random, 0, spread));
}

/** One of a list, each as likely as the others. @throws RangeError when the list is empty */
export function pick<Value>(random: Random, list: readonly Value[]): Value {
  return pickWeighted(
    random,
    list.map((value) => [value, 1] as const),
  );
}

/** One of a list, in proportion to the weights. @throws RangeError when there is nothing to choose from */
export function pickWeighted<Value>(random: Random, weighted: readonly (readonly [Value, number])[]): Value {
  const total = weighted.reduce((sum, [, weight]) => sum + weight, 0);
  let left = random.next() * total;
  for (const [value, weight] of weighted) {
    left -= weight;
    if (left < 0) return value;
  }
  const last = weighted.at(-1);
  if (last === undefined) throw new RangeError('There is nothing to choose from.');
  return last[0];
}

/** The nearest number between two limits. */
export function clamp(low: number, high: number, value: number): number {
  return Math.min(high, Math.max(low, value));
}

/** FNV-1a, 32 bits. */
function hashOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let index = 0; index < text.length; index += 1) {
    hash = Math.imul(hash ^ text.charCodeAt(index), 0x01000193) >>> 0;
  }
  return hash;
}
