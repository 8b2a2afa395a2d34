import { expect, it } from 'vitest';
import type { SitToStandEntry } from '../../../src/domain/assessment/assessment.js';
import { checkSitToStand } from '../../../src/domain/assessment/check-sit-to-stand.js';
import { aStand, foundIn } from '../../support/assessment-entries.js';

const found = (changes: Partial<SitToStandEntry>) =>
  foundIn(checkSitToStand(aStand(changes), '/sitToStands/0'));
const fiveTimes = (changes: Partial<SitToStandEntry>) => ({
  test: 'five-repetition-sit-to-stand',
  ...changes,
});

it('takes no repetition as a result, which is asked about', () => {
  expect(found({ repetitions: 0 })).toEqual(['please-check /sitToStands/0/repetitions']);
});

it('asks for a value or the reason', () => {
  expect(found({})).toEqual(['value-or-reason /sitToStands/0/repetitions']);
  expect(found(fiveTimes({}))).toEqual(['value-or-reason /sitToStands/0/timeS']);
});

it('takes a time in tenths of a second for five repetitions', () => {
  expect(found(fiveTimes({ timeS: 11.4 }))).toEqual([]);
  expect(found(fiveTimes({ timeS: 11.45 }))).toEqual(['off-the-grid /sitToStands/0/timeS']);
});

it('refuses the value of the other kind', () => {
  expect(found({ repetitions: 18, timeS: 60 })).toEqual(['not-for-this-test /sitToStands/0/timeS']);
  expect(found(fiveTimes({ timeS: 11.4, repetitions: 5 }))).toEqual([
    'not-for-this-test /sitToStands/0/repetitions',
  ]);
});

it('refuses a result of a test that was not done, zero included', () => {
  expect(found({ notDoneReason: 'unable' })).toEqual([]);
  expect(found({ repetitions: 0, notDoneReason: 'unable' })).toEqual([
    'value-and-reason /sitToStands/0/notDoneReason',
  ]);
  expect(found({ timeS: 12, notDoneReason: 'unable' })).toEqual([
    'value-and-reason /sitToStands/0/notDoneReason',
  ]);
});

it('checks the height of the chair', () => {
  expect(found({ repetitions: 18, chairHeightCm: 46.5 })).toEqual([]);
  expect(found({ repetitions: 18, chairHeightCm: 39.5 })).toEqual([
    'please-check /sitToStands/0/chairHeightCm',
  ]);
  expect(found({ repetitions: 18, chairHeightCm: 46.2 })).toEqual([
    'out-of-range /sitToStands/0/chairHeightCm',
  ]);
});

it('refuses a test that there is not', () => {
  expect(found({ test: 'squat', repetitions: 18 })).toEqual(['unknown-test /sitToStands/0/test']);
});
