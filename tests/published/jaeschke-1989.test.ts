// Source: Jaeschke R and others 1989, Control Clin Trials 10:407.
// doi 10.1016/0197-2456(89)90005-6 (from memory)
// The half point was read in Puhan 2008, which quotes it; its use for the total is FROM MEMORY.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Jaeschke R and others 1989, Control Clin Trials 10', () => {
  publishedThreshold('crq-dyspnoea-jaeschke-1989', {
    measure: 'crq-dyspnoea',
    purpose: 'improvement',
    value: 0.5,
    interval: null,
    n: null,
    diagnoses: ['copd'],
    isDefault: true,
    status: 'retrieved-indirect',
    doi: '10.1016/0197-2456(89)90005-6',
  });
  publishedThreshold('crq-fatigue-jaeschke-1989', {
    measure: 'crq-fatigue',
    purpose: 'improvement',
    value: 0.5,
    interval: null,
    n: null,
    diagnoses: ['copd'],
    isDefault: true,
    status: 'retrieved-indirect',
    doi: '10.1016/0197-2456(89)90005-6',
  });
  publishedThreshold('crq-emotional-function-jaeschke-1989', {
    measure: 'crq-emotional-function',
    purpose: 'improvement',
    value: 0.5,
    interval: null,
    n: null,
    diagnoses: ['copd'],
    isDefault: true,
    status: 'retrieved-indirect',
    doi: '10.1016/0197-2456(89)90005-6',
  });
  publishedThreshold('crq-mastery-jaeschke-1989', {
    measure: 'crq-mastery',
    purpose: 'improvement',
    value: 0.5,
    interval: null,
    n: null,
    diagnoses: ['copd'],
    isDefault: true,
    status: 'retrieved-indirect',
    doi: '10.1016/0197-2456(89)90005-6',
  });
  publishedThreshold('crq-total-extension', {
    measure: 'crq-total',
    purpose: 'improvement',
    value: 0.5,
    interval: null,
    n: null,
    diagnoses: ['copd'],
    isDefault: true,
    status: 'from-memory',
    doi: '10.1016/0197-2456(89)90005-6',
  });
});
