import { plainDate } from '../../src/domain/calendar/plain-date.js';
import { parsePeriod } from '../../src/domain/calendar/period.js';
import type { Period } from '../../src/domain/calendar/period.js';
import { NOT_NARROWED } from '../../src/domain/cohort/narrowing.js';
import type { ReferralFacts, Result } from '../../src/domain/cohort/referral-facts.js';
import { DEFAULT_TEAM_SETTINGS } from '../../src/domain/settings/team-settings.js';
import type { QuarterlyReportInput } from '../../src/reports/quarterly/build-quarterly-report.js';
import {
  aCat,
  anAssessment,
  anMrc,
  aReferral,
  aResult,
  aShuttleWalk,
  closed,
  sessionsFrom,
} from './facts.js';

/*
 * A quarter small enough to count on paper: 1 April to 30 June 2026, seen on 20 September 2026.
 *
 * Id   received assessed start    attended     discharged  closed             cohorts (Referral, Start, Discharge)
 * R01  1 Apr    10 Apr   30 Jun   12 of 12     14 Aug      14 Aug completed   R S    day 90 from receipt
 * R02  1 Apr    8 Apr    1 Jul    9 of 12      20 Aug      20 Aug completed   R      day 91
 * R03  2 Apr    9 Apr    20 Apr   9 of 12      8 Jun       10 Jun completed   R S D  75 % exactly
 * R04  3 Apr    10 Apr   27 Apr   8 of 12      12 Jun      12 Jun completed   R S D  8 sessions exactly; another walking aid
 * R05  6 Apr    13 Apr   20 Apr   3 of 12      -           5 May died         R S D  death after the start
 * R06  8 Apr    -        -        -            -           20 Apr died        R   D  death before the start, day 12
 * R07  10 Apr   20 Apr   -        -            -           1 May declined     R   D  day 21
 * R08  15 Apr   24 Apr   11 May   10 of 12     -           -                  R S    decided since 31 Aug (16 weeks)
 * R09  20 Apr   1 May    22 Jun   6 of 12      -           -                  R S    open until 12 Oct
 * R10  24 Jun   -        -        -            -           -                  R      waiting, day 88
 * R11  22 Jun   6 Jul    -        -            -           -                  R      waiting, day 90; the person of R03
 * R12  5 May    12 May   29 May   12 of 12     10 Jul      10 Jul completed   R S    hospital discharge 1 May: day 28
 * R13  28 Apr   8 May    30 May   7 of 12 - 3  10 Jul      12 Jul completed   R S    hospital discharge 30 Apr: day 30
 * R14  12 May   -        -        -            -           13 May in error    (R D)
 * R15  1 Feb    10 Feb   10 Mar   12 of 12     28 Apr      5 May completed        D  pulmonary fibrosis, 86 years old
 * R16  10 Feb   20 Feb   16 Mar   5 of 12      -           20 Apr stopped         D
 * R17  4 May    11 May   1 Jun    4 of 12      -           22 Jun transferred R S D
 * R18  7 Apr    14 Apr   -        -            -           30 Apr moved away R   D  moved before the start, day 23
 * R19  9 Apr    -        -        -            -           -                  R      not suitable at triage, day 6; after an exacerbation, day of discharge not recorded
 * R20  5 Jan    12 Jan   2 Feb    12 of 12     10 Apr      10 Apr completed       D  every measure changed by its threshold exactly
 * R21  5 Jan    12 Jan   2 Feb    6 of 12      10 Apr      10 Apr completed       D  every measure just short of its threshold
 * R22  5 Jan    12 Jan   2 Feb    12 of 12     10 Apr      10 Apr completed       D  another course, another speed, no practice walk
 * R23  19 Jan   26 Jan   2 Mar    4 of 12      -           10 Apr moved away       D  moved after the start
 * R24  10 Jun   -        -        -            -           -                  R      waiting, day 102; the person of R07
 */

const walkMrcCat = (walk: Result, grade: number, total: number): readonly Result[] => [
  walk,
  anMrc(grade),
  aCat(total),
];
const ordinary = walkMrcCat(aShuttleWalk(200), 3, 20);

/**
 * Measures with a threshold for people with COPD: a baseline, a change by the threshold exactly, and one just short of it.
 * Thresholds as the papers give them; a score that its scale does not have stands here because facts are exact.
 */
