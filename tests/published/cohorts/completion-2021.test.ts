// Source: predictors of completion of pulmonary rehabilitation in the UK, ERJ Open Res 2021 (doi
// 10.1183/23120541.00509-2020), abstract.
// Printed: 7060 people enrolled, 4635 completed (66 %). The denominator is the people enrolled, not those referred.
// Nobody who was only referred is printed; 2940 are added here, so that the two denominators differ.
// Enrolled is taken to be: started. The report is built from facts, without a database: 10 000 referrals.
// Tolerance: none for counts, half a unit of the last printed place for the percentage.
import { describe, expect, it } from 'vitest';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import type { ReferralFacts } from '../../../src/domain/cohort/referral-facts.js';
import { buildQuarterlyReport } from '../../../src/reports/quarterly/build-quarterly-report.js';
import { expectPrinted } from '../../support/cohort-groups.js';
import { anAssessment, aReferral, aShuttleWalk, closed, sessionsFrom } from '../../support/facts.js';
import { WORKED_INPUT } from '../../support/worked-quarter.js';

const BASELINE = anAssessment('baseline', '2026-04-10', [aShuttleWalk(200)]);
const DISCHARGE = anAssessment('discharge', '2026-06-08', [aShuttleWalk(250)]);

const COMPLETED: Partial<ReferralFacts> = {
  contacts: sessionsFrom('2026-04-20', { attended: 9, missed: 3 }),
  assessments: [BASELINE, DISCHARGE],
  closure: closed('2026-06-10'),
};
const DROPPED_OUT: Partial<ReferralFacts> = {
  contacts: sessionsFrom('2026-04-20', { attended: 3 }),
  assessments: [BASELINE],
  closure: closed('2026-05-20', 'chose-to-stop'),
};
const DECLINED: Partial<ReferralFacts> = { closure: closed('2026-04-30', 'declined') };

const GROUPS = [
  [4635, COMPLETED],
  [7060 - 4635, DROPPED_OUT],
  [2940, DECLINED],
] as const;

const facts = GROUPS.flatMap(([people, course], group) =>
  Array.from({ length: people }, (_person, index) =>
    aReferral({ ...course, receivedOn: plainDate('2026-04-02'), referralId: `${group}-${index}` }),
  ),
);

describe('completion of 7060 people enrolled', () => {
  const report = buildQuarterlyReport({ ...WORKED_INPUT, facts });
  const row = report.completion.find((each) => each.reading === 'sessions-and-assessment');
  const figureOf = (of: string) => row?.cells.find((cell) => cell.of === of)?.all;

  it('gives the printed share of those enrolled', () => {
    expect(figureOf('started')).toMatchObject({ numerator: 4635, denominator: 7060, open: 0 });
    expectPrinted(figureOf('started')?.percentage, '66');
    // 4635 / 7060 by hand.
    expectPrinted(figureOf('started')?.percentage, '65.7');
  });

  it('gives another share, under its own name, of those referred', () => {
    expect(figureOf('referred')).toMatchObject({ numerator: 4635, denominator: 10_000, open: 0 });
    expectPrinted(figureOf('referred')?.percentage, '46.35');
  });
});
