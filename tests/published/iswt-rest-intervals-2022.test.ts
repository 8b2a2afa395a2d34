// Source: systematic review of rest intervals of the ISWT, Physiother Quart 2022;30(4):30-40; abstract READ: of 75 studies
// 57 used 30 minutes; there is no formal recommendation.
import { describe } from 'vitest';
import { publishedSafetyItem } from '../support/published-safety.js';

describe('Physiother Quart 2022;30(4)', () => {
  publishedSafetyItem('rest-between-tests', {
    list: 'conduct-of-tests',
    strength: null,
    canBeFound: false,
    citationId: 'iswt-rest-intervals-2022',
    status: 'retrieved',
    doi: null,
    says: ['30 minutes', '57 of 75', 'no recommendation', 'one hour'],
  });
});