export const AT_THE_THRESHOLD: readonly (readonly [
  measureId: string,
  baseline: number,
  equal: number,
  short: number,
])[] = [
  // Longer and more are better.
  ['six-minute-walk-distance', 300, 330, 329],
  ['two-minute-walk-distance', 100, 105.5, 105],
  ['endurance-shuttle-walk-time', 200, 374, 373],
  ['one-minute-sit-to-stand', 15, 18, 17],
  ['thirty-second-sit-to-stand', 10, 12, 11],
  ['four-metre-gait-speed', 0.8, 0.91, 0.9],
  ['crq-dyspnoea', 3, 3.5, 3.4],
  ['crq-fatigue', 3, 3.5, 3.25],
  ['crq-emotional-function', 3, 3.5, 3.4],
  ['crq-mastery', 3, 3.5, 3.25],
  ['eq-5d-5l-index', 0.5, 0.551, 0.55],
  ['eq-vas', 50, 56.9, 56],
  ['crq-total', 3, 3.5, 3.45],
  ['k-bild-total', 50, 54.7, 54.6],
  ['handgrip-strength', 20, 25, 24.9],
  ['quadriceps-strength', 20, 23.3, 23.2],
  ['short-physical-performance-battery', 8, 9, 8],
  // Quicker and fewer points are better.
  ['five-repetition-sit-to-stand', 18, 16.3, 16.4],
  ['mrc-dyspnoea', 3, 2, 3],
  ['mmrc-dyspnoea', 2, 1, 2],
  ['cat-total', 20, 18, 19],
  ['sgrq-total', 50, 46, 46.1],
  ['hads-anxiety', 9, 7.5, 8],
  ['hads-depression', 9, 7.5, 8],
  ['sgrq-symptoms', 50, 46, 46.1],
  ['sgrq-activity', 50, 46, 46.1],
  ['sgrq-impacts', 50, 46, 46.1],
  ['linq-total', 10, 9, 10],
  ['phq-9', 12, 7, 8],
  ['gad-7', 10, 6, 7],
];

function resultsOf(end: 'baseline' | 'equal' | 'short'): readonly Result[] {
  return AT_THE_THRESHOLD.map(([measureId, baseline, equal, short]) =>
    aResult(measureId, { baseline, equal, short }[end], WALKS[measureId] ?? {}),
  );
}

/** Conditions of the walks that R20 and R21 did; each with its practice walk where the test asks for one. */
const WALKS: Readonly<Record<string, Partial<Result>>> = {
  'six-minute-walk-distance': { conditions: { courseLengthM: '30' }, hadPracticeWalk: true },
  'two-minute-walk-distance': { conditions: { courseLengthM: '30' } },
  'endurance-shuttle-walk-time': { conditions: { courseLengthM: '10', speedLevel: '4' } },
};

function aSixMinuteWalk(
  distanceM: number,
  { courseLengthM, hadPracticeWalk }: { readonly courseLengthM: string; readonly hadPracticeWalk: boolean },
): Result {
  return aResult('six-minute-walk-distance', distanceM, { conditions: { courseLengthM }, hadPracticeWalk });
}

function anEnduranceWalk(timeS: number, speedLevel: string): Result {
  return aResult('endurance-shuttle-walk-time', timeS, { conditions: { courseLengthM: '10', speedLevel } });
}

