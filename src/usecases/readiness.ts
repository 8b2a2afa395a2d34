import { pingDatabase } from '../storage/connection.js';
import type { Context } from './context.js';

/** Whether the record can be read; a failure is an answer here, not an error. */
export async function checkReadiness(context: Context): Promise<boolean> {
  try {
    await pingDatabase(context.reader);
    return true;
  } catch {
    return false;
  }
}
