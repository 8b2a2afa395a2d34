import { expect, it } from 'vitest';
import { takeTurns } from '../../src/storage/take-turns.js';

it('gives each its turn in the order of asking, once the one before has passed it on', async () => {
  const nextTurn = takeTurns();
  const seen: string[] = [];
  const first = await nextTurn();
  const second = nextTurn().then((pass) => {
    seen.push('second');
    return pass;
  });
  const third = nextTurn().then(() => seen.push('third'));
  await Promise.resolve();
  expect(seen).toEqual([]);
  first();
  const passOn = await second;
  expect(seen).toEqual(['second']);
  passOn();
  await third;
  expect(seen).toEqual(['second', 'third']);
});

it('takes a turn that is passed on twice as passed on once', async () => {
  const nextTurn = takeTurns();
  const first = await nextTurn();
  first();
  const second = await nextTurn();
  first();
  let hasThird = false;
  void nextTurn().then(() => {
    hasThird = true;
  });
  await new Promise(setImmediate);
  expect(hasThird).toBe(false);
  second();
  await new Promise(setImmediate);
  expect(hasThird).toBe(true);
});
