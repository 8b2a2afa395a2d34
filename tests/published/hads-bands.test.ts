// Source: published cut points of the Hospital Anxiety and Depression Scale (0-7, 8-10, 11-21; and 11-14, 15-21), read.
import { describe } from 'vitest';
import { publishedBands } from '../support/published.js';

const THREE = [
  [0, 7, 'normal'],
  [8, 10, 'borderline'],
  [11, 21, 'abnormal (case)'],
] as const;
const FOUR = [
  [0, 7, 'none'],
  [8, 10, 'mild'],
  [11, 14, 'moderate'],
  [15, 21, 'severe'],
] as const;

describe('HADS bands', () => {
  publishedBands('hads-anxiety-three-bands', {
    measure: 'hads-anxiety',
    isDefault: true,
    status: 'retrieved',
    rows: THREE,
  });
  publishedBands('hads-anxiety-four-bands', {
    measure: 'hads-anxiety',
    isDefault: false,
    status: 'retrieved',
    rows: FOUR,
  });
  publishedBands('hads-depression-three-bands', {
    measure: 'hads-depression',
    isDefault: true,
    status: 'retrieved',
    rows: THREE,
  });
  publishedBands('hads-depression-four-bands', {
    measure: 'hads-depression',
    isDefault: false,
    status: 'retrieved',
    rows: FOUR,
  });
});
