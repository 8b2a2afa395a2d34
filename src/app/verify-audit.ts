import { verifyAuditTrail } from '../storage/audit/verify-trail.js';
import { readConfig } from './config.js';
import { openRecord } from './open-record.js';
import { commandRefused, requireRecord, runCommand } from './run-command.js';
import { SYSTEM_CLOCK } from './system-clock.js';

const USAGE = `Verifies that no entry of the audit trail was changed, added or taken out.

  npm run audit:verify`;

await runCommand(USAGE, async () => {
  if (process.argv.length > 2) return null;
  const { databaseFile } = readConfig(process.env);
  requireRecord(databaseFile);
  const { connection } = await openRecord(databaseFile, SYSTEM_CLOCK);
  const verdict = await verifyAuditTrail(connection.reader);
  await connection.close();
  if (verdict.kind !== 'intact') {
    throw commandRefused(`The audit trail is broken at entry ${verdict.sequence}: ${verdict.reason}.`);
  }
  console.log(`The audit trail is intact: ${verdict.events} ${verdict.events === 1 ? 'entry' : 'entries'}.`);
});