export const WORKED_FACTS: readonly ReferralFacts[] = [
  aReferral({
    referralId: 'R01',
    receivedOn: plainDate('2026-04-01'),
    contacts: sessionsFrom('2026-06-30', { attended: 12 }),
    assessments: [
      anAssessment('baseline', '2026-04-10', ordinary),
      anAssessment('discharge', '2026-08-14', ordinary),
    ],
    closure: closed('2026-08-14'),
  }),
  aReferral({
    referralId: 'R02',
    receivedOn: plainDate('2026-04-01'),
    contacts: sessionsFrom('2026-07-01', { attended: 9, missed: 3 }),
    assessments: [
      anAssessment('baseline', '2026-04-08', ordinary),
      anAssessment('discharge', '2026-08-20', ordinary),
    ],
    closure: closed('2026-08-20'),
  }),
  aReferral({
    referralId: 'R03',
    receivedOn: plainDate('2026-04-02'),
    contacts: sessionsFrom('2026-04-20', { attended: 9, missed: 3 }),
    assessments: [
      anAssessment('baseline', '2026-04-09', walkMrcCat(aShuttleWalk(200), 4, 20)),
      anAssessment('discharge', '2026-06-08', walkMrcCat(aShuttleWalk(250), 3, 18)),
    ],
    exercisePlanGivenOn: plainDate('2026-06-08'),
    closure: closed('2026-06-10'),
  }),
  aReferral({
    referralId: 'R04',
    receivedOn: plainDate('2026-04-03'),
    contacts: sessionsFrom('2026-04-27', { attended: 8, missed: 4 }),
    assessments: [
      anAssessment('baseline', '2026-04-10', walkMrcCat(aShuttleWalk(300), 3, 25)),
      anAssessment(
        'discharge',
        '2026-06-12',
        walkMrcCat(aShuttleWalk(340, { conditions: { walkingAid: 'stick' } }), 3, 26),
      ),
    ],
    closure: closed('2026-06-12'),
  }),
  aReferral({
    referralId: 'R05',
    receivedOn: plainDate('2026-04-06'),
    contacts: sessionsFrom('2026-04-20', { attended: 3 }),
    assessments: [
      anAssessment(
        'baseline',
        '2026-04-13',
        walkMrcCat(aShuttleWalk(100, { hadPracticeWalk: false }), 5, 30),
      ),
    ],
    closure: closed('2026-05-05', 'died'),
  }),
  aReferral({
    referralId: 'R06',
    receivedOn: plainDate('2026-04-08'),
    closure: closed('2026-04-20', 'died'),
  }),
  aReferral({
    referralId: 'R07',
    receivedOn: plainDate('2026-04-10'),
    assessments: [anAssessment('baseline', '2026-04-20', ordinary)],
    closure: closed('2026-05-01', 'declined'),
  }),
  aReferral({
    referralId: 'R08',
    receivedOn: plainDate('2026-04-15'),
    contacts: sessionsFrom('2026-05-11', { attended: 10, missed: 2 }),
    assessments: [anAssessment('baseline', '2026-04-24', ordinary)],
  }),
  aReferral({
    referralId: 'R09',
    receivedOn: plainDate('2026-04-20'),
    contacts: sessionsFrom('2026-06-22', { attended: 6, missed: 1 }),
    assessments: [anAssessment('baseline', '2026-05-01', ordinary)],
  }),
  aReferral({ referralId: 'R10', receivedOn: plainDate('2026-06-24') }),
  aReferral({
    referralId: 'R11',
    patientId: 'patient-of-R03',
    receivedOn: plainDate('2026-06-22'),
    assessments: [anAssessment('baseline', '2026-07-06', ordinary)],
  }),
  aReferral({
    referralId: 'R12',
    receivedOn: plainDate('2026-05-05'),
    source: 'hospital-ward',
    pathway: 'after-exacerbation',
    hospitalDischargedOn: plainDate('2026-05-01'),
    contacts: sessionsFrom('2026-05-29', { attended: 12 }),
    assessments: [
      anAssessment('baseline', '2026-05-12', ordinary),
      anAssessment('discharge', '2026-07-10', ordinary),
    ],
    closure: closed('2026-07-10'),
  }),
  aReferral({
    referralId: 'R13',
    receivedOn: plainDate('2026-04-28'),
    source: 'hospital-ward',
    pathway: 'after-exacerbation',
    hospitalDischargedOn: plainDate('2026-04-30'),
    contacts: sessionsFrom('2026-05-30', { attended: 7, missed: 2, cancelledByService: 3 }),
    assessments: [
      anAssessment('baseline', '2026-05-08', ordinary),
      anAssessment('discharge', '2026-07-10', ordinary),
    ],
    closure: closed('2026-07-12'),
  }),
  aReferral({
    referralId: 'R14',
    receivedOn: plainDate('2026-05-12'),
    closure: closed('2026-05-13', 'registered-in-error'),
  }),
  aReferral({
    referralId: 'R15',
    receivedOn: plainDate('2026-02-01'),
    diagnosis: 'idiopathic-pulmonary-fibrosis',
    patient: { sexAtBirth: 'female', bornOn: plainDate('1940-01-01') },
    contacts: sessionsFrom('2026-03-10', { attended: 12 }),
    assessments: [
      anAssessment('baseline', '2026-02-10', walkMrcCat(aShuttleWalk(150), 3, 15)),
      anAssessment(
        'discharge',
        '2026-04-28',
        walkMrcCat(aShuttleWalk(210, { hadPracticeWalk: false }), 2, 18),
      ),
    ],
    closure: closed('2026-05-05'),
  }),
  aReferral({
    referralId: 'R16',
    receivedOn: plainDate('2026-02-10'),
    contacts: sessionsFrom('2026-03-16', { attended: 5 }),
    assessments: [
      anAssessment(
        'baseline',
        '2026-02-20',
        walkMrcCat(aShuttleWalk(250, { conditions: { courseLengthM: null } }), 4, 22),
      ),
    ],
    closure: closed('2026-04-20', 'chose-to-stop'),
  }),
  aReferral({
    referralId: 'R17',
    receivedOn: plainDate('2026-05-04'),
    contacts: sessionsFrom('2026-06-01', { attended: 4 }),
    assessments: [anAssessment('baseline', '2026-05-11', walkMrcCat(aShuttleWalk(180), 3, 21))],
    closure: closed('2026-06-22', 'transferred'),
  }),
  aReferral({
    referralId: 'R18',
    receivedOn: plainDate('2026-04-07'),
    assessments: [anAssessment('baseline', '2026-04-14', ordinary)],
    closure: closed('2026-04-30', 'moved-away'),
  }),
  aReferral({
    referralId: 'R19',
    receivedOn: plainDate('2026-04-09'),
    source: 'hospital-ward',
    pathway: 'after-exacerbation',
    triage: { decision: 'not-suitable', decidedOn: plainDate('2026-04-15') },
  }),
  aReferral({
    referralId: 'R20',
    receivedOn: plainDate('2026-01-05'),
    contacts: sessionsFrom('2026-02-02', { attended: 12 }),
    assessments: [
      anAssessment('baseline', '2026-01-12', resultsOf('baseline')),
      anAssessment('discharge', '2026-04-10', resultsOf('equal')),
    ],
    exercisePlanGivenOn: plainDate('2026-04-10'),
    closure: closed('2026-04-10'),
  }),
  aReferral({
    referralId: 'R21',
    receivedOn: plainDate('2026-01-05'),
    contacts: sessionsFrom('2026-02-02', { attended: 6, missed: 6 }),
    assessments: [
      anAssessment('baseline', '2026-01-12', resultsOf('baseline')),
      anAssessment('discharge', '2026-04-10', resultsOf('short')),
    ],
    closure: closed('2026-04-10'),
  }),
  aReferral({
    referralId: 'R22',
    receivedOn: plainDate('2026-01-05'),
    contacts: sessionsFrom('2026-02-02', { attended: 12 }),
    assessments: [
      anAssessment('baseline', '2026-01-12', [
        aSixMinuteWalk(300, { courseLengthM: '30', hadPracticeWalk: false }),
        anEnduranceWalk(200, '4'),
      ]),
      anAssessment('discharge', '2026-04-10', [
        aSixMinuteWalk(400, { courseLengthM: '20', hadPracticeWalk: false }),
        anEnduranceWalk(600, '5'),
      ]),
    ],
    closure: closed('2026-04-10'),
  }),
  aReferral({
    referralId: 'R23',
    receivedOn: plainDate('2026-01-19'),
    contacts: sessionsFrom('2026-03-02', { attended: 4 }),
    assessments: [anAssessment('baseline', '2026-01-26', ordinary)],
    closure: closed('2026-04-10', 'moved-away'),
  }),
  aReferral({
    referralId: 'R24',
    patientId: 'patient-of-R07',
    receivedOn: plainDate('2026-06-10'),
  }),
];

/** The period of a label that must be right. */
export function aPeriod(label: string): Period {
  const period = parsePeriod(label);
  if (period === null) throw new Error(`${label} is no period.`);
  return period;
}

/** The report on the worked quarter, with a team's first settings. */
export const WORKED_INPUT: QuarterlyReportInput = {
  facts: WORKED_FACTS,
  period: aPeriod('2026-27-Q1'),
  asAt: plainDate('2026-09-20'),
  settings: DEFAULT_TEAM_SETTINGS,
  settingsVersion: 1,
  teamName: 'Marram Coast',
  sites: [{ id: 'site-1', name: 'Dune Hall' }],
  commissioners: [],
  narrowing: NOT_NARROWED,
  entriesInError: { referrals: 0, offers: 0, sessions: 0, assessments: 0 },
};

/** The same with R01 to R17 alone, few enough to be printed and read whole. */
export const FIRST_SEVENTEEN: QuarterlyReportInput = { ...WORKED_INPUT, facts: WORKED_FACTS.slice(0, 17) };
