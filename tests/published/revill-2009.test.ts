// Source: Revill SM and others 2009, Physiotherapy 95:140-143; abstract READ: 44 people with COPD, two ESWTs after two ISWTs
// at one visit, mean difference 12 s with limits of agreement -88 to +112 s; a practice ESWT is unnecessary.
// The note quotes a table of repeatability in Thorax, READ: n = 11, three visits, test 2 less test 1 59.5 s (9.7 to 109.2).
import { describe } from 'vitest';
import { publishedSafetyItem } from '../support/published-safety.js';

describe('Revill SM and others 2009, Physiotherapy 95', () => {
  publishedSafetyItem('endurance-walk-without-practice', {
    list: 'conduct-of-tests',
    strength: null,
    canBeFound: false,
    citationId: 'revill-2009',
    status: 'retrieved',
    doi: null,
    says: ['one test', 'same day', '44 people', '12 s', '88 s less to 112 s more', '59.5 s', '9.7 to 109.2'],
  });
});
