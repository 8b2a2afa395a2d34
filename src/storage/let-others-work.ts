import { setImmediate } from 'node:timers/promises';

/**
 * Lets everything else that waits in the process be done, before a long piece of work goes on: the database is read in the
 * same thread in which requests are answered.
 */
export async function letOthersWork(): Promise<void> {
  await setImmediate();
}
