/** What attempts are counted by. */
export const DELAY_KINDS = ['account', 'address'] as const;
export type DelayKind = (typeof DELAY_KINDS)[number];

/**
 * Wrong attempts in a row that cost no waiting. Behind one address stands a whole health centre.
 *
 * @source our own choice: a person mistypes a few times; a program is held to about 100 attempts a day
 */
export const FREE_FAILURES: Readonly<Record<DelayKind, number>> = { account: 4, address: 20 };
const FIRST_DELAY_S = 5;
export const LONGEST_DELAY_S = 15 * 60;

/** Wrong attempts are forgotten when there was none for so long. */
export const FAILURES_KEPT_S = 24 * 3600;

/**
 * Seconds to wait after a wrong attempt: nothing at first, then doubling from 5 s up to 15 minutes.
 *
 * @param failures wrong attempts in a row, this one included
 * @example delayAfter('account', 4) -> 0; delayAfter('account', 6) -> 10
 */
export function delayAfter(kind: DelayKind, failures: number): number {
  const beyond = failures - FREE_FAILURES[kind];
  if (beyond <= 0) return 0;
  return Math.min(LONGEST_DELAY_S, FIRST_DELAY_S * 2 ** Math.min(beyond - 1, 20));
}
