import type { IndicatorRow } from './report-model.js';

/** How a figure stands against its target. @example verdictWords({ isReached: false, isBeyondChance: true }) -> 'not reached, beyond chance' */
export function verdictWords({
  isReached,
  isBeyondChance,
}: Pick<IndicatorRow, 'isReached' | 'isBeyondChance'>): string {
  if (isReached === null) return 'nothing to compare';
  const standing = isReached ? 'reached' : 'not reached';
  if (isBeyondChance === null) return `${standing}, too few or too many open to say more`;
  return `${standing}, ${isBeyondChance ? 'beyond chance' : 'within chance'}`;
}
