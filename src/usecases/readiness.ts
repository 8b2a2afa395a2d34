import { pingDatabase, probeWriting } from '../storage/connection.js';
import { tellUntoldReads } from './audit/untold-reads.js';
import type { Context } from './context.js';

/** What the service can do at this moment: everything, only read, or nothing. */
export type Readiness = 'ready' | 'reading-only' | 'not-ready';

/** Whether the record can be read, and written; a failure is an answer here, not an error. */
export async function checkReadiness(context: Context): Promise<Readiness> {
  try {
    await pingDatabase(context.reader);
  } catch {
    return 'not-ready';
  }
  try {
    if (!(await tellUntoldReads(context))) return 'reading-only';
    await probeWriting(context.db, context.clock.now());
    return 'ready';
  } catch {
    return 'reading-only';
  }
}
