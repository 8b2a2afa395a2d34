import { verifyReleases } from '../usecases/releases/verify-releases.js';
import { readConfig } from './config.js';
import { openRecord } from './open-record.js';
import { commandRefused, requireRecord, runCommand } from './run-command.js';
import { SYSTEM_CLOCK } from './system-clock.js';

const USAGE = `Checks every release: its digests, that it shows what its counts allow, and the attack on all releases of its year.

  npm run release:verify`;

await runCommand(USAGE, async () => {
  if (process.argv.length > 2) return null;
  const { databaseFile } = readConfig(process.env);
  requireRecord(databaseFile);
  const { connection, context } = await openRecord(databaseFile, SYSTEM_CLOCK);
  const verified = await verifyReleases(context);
  await connection.close();
  const broken = verified.filter(({ faults }) => faults.length > 0);
  if (broken.length > 0) {
    const words = broken.map(({ number, faults }) => `release ${number}: ${faults.join('; ')}`);
    throw commandRefused(`${broken.length} of ${verified.length} do not hold: ${words.join('. ')}.`);
  }
  console.log(`All releases hold: ${verified.length}.`);
});
