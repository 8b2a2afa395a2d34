import { describe, expect, it } from 'vitest';
import { changesOf, rememberThresholds } from '../../../src/domain/change/course-changes.js';
import { DEFAULT_TEAM_SETTINGS } from '../../../src/domain/settings/team-settings.js';
import { aCat, aCourse, anAssessment, anMrc, aSession } from '../../support/facts.js';

const thresholdsFor = rememberThresholds(DEFAULT_TEAM_SETTINGS);

describe('what was measured of a person', () => {
  const changes = changesOf(
    aCourse({
      contacts: [aSession('2026-05-04')],
      assessments: [
        anAssessment('baseline', '2026-04-10', [aCat(20), anMrc(4)]),
        anAssessment('discharge', '2026-06-15', [aCat(18)]),
      ],
    }),
    thresholdsFor,
  );

  it('has one entry per measure of either end', () => {
    expect([...changes.keys()]).toEqual(['cat-total', 'mrc-dyspnoea']);
  });

  it('says what is missing where there is no pair', () => {
    expect(changes.get('cat-total')?.comparison).toMatchObject({ kind: 'pair', class: 'improved' });
    expect(changes.get('mrc-dyspnoea')?.comparison).toMatchObject({
      kind: 'no-pair',
      reason: 'no-discharge-result',
    });
  });

  it('is not judged for a measure that the catalogue does not have', () => {
    expect(() => thresholdsFor('no-such-measure', 'copd')).toThrow(RangeError);
  });
});
