// COMMON PRACTICE, no source: what holds for exercise and tests at home, except rescue medication (community checklist of
// 2016, checked in its own file) and the limits after COVID-19 (PMC10261367, checked in its own file).
import { describe } from 'vitest';
import { publishedSafetyItem, publishedSafetyList } from '../support/published-safety.js';

const CUSTOM = {
  list: 'exercise-at-home',
  strength: 'local',
  canBeFound: false,
  citationId: 'home-exercise-practice',
  status: 'common-practice',
  doi: null,
} as const;

describe('exercise at home', () => {
  publishedSafetyList('exercise-at-home', [
    'home-same-contraindications',
    'home-no-unsupervised-walk-test',
    'home-rescue-medication',
    'home-emergency-plan',
    'home-second-person',
    'home-not-when-unwell',
    'home-not-below-agreed-saturation',
    'home-test-not-compared',
    'home-post-covid-limits',
  ]);
  publishedSafetyItem('home-same-contraindications', {
    ...CUSTOM,
    says: ['absolute contraindications', 'centre'],
  });
  publishedSafetyItem('home-no-unsupervised-walk-test', {
    ...CUSTOM,
    says: ['exhaustion', 'without supervision'],
  });
  publishedSafetyItem('home-emergency-plan', { ...CUSTOM, says: ['emergency', 'agreed'] });
  publishedSafetyItem('home-second-person', { ...CUSTOM, says: ['second person', 'live call'] });
  publishedSafetyItem('home-not-when-unwell', {
    ...CUSTOM,
    says: ['fever', 'chest pain', 'new or worse'],
  });
  publishedSafetyItem('home-not-below-agreed-saturation', {
    ...CUSTOM,
    says: ['SpO2 at rest', 'agreed'],
  });
  publishedSafetyItem('home-test-not-compared', {
    ...CUSTOM,
    says: ['walk', 'sit-to-stand', 'marked', 'not compared'],
  });
});
