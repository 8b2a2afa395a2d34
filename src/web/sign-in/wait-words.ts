const MINUTE_S = 60;

/**
 * A wait as it is told to somebody: in seconds up to two minutes, else in whole minutes, never too short.
 *
 * @example waitWords(5) -> '5 seconds'; waitWords(1) -> '1 second'; waitWords(150) -> '3 minutes'
 */
export function waitWords(seconds: number): string {
  if (seconds === 1) return '1 second';
  return seconds < 2 * MINUTE_S ? `${seconds} seconds` : `${Math.ceil(seconds / MINUTE_S)} minutes`;
}
