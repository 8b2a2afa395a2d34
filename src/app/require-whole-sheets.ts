import type { Context } from '../usecases/context.js';
import { isAnyHalfIn } from '../usecases/imports/take-back.js';
import { commandRefused } from './run-command.js';

/**
 * Refuses a command that counts or takes out a record of which the service is bringing a large sheet in: half of it would
 * count as whole. Asked before and after the record is read.
 *
 * @throws the refusal of a command
 */
export async function requireWholeSheets(context: Context): Promise<void> {
  if (await isAnyHalfIn(context))
    throw commandRefused(
      'A sheet is being brought in at this moment, and is not whole. Try again when it is; where the service does not run, start it once: it takes out again what was left half in.',
    );
}
