import fc from 'fast-check';
import { addDays, parsePlainDate, plainDate } from '../../src/domain/calendar/plain-date.js';
import type { AssessmentFacts, ReferralFacts } from '../../src/domain/cohort/referral-facts.js';
import type { Timepoint } from '../../src/domain/referral/closed-sets.js';
import type { QuarterlyReportInput } from '../../src/reports/quarterly/build-quarterly-report.js';
import { anyStore, SITES } from './arbitrary-facts.js';
import { aReferral, anAssessment, aShuttleWalk, closed, sessionsFrom } from './facts.js';
import { wholeInput } from './whole-report.js';
import { WORKED_INPUT } from './worked-quarter.js';

const YEARS = 4;
const DAYS_A_YEAR = 365;

/**
 * The worked quarter among some 140 referrals of any course a year, over four years and at six sites, with earlier periods
 * and a trend: whatever number a report can hold is in it. The same with every run.
 */
export function richInput(): QuarterlyReportInput {
  return wholeInput({
    ...WORKED_INPUT,
    facts: [
      ...WORKED_INPUT.facts,
      ...atHome(270, 300),
      ...quarterEarlier(atHome(250, 320)),
      ...anyCourses(),
    ].map((facts, index) => ({
      ...facts,
      siteId: `site-${1 + (index % SITES.length)}`,
    })),
    sites: SITES,
    settingsVersion: 7,
    entriesInError: { referrals: 1, offers: 2, sessions: 3, assessments: 4 },
  });
}

/** Walked at home at both ends, so many metres at discharge; nobody wrote down how tall, so that nothing is predicted. */
function atHome(...dischargesM: readonly number[]): readonly ReferralFacts[] {
  const walked = (timepoint: Timepoint, day: string, distanceM: number): AssessmentFacts =>
    anAssessment(timepoint, day, [aShuttleWalk(distanceM, { conditions: { place: 'home' } })], {
      heightCm: null,
    });
  return dischargesM.map((dischargeM) =>
    aReferral({
      referralId: `at-home-${dischargeM}`,
      receivedOn: plainDate('2026-02-01'),
      contacts: sessionsFrom('2026-03-02', { attended: 12 }),
      assessments: [walked('baseline', '2026-02-09', 210), walked('discharge', '2026-05-08', dischargeM)],
      closure: closed('2026-05-11'),
    }),
  );
}

function quarterEarlier(facts: readonly ReferralFacts[]): readonly ReferralFacts[] {
  return moved(facts, -91) as readonly ReferralFacts[];
}

/** The same courses in each year, of other people. */
function anyCourses(): readonly ReferralFacts[] {
  const ofOneYear = fc.sample(anyStore, { seed: 7, numRuns: 30 }).flat();
  return Array.from({ length: YEARS }, (_, year) =>
    ofOneYear.map((facts, index) => ({
      ...(moved(facts, -year * DAYS_A_YEAR) as ReferralFacts),
      referralId: `referral-${year}-${index}`,
      patientId: `${facts.patientId}-${year}-${index % 30}`,
    })),
  ).flat();
}

/** A value with every date in it so many days later. */
function moved(value: unknown, days: number): unknown {
  if (typeof value === 'string') {
    const date = parsePlainDate(value);
    return date === null ? value : addDays(date, days);
  }
  if (Array.isArray(value)) return value.map((part) => moved(part, days));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, part]) => [name, moved(part, days)]));
}
