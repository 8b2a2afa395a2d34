import type { ClosureReason } from '../src/domain/referral/closed-sets.js';
import type { Fate, PlannedPerson } from './plan.js';
import { clamp, chance, pickWeighted } from './random.js';
import type { Random } from './random.js';
import type { ArrivedReferral } from './referral.js';

/**
 * How a course ends.
 *
 * @source uptake: 56 % (175 of 313, Leicester 2022-23) and 59 of 90 referred (Jones 2014, Thorax 69:181)
 * @source finishing: 70 % in the least and 50 % in the most deprived fifth (Steiner 2017, Thorax 72:530), 66 % of those
 *   enrolled (Stone 2021, ERJ Open Res 7:00509-2020); lower in smokers and after long waits (Stone 2021). The shares here
 *   are a little higher, because some who finish have no discharge assessment and so do not complete.
 */
export function planFate(random: Random, person: PlannedPerson, referral: ArrivedReferral): Fate {
  const before = pickWeighted<Fate | 'started'>(random, [
    ['registered-in-error', 5],
    ['not-accepted', 55],
    ['left-before-assessment', 185],
    ['left-before-start', 95],
    ['started', 660],
  ]);
  if (before !== 'started') return before;
  return chance(random, finishingShare(person, referral)) ? 'finished' : 'stopped';
}

const SHARE_BY_FIFTH: Readonly<Record<number, number>> = { 1: 0.6, 2: 0.72, 3: 0.77, 4: 0.8, 5: 0.81 };
const SHARE_OF_UNKNOWN_FIFTH = 0.7;

function finishingShare(person: PlannedPerson, referral: ArrivedReferral): number {
  const { deprivationQuintile, smokingStatus } = person.details;
  const byFifth =
    deprivationQuintile === null ? SHARE_OF_UNKNOWN_FIFTH : (SHARE_BY_FIFTH[deprivationQuintile] ?? 0.7);
  const smoking = smokingStatus === 'current' ? -0.06 : 0;
  const waiting = referral.waitDays > 90 ? -0.04 : 0;
  return clamp(0.2, 0.95, byFifth + smoking + waiting);
}

/** Why somebody leaves before the assessment, or between it and the start. */
export function planEarlyReason(
  random: Random,
  fate: 'left-before-assessment' | 'left-before-start',
): ClosureReason {
  return pickWeighted(random, fate === 'left-before-assessment' ? BEFORE_ASSESSMENT : BEFORE_START);
}

/**
 * Why somebody stops.
 *
 * @source reasons of non-completers: motivation 49 %, transport 24 %, exacerbation 18 %, work 5 %, admission 4 %
 *   (Sahin and Naz 2018, Chron Respir Dis, 10.1177/1479972318767206); deaths, moves and transfers are our own
 */
export function planStoppingReason(random: Random): ClosureReason {
  return pickWeighted(random, AFTER_START);
}

const BEFORE_ASSESSMENT: readonly (readonly [ClosureReason, number])[] = [
  ['declined', 46],
  ['no-reply', 30],
  ['other-illness', 6],
  ['died', 7],
  ['hospital-admission', 3],
  ['moved-away', 3],
  ['transferred', 3],
  ['work-or-caring', 2],
];

const BEFORE_START: readonly (readonly [ClosureReason, number])[] = [
  ['declined', 38],
  ['transport', 14],
  ['not-suitable', 12],
  ['other-illness', 12],
  ['exacerbation', 8],
  ['died', 6],
  ['work-or-caring', 6],
  ['moved-away', 4],
];

const AFTER_START: readonly (readonly [ClosureReason, number])[] = [
  ['chose-to-stop', 40],
  ['transport', 17],
  ['exacerbation', 16],
  ['other-illness', 7],
  ['hospital-admission', 5],
  ['died', 5],
  ['work-or-caring', 4],
  ['no-reply', 3],
  ['moved-away', 2],
  ['transferred', 1],
];
