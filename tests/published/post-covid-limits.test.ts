// Source: recommendations for people discharged after COVID-19, Table 2 (PMC10261367); table READ: not to exercise with a
// heart rate above 100, a blood pressure below 90/60 or above 140/90 mmHg, or a saturation of 95 % or less. Not for COPD.
import { describe, expect, it } from 'vitest';
import { RESTING_LIMITS } from '../../src/domain/safety/resting-limits.js';
import { publishedSafetyItem } from '../support/published-safety.js';

describe('limits after COVID-19', () => {
  publishedSafetyItem('home-post-covid-limits', {
    list: 'exercise-at-home',
    strength: 'local',
    canBeFound: false,
    citationId: 'post-covid-limits',
    status: 'retrieved',
    doi: null,
    says: ['above 100', 'below 90/60', 'above 140/90 mmHg', '95 % or less', 'not meant for them'],
  });

  it('judge nobody', () => {
    expect(RESTING_LIMITS.map((limit) => limit.citation.id)).not.toContain('post-covid-limits');
  });
});
