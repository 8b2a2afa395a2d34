// Source: Lee AL and others 2015, repeat walk tests in bronchiectasis, doi 10.1097/HCR.0000000000000130; abstract READ:
// n = 85; second 6MWT 20 m longer (13 to 26), second ISWT 15 m (4 to 25).
import { describe } from 'vitest';
import { publishedSafetyItem } from '../support/published-safety.js';

describe('Lee AL and others 2015', () => {
  publishedSafetyItem('learning-effect-bronchiectasis', {
    list: 'conduct-of-tests',
    strength: null,
    canBeFound: false,
    citationId: 'lee-2015-learning',
    status: 'retrieved',
    doi: '10.1097/HCR.0000000000000130',
    says: ['n = 85', '20 m longer (13 to 26)', '15 m (4 to 25)'],
  });
});
