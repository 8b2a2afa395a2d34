import { describe, expect, it } from 'vitest';
import { bothEndsOf } from '../../../src/domain/change/pair.js';
import { toNumber } from '../../../src/domain/exact/fraction.js';
import type { Course } from '../../../src/domain/pathway/course.js';
import { aCat, aCourse, anAssessment, anMrc, aSession, aShuttleWalk } from '../../support/facts.js';

const started = { contacts: [aSession('2026-05-04')] };

/** Both values of a measure; null where there is none. */
function ends(course: Course, measureId: string): readonly (number | null)[] {
  const found = bothEndsOf(course).get(measureId);
  return [found?.baseline, found?.discharge].map((end) =>
    end === null || end === undefined ? null : toNumber(end.result.value),
  );
}

describe('the two ends of a measure', () => {
  it('are the latest baseline up to the start, and the latest discharge', () => {
    const course = aCourse({
      ...started,
      assessments: [
        anAssessment('baseline', '2026-04-10', [aCat(25)]),
        anAssessment('baseline', '2026-05-04', [aCat(22)]),
        anAssessment('baseline', '2026-05-20', [aCat(19)]),
        anAssessment('discharge', '2026-06-15', [aCat(17)]),
        anAssessment('discharge', '2026-06-22', [aCat(16)]),
      ],
    });
    expect(ends(course, 'cat-total')).toEqual([22, 16]);
  });

  it('fall back on the earliest baseline after the start where there is none before it', () => {
    const course = aCourse({
      ...started,
      assessments: [
        anAssessment('baseline', '2026-05-11', [aCat(21)]),
        anAssessment('baseline', '2026-05-20', [aCat(19)]),
      ],
    });
    expect(ends(course, 'cat-total')).toEqual([21, null]);
  });

  it('are chosen measure by measure, so that a second visit completes the first', () => {
    const course = aCourse({
      ...started,
      assessments: [
        anAssessment('baseline', '2026-04-10', [anMrc(4), aCat(25)]),
        anAssessment('baseline', '2026-04-17', [aShuttleWalk(200)]),
        anAssessment('discharge', '2026-06-15', [aCat(20)]),
      ],
    });
    expect(ends(course, 'incremental-shuttle-walk-distance')).toEqual([200, null]);
    expect(ends(course, 'cat-total')).toEqual([25, 20]);
    expect(ends(course, 'mrc-dyspnoea')).toEqual([4, null]);
  });

  it('do not include a follow-up assessment, nor a discharge before the baseline', () => {
    const course = aCourse({
      ...started,
      assessments: [
        anAssessment('discharge', '2026-04-01', [aCat(10)]),
        anAssessment('baseline', '2026-04-10', [aCat(25)]),
        anAssessment('follow-up', '2026-12-01', [aCat(15)]),
      ],
    });
    expect(ends(course, 'cat-total')).toEqual([25, null]);
  });

  it('take 0 for a result', () => {
    const course = aCourse({
      ...started,
      assessments: [
        anAssessment('baseline', '2026-04-10', [aShuttleWalk(0)]),
        anAssessment('discharge', '2026-06-15', [aShuttleWalk(60)]),
      ],
    });
    expect(ends(course, 'incremental-shuttle-walk-distance')).toEqual([0, 60]);
  });

  it('are absent for a measure that nobody took', () => {
    expect(bothEndsOf(aCourse(started)).size).toBe(0);
  });
});
