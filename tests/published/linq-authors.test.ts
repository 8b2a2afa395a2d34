// Source: Hyland ME, scoring guidance on the LINQ authors' pages.
// RANGES OF SMOKING, EXERCISE, DIET AND THE TOTAL FROM MEMORY; those of the first three domains were read.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe("Hyland ME, scoring guidance on the LINQ authors' pages", () => {
  publishedThreshold('linq-authors', {
    measure: 'linq-total',
    purpose: 'improvement',
    value: 1,
    interval: null,
    n: null,
    diagnoses: ['copd'],
    isDefault: true,
    status: 'retrieved',
    doi: null,
  });
});
