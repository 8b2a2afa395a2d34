import { expect, it } from 'vitest';
import { changedValues } from '../../../src/domain/audit/changed-values.js';

it('names each field that differs, with what it held before and after', () => {
  expect(changedValues({ weightKg: 80, heightCm: 160 }, { weightKg: 81, heightCm: 160 }, [])).toEqual({
    weightKg: [80, 81],
  });
});

it('takes a part whose fields were written in another order for the same', () => {
  const former = { resting: { spo2Percent: 95, pressure: { systolic: 120, diastolic: 80 } } };
  const present = { resting: { pressure: { diastolic: 80, systolic: 120 }, spo2Percent: 95 } };
  expect(changedValues(former, present, [])).toEqual({});
});

it('takes a list in another order for another list', () => {
  expect(changedValues({ items: [1, 2] }, { items: [2, 1] }, [])).toEqual({
    items: [
      [1, 2],
      [2, 1],
    ],
  });
});

it('names what is not to be repeated, and does not repeat it', () => {
  expect(changedValues({ note: 'one' }, { note: 'other' }, ['note'])).toEqual({
    note: ['(not repeated)', '(not repeated)'],
  });
});
