import { expect, it } from 'vitest';
import { shareAlike } from '../../../src/usecases/reports/share-alike.js';

it('keeps equal values once, and different ones apart', () => {
  const share = shareAlike();
  const first = share({ measureId: 'cat-total', value: { numerator: 20, denominator: 1 } });
  expect(share({ measureId: 'cat-total', value: { numerator: 20, denominator: 1 } })).toBe(first);
  const other = { measureId: 'cat-total', value: { numerator: 21, denominator: 1 } };
  expect(share(other)).toBe(other);
});
