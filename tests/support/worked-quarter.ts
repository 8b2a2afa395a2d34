import { plainDate } from '../../src/domain/calendar/plain-date.js';
import { parsePeriod } from '../../src/domain/calendar/period.js';
import type { Period } from '../../src/domain/calendar/period.js';
import { NOT_NARROWED } from '../../src/domain/cohort/narrowing.js';
import type { ReferralFacts, Result } from '../../src/domain/cohort/referral-facts.js';
import { DEFAULT_TEAM_SETTINGS } from '../../src/domain/settings/team-settings.js';
import type { QuarterlyReportInput } from '../../src/reports/quarterly/build-quarterly-report.js';
import { aCat, anAssessment, anMrc, aReferral, aShuttleWalk, closed, sessionsFrom } from './facts.js';

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
 */

const walkMrcCat = (walk: Result, grade: number, total: number): readonly Result[] => [
  walk,
  anMrc(grade),
  aCat(total),
];
const ordinary = walkMrcCat(aShuttleWalk(200), 3, 20);

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
