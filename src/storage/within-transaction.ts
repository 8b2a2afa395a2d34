import { CompiledQuery } from 'kysely';
import type { Executor } from './connection.js';
import { runComposed } from './run-composed.js';

/**
 * A transaction that takes the transactions begun in it as parts of itself, so that what is written one thing at a time
 * can be written together: all of it, or none.
 */
export function withinTransaction(trx: Executor): Executor {
  const joined = {
    execute: async <Result>(step: (trx: Executor) => Promise<Result>): Promise<Result> => step(trx),
  };
  return new Proxy(trx, {
    get: (target, key) => {
      if (key === 'transaction') return () => joined;
      const member: unknown = Reflect.get(target, key, target);
      return typeof member === 'function' ? (member.bind(target) as unknown) : member;
    },
  });
}

const BEGIN = CompiledQuery.raw('savepoint step');
const UNDO = CompiledQuery.raw('rollback to savepoint step');
const END = CompiledQuery.raw('release savepoint step');

/**
 * Carries out a step in a transaction, and undoes it alone where it says so or fails.
 *
 * @param keep whether what the step wrote is kept
 */
export async function undoneUnless<Result>(
  trx: Executor,
  step: () => Promise<Result>,
  keep: (result: Result) => boolean,
): Promise<Result> {
  await runComposed(trx, BEGIN);
  let isKept = false;
  try {
    const result = await step();
    isKept = keep(result);
    return result;
  } finally {
    if (!isKept) await runComposed(trx, UNDO);
    await runComposed(trx, END);
  }
}
