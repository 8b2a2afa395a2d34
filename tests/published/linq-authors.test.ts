// Source: Hyland ME, scoring guidance on the LINQ authors' pages.
// RANGES OF SMOKING, EXERCISE, DIET AND THE TOTAL FROM MEMORY; those of the first three domains were read.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedRange, publishedScores, publishedThreshold } from '../support/published.js';

const LINQ = 'lung-information-needs-questionnaire';

function upTo(max: number): Parameters<typeof publishedRange>[1] {
  return { min: 0, max, step: 1, usual: null, betterWhen: 'lower', status: 'from-memory' };
}

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

  publishedRange('linq-disease-knowledge', upTo(4));
  publishedRange('linq-medicines', upTo(5));
  publishedRange('linq-self-management', upTo(6));
  publishedRange('linq-smoking', upTo(3));
  publishedRange('linq-exercise', upTo(5));
  publishedRange('linq-diet', upTo(2));
  publishedRange('linq-total', upTo(25));

  publishedScores(LINQ, 'the largest answers make 25', [1, 1, 1, 1, 1, 1, 3, 3, 3, 1, 1, 1, 1, 2, 2, 2], {
    'linq-disease-knowledge': 4,
    'linq-medicines': 5,
    'linq-self-management': 6,
    'linq-smoking': 3,
    'linq-exercise': 5,
    'linq-diet': 2,
    'linq-total': 25,
  });
  // Common practice: items 11 and 12 are asked of people who smoke (item 10 scores 1).
  publishedScores(
    LINQ,
    'somebody who does not smoke scores 0 for smoking without items 11 and 12',
    [1, 0, 0, 1, 0, 0, 2, 1, 3, 0, null, null, 0, 1, 2, 2],
    { 'linq-smoking': 0, 'linq-total': 13 },
  );
  publishedScores(
    LINQ,
    'somebody who smokes needs items 11 and 12',
    [1, 0, 0, 1, 0, 0, 2, 1, 3, 1, null, 0, 0, 1, 2, 2],
    { 'linq-smoking': null, 'linq-total': null, 'linq-diet': 2 },
  );
  publishedScores(
    LINQ,
    'a domain with a missing item has no score, and there is no total',
    [null, 0, 0, 1, 0, 0, 2, 1, 3, 0, null, null, 0, 1, 2, 2],
    { 'linq-disease-knowledge': null, 'linq-medicines': 2, 'linq-total': null },
  );
});
