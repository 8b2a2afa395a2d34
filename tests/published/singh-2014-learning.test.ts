// Source: Singh SJ and others 2014, Eur Respir J 44:1447, ERS/ATS systematic review, doi 10.1183/09031936.00150414;
// abstract READ: learning effect of 26 m for the 6MWT (13 studies) and 20 m for the ISWT (6 studies).
import { describe } from 'vitest';
import { publishedSafetyItem } from '../support/published-safety.js';

const ABSTRACT = {
  list: 'conduct-of-tests',
  strength: null,
  canBeFound: false,
  citationId: 'singh-2014-learning',
  status: 'retrieved',
  doi: '10.1183/09031936.00150414',
} as const;

describe('Singh SJ and others 2014, Eur Respir J 44:1447', () => {
  publishedSafetyItem('learning-effect-six-minute-walk', {
    ...ABSTRACT,
    says: ['6MWT', '26 m', '13 studies'],
  });
  publishedSafetyItem('learning-effect-incremental-shuttle-walk', {
    ...ABSTRACT,
    says: ['ISWT', '20 m', '6 studies'],
  });
});
