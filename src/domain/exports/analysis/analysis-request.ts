import { ageInYears } from '../../calendar/plain-date.js';
import type { PlainDate } from '../../calendar/plain-date.js';
import { ageBandOf } from '../../cohort/dimensions.js';

/** How dates leave: the day itself, or its month. */
export const DATE_FORMS = ['day', 'month'] as const;
export type DateForm = (typeof DATE_FORMS)[number];

/** How ages leave: completed years, or a band of ten. */
export const AGE_FORMS = ['years', 'band'] as const;
export type AgeForm = (typeof AGE_FORMS)[number];

/** What somebody who analyses is given in the place of what says who a person is. */
export interface Masks {
  /** The pseudonym of an id; another one for the same id of another kind. */
  readonly pseudonym: (kind: PseudonymKind, id: string) => string;
  readonly dates: DateForm;
  readonly ages: AgeForm;
}

export type PseudonymKind = 'person' | 'referral' | 'site' | 'commissioner';

/** Ages above are too rare to be told apart: an age of 90 stands for 90 and over. */
const OLDEST_TOLD_YEARS = 90;

/** A date as it leaves. @example maskedDate({ dates: 'month' }, 2026-03-31) -> '2026-03' */
export function maskedDate({ dates }: Pick<Masks, 'dates'>, date: PlainDate | null): string | null {
  if (date === null) return null;
  return dates === 'day' ? date : date.slice(0, 7);
}

/** An age on a day as it leaves; the date of birth never does. */
export function maskedAge(
  { ages }: Pick<Masks, 'ages'>,
  bornOn: PlainDate,
  onDay: PlainDate,
): string | number {
  const years = ageInYears(bornOn, onDay);
  return ages === 'band' ? ageBandOf(years) : Math.min(years, OLDEST_TOLD_YEARS);
}
