import { verifyAuditTrail } from '../storage/audit/audit-trail.js';
import { readConfig } from './config.js';
import { openRecord } from './open-record.js';
import { SYSTEM_CLOCK } from './system-clock.js';

const { connection } = await openRecord(readConfig(process.env).databaseFile, SYSTEM_CLOCK);
const verdict = await verifyAuditTrail(connection.reader);
if (verdict.kind === 'intact') {
  console.log(`The audit trail is intact: ${verdict.events} entries.`);
} else {
  console.error(`The audit trail is broken at entry ${verdict.sequence}: ${verdict.reason}.`);
  process.exitCode = 1;
}
await connection.close();
