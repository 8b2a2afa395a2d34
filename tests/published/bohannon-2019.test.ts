// Source: Bohannon RW 2019, J Phys Ther Sci 31:75, abstract.
// doi 10.1589/jpts.31.75
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('Bohannon RW 2019, J Phys Ther Sci 31', () => {
  publishedThreshold('handgrip-bohannon-2019', {
    measure: 'handgrip-strength',
    purpose: 'improvement',
    value: 5,
    interval: [5, 6.5],
    n: null,
    diagnoses: [],
    isDefault: true,
    status: 'retrieved',
    doi: '10.1589/jpts.31.75',
  });
});
