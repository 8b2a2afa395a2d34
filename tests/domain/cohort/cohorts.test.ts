import { describe, expect, it } from 'vitest';
import { cohortDate, cohortOf } from '../../../src/domain/cohort/cohorts.js';
import type { CohortKind } from '../../../src/domain/cohort/cohorts.js';
import type { Course } from '../../../src/domain/pathway/course.js';
import { aCat, aCourse, anAssessment, aSession, closed } from '../../support/facts.js';
import { aPeriod } from '../../support/worked-quarter.js';

const quarter = aPeriod('2026-27-Q1');

function isIn(kind: CohortKind, course: Course): boolean {
  return cohortOf(kind, [course], quarter).courses.length === 1;
}

describe('the three cohorts', () => {
  it.each([
    ['2026-03-31', false],
    ['2026-04-01', true],
    ['2026-06-30', true],
    ['2026-07-01', false],
  ])('hold the first and the last day of the period: %s', (day, expected) => {
    const courses: readonly (readonly [CohortKind, Course])[] = [
      ['referral', aCourse(received(day))],
      ['start', aCourse({ ...received('2026-01-01'), contacts: [aSession(day)] })],
      ['discharge', aCourse({ ...received('2026-01-01'), closure: closed(day) })],
    ];
    for (const [kind, course] of courses) expect([kind, isIn(kind, course)]).toEqual([kind, expected]);
  });

  it('count a person assessed in one quarter and closed in the next in the first of them only', () => {
    const course = aCourse({
      ...received('2026-01-01'),
      assessments: [anAssessment('discharge', '2026-06-29', [aCat(18)])],
      closure: closed('2026-07-03'),
    });
    expect(cohortDate('discharge', course)).toBe('2026-06-29');
    expect(cohortOf('discharge', [course], aPeriod('2026-27-Q2')).courses).toEqual([]);
  });

  it('keep a person in the quarter of the first discharge assessment when there is a second', () => {
    const course = aCourse({
      assessments: [
        anAssessment('discharge', '2026-06-29', [aCat(18)]),
        anAssessment('discharge', '2026-07-09', [aCat(17)]),
      ],
    });
    expect(cohortDate('discharge', course)).toBe('2026-06-29');
  });

  it('take in those who left before a start by their closure', () => {
    expect(isIn('discharge', aCourse({ closure: closed('2026-05-01', 'declined') }))).toBe(true);
  });

  it('know who is in a cohort twice', () => {
    const again = { patientId: 'patient-7' };
    const cohort = cohortOf(
      'referral',
      [
        aCourse({ referralId: 'a', ...again }),
        aCourse({ referralId: 'b' }),
        aCourse({ referralId: 'c', ...again }),
      ],
      quarter,
    );
    expect([...cohort.repeatedPatientIds]).toEqual(['patient-7']);
  });
});

function received(day: string): Pick<Course['facts'], 'receivedOn'> {
  return { receivedOn: aSession(day).heldOn };
}
