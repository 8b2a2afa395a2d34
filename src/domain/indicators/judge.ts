import type { ExclusionId } from '../cohort/exclusions.js';
import type { Judgement } from './indicator.js';

/** Counted, and the thing asked for is so. */
export function counts(reason: string): Judgement {
  return { kind: 'numerator', reason };
}

/** Counted, and the thing asked for is not so. */
export function countsNot(reason: string): Judgement {
  return { kind: 'not-numerator', reason };
}

/** Not decided by the data cut. */
export function stillOpen(reason: string): Judgement {
  return { kind: 'open', reason };
}

/** Left out of the denominator. */
export function leftOut(exclusion: ExclusionId, reason: string): Judgement {
  return { kind: 'excluded', exclusion, reason };
}

/** Counted either way by a plain question. @example countsIf(true, 'From general practice', 'From elsewhere') */
export function countsIf(isSo: boolean, ifSo: string, ifNot: string): Judgement {
  return isSo ? counts(ifSo) : countsNot(ifNot);
}
