import { addDays } from '../src/domain/calendar/plain-date.js';
import type { PlainDate } from '../src/domain/calendar/plain-date.js';
import type {
  EthnicCategory,
  Gender,
  NhsNumberMissingReason,
  PatientDetails,
  SmokingStatus,
  YesNoNotKnown,
} from '../src/domain/patient/patient.js';
import type { SexAtBirth } from '../src/domain/referral/closed-sets.js';
import { planBody } from './body.js';
import { planName } from './names.js';
import type { PlannedPerson } from './plan.js';
import { clamp, chance, normal, pickWeighted, wholeBetween } from './random.js';
import type { Random } from './random.js';

/** From this day referrals are given the fifth of the later index; the two editions stand side by side in the record. */
const LATER_INDEX = { from: '2026-04-01', year: 2025, before: 2019 };

/**
 * A person at their first referral.
 *
 * More people live in the more deprived fifths, as is usual in chronic obstructive disease; the shares are our own.
 */
export function planPerson(
  random: Random,
  referral: { readonly key: string; readonly receivedOn: PlainDate; readonly nhsNumber: string },
): PlannedPerson {
  const sexAtBirth = pickWeighted<SexAtBirth>(random, [
    ['female', 505],
    ['male', 490],
    ['indeterminate', 1],
    ['not-known', 4],
  ]);
  const ethnicCategory = pickWeighted(random, ETHNIC_SHARES);
  const homeOxygen = pickWeighted<YesNoNotKnown>(random, [
    ['no', 90],
    ['yes', 7],
    ['not-known', 3],
  ]);
  const missingReason = chance(random, 0.015) ? pickWeighted(random, MISSING_NUMBER_SHARES) : null;
  const quintile = pickWeighted<number | null>(random, QUINTILE_SHARES);
  const isLaterIndex = referral.receivedOn >= LATER_INDEX.from;
  const details: PatientDetails = {
    nhsNumber: missingReason === null ? referral.nhsNumber : null,
    nhsNumberMissingReason: missingReason,
    ...planName(random, sexAtBirth),
    bornOn: bornBefore(random, referral.receivedOn),
    sexAtBirth,
    gender: planGender(random, sexAtBirth),
    ethnicCategory,
    deprivationQuintile: quintile,
    deprivationIndexYear: quintile === null ? null : isLaterIndex ? LATER_INDEX.year : LATER_INDEX.before,
    smokingStatus: pickWeighted(random, SMOKING_SHARES),
    interpreterNeed: planInterpreterNeed(random, ethnicCategory),
    livesAlone: pickWeighted<YesNoNotKnown>(random, [
      ['no', 58],
      ['yes', 34],
      ['not-known', 8],
    ]),
    homeOxygen,
    gpPracticeCode: chance(random, 0.96)
      ? `DEMO${String(wholeBetween(random, 1, 24)).padStart(2, '0')}`
      : null,
  };
  return {
    key: `person/${referral.key}`,
    details,
    body: planBody(random, { isMale: sexAtBirth === 'male', hasHomeOxygen: homeOxygen === 'yes' }),
    correction: planCorrection(random, details, referral),
  };
}

/** A slip in what was typed at registration, or a number that was traced later. */
function planCorrection(
  random: Random,
  details: PatientDetails,
  referral: { readonly receivedOn: PlainDate; readonly nhsNumber: string },
): PlannedPerson['correction'] {
  const recordedOn = addDays(referral.receivedOn, wholeBetween(random, 3, 25));
  if (details.nhsNumberMissingReason === 'not-yet-traced' && chance(random, 0.6)) {
    return {
      recordedOn,
      changes: { nhsNumber: referral.nhsNumber, nhsNumberMissingReason: null },
      reason: 'NHS number traced',
    };
  }
  if (details.ethnicCategory === '99' && chance(random, 0.15)) {
    return { recordedOn, changes: { ethnicCategory: 'A' }, reason: 'Asked at the first visit' };
  }
  if (chance(random, 0.01)) {
    const bornOn = addDays(details.bornOn, -wholeBetween(random, 1, 9));
    return { recordedOn, changes: { bornOn }, reason: 'Date of birth mistyped, checked with the person' };
  }
  return null;
}

function bornBefore(random: Random, receivedOn: PlainDate): PlainDate {
  const ageYears = clamp(34, 92, normal(random, 70, 9));
  return addDays(receivedOn, -Math.round(ageYears * 365.25));
}

function planGender(random: Random, sexAtBirth: SexAtBirth): Gender {
  const roll = random.next();
  if (roll < 0.02) return 'not-known';
  if (roll < 0.025) return 'not-stated';
  if (roll < 0.028) return 'non-binary';
  return sexAtBirth === 'female' || sexAtBirth === 'male' ? sexAtBirth : 'not-known';
}

function planInterpreterNeed(random: Random, ethnicCategory: EthnicCategory): YesNoNotKnown {
  const isLikelier = !['A', 'B', 'Z', '99'].includes(ethnicCategory);
  if (chance(random, isLikelier ? 0.18 : 0.008)) return 'yes';
  return chance(random, 0.05) ? 'not-known' : 'no';
}

const ETHNIC_SHARES: readonly (readonly [EthnicCategory, number])[] = [
  ['A', 815],
  ['B', 12],
  ['C', 22],
  ['D', 4],
  ['E', 2],
  ['F', 3],
  ['G', 4],
  ['H', 24],
  ['J', 20],
  ['K', 8],
  ['L', 8],
  ['M', 11],
  ['N', 7],
  ['P', 2],
  ['R', 3],
  ['S', 5],
  ['Z', 18],
  ['99', 32],
];

const QUINTILE_SHARES: readonly (readonly [number | null, number])[] = [
  [1, 24],
  [2, 22],
  [3, 20],
  [4, 18],
  [5, 14],
  [null, 2],
];

const SMOKING_SHARES: readonly (readonly [SmokingStatus, number])[] = [
  ['former', 62],
  ['current', 22],
  ['never', 11],
  ['not-known', 4],
  ['not-stated', 1],
];

const MISSING_NUMBER_SHARES: readonly (readonly [NhsNumberMissingReason, number])[] = [
  ['not-yet-traced', 70],
  ['no-nhs-number', 14],
  ['overseas-visitor', 10],
  ['declined', 6],
];
