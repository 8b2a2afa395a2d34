import { addDays, daysBetween } from '../src/domain/calendar/plain-date.js';
import type { PlainDate } from '../src/domain/calendar/plain-date.js';
import type { DeliveryMode, Diagnosis, Pathway, ReferralSource } from '../src/domain/referral/closed-sets.js';
import type { PlannedCourse, PlannedPerson } from './plan.js';
import { clamp, chance, logNormal, pick, pickWeighted, wholeBetween } from './random.js';
import type { Random } from './random.js';
import type { SiteScenario, TeamScenario } from './scenario.js';

/** A referral as it arrives, and how many days after it a start is wanted. */
export interface ArrivedReferral {
  readonly site: SiteScenario;
  readonly commissionerKey: string | null;
  readonly details: PlannedCourse['details'];
  readonly waitDays: number;
}

/** Share of referrals after a hospital admission for an exacerbation. */
const AFTER_EXACERBATION_SHARE = 0.15;

/** A home programme: one visit a week. */
const HOME_PROGRAMME = { plannedSessions: 6, plannedWeeks: 6 };

/**
 * What a referral says, and its wait.
 *
 * @source waits: 37 % of people in UK services waited more than three months (2016 national report, n = 7413); after an
 *   admission a start is asked for within a month. Medians and spread are our own.
 */
export function planReferral(
  random: Random,
  arrival: {
    readonly team: TeamScenario;
    readonly person: PlannedPerson;
    readonly receivedOn: PlainDate;
    readonly firstDay: PlainDate;
  },
): ArrivedReferral {
  const { team, receivedOn } = arrival;
  const pathway: Pathway = chance(random, AFTER_EXACERBATION_SHARE) ? 'after-exacerbation' : 'stable';
  const isAfterExacerbation = pathway === 'after-exacerbation';
  const deliveryMode = planMode(random, team);
  const hospitalDischargedOn =
    isAfterExacerbation && chance(random, 0.94) ? addDays(receivedOn, -wholeBetween(random, 0, 8)) : null;
  return {
    site: pickWeighted(
      random,
      team.sites.map((site) => [site, site.weight] as const),
    ),
    commissionerKey: pickWeighted(random, team.commissionerWeights),
    details: {
      receivedOn,
      source: pickWeighted(random, isAfterExacerbation ? SOURCES_AFTER_EXACERBATION : SOURCES),
      diagnosis: isAfterExacerbation ? 'copd' : pickWeighted(random, DIAGNOSES),
      otherConditions: chance(random, 0.45) ? pick(random, OTHER_CONDITIONS) : null,
      pathway,
      hospitalDischargedOn,
      mrcGrade: pickWeighted<number | null>(random, MRC_SHARES),
      deliveryMode,
      plannedStartOn: null,
      ...planOf(team, deliveryMode),
      exercisePlanGivenOn: null,
    },
    waitDays: isAfterExacerbation
      ? clamp(9, 150, logNormal(random, 27, 0.45))
      : clamp(16, 260, logNormal(random, usualWaitDays(arrival.firstDay, receivedOn), 0.48)),
  };
}

/** The median wait falls slowly over the years, so that a trend is there to be found. */
function usualWaitDays(firstDay: PlainDate, receivedOn: PlainDate): number {
  return 80 - 12 * (daysBetween(firstDay, receivedOn) / 1095);
}

function planMode(random: Random, team: TeamScenario): DeliveryMode | null {
  if (chance(random, 0.03)) return null;
  const hasVideo = team.videoClassDays !== null;
  return pickWeighted<DeliveryMode>(random, [
    ['centre', 80],
    ['home', 8],
    ['remote', hasVideo ? 7 : 0],
    ['hybrid', hasVideo ? 5 : 0],
  ]);
}

function planOf(
  team: TeamScenario,
  mode: DeliveryMode | null,
): { readonly plannedSessions: number | null; readonly plannedWeeks: number | null } {
  if (mode === 'home') return HOME_PROGRAMME;
  if (!team.isPlanWrittenOnReferral) return { plannedSessions: null, plannedWeeks: null };
  return { plannedSessions: team.plannedSessions, plannedWeeks: team.plannedWeeks };
}

// After an exacerbation everybody has COPD: with 71 of 100 of the others that makes three quarters of all.
const DIAGNOSES: readonly (readonly [Diagnosis, number])[] = [
  ['copd', 71],
  ['asthma', 7],
  ['bronchiectasis', 7],
  ['idiopathic-pulmonary-fibrosis', 5],
  ['other-interstitial-lung-disease', 4],
  ['other-respiratory', 3],
  ['pulmonary-hypertension', 1],
  ['lung-cancer', 1],
  ['not-known', 1],
];

const SOURCES: readonly (readonly [ReferralSource, number])[] = [
  ['general-practice', 55],
  ['respiratory-clinic', 20],
  ['community-respiratory-team', 14],
  ['self-referral', 5],
  ['hospital-ward', 3],
  ['other', 2],
  ['not-known', 1],
];

const SOURCES_AFTER_EXACERBATION: readonly (readonly [ReferralSource, number])[] = [
  ['hospital-ward', 52],
  ['early-supported-discharge', 33],
  ['community-respiratory-team', 10],
  ['general-practice', 5],
];

const MRC_SHARES: readonly (readonly [number | null, number])[] = [
  [1, 1],
  [2, 14],
  [3, 39],
  [4, 30],
  [5, 10],
  [null, 6],
];

const OTHER_CONDITIONS = [
  'High blood pressure',
  'Type 2 diabetes',
  'Osteoarthritis of the knee',
  'Ischaemic heart disease, stable',
  'Atrial fibrillation',
  'Osteoporosis',
  'Anxiety',
  'Low back pain',
  'Peripheral vascular disease',
  'Hearing loss',
] as const;
