// Source: COMMON PRACTICE, NO SOURCE: one grade of the MRC scale; four points for each component of the SGRQ.
// Tolerance: none, compared exactly.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('COMMON PRACTICE, NO SOURCE', () => {
  publishedThreshold('sgrq-symptoms-convention', {
    measure: 'sgrq-symptoms',
    purpose: 'improvement',
    value: 4,
    interval: null,
    n: null,
    diagnoses: [],
    isDefault: true,
    status: 'common-practice',
    doi: null,
  });
  publishedThreshold('sgrq-activity-convention', {
    measure: 'sgrq-activity',
    purpose: 'improvement',
    value: 4,
    interval: null,
    n: null,
    diagnoses: [],
    isDefault: true,
    status: 'common-practice',
    doi: null,
  });
  publishedThreshold('sgrq-impacts-convention', {
    measure: 'sgrq-impacts',
    purpose: 'improvement',
    value: 4,
    interval: null,
    n: null,
    diagnoses: [],
    isDefault: true,
    status: 'common-practice',
    doi: null,
  });
  publishedThreshold('mrc-one-grade', {
    measure: 'mrc-dyspnoea',
    purpose: 'improvement',
    value: 1,
    interval: null,
    n: null,
    diagnoses: [],
    isDefault: true,
    status: 'common-practice',
    doi: null,
  });
});
