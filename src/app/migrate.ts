import { readConfig } from './config.js';
import { openRecord } from './open-record.js';
import { runCommand } from './run-command.js';
import { SYSTEM_CLOCK } from './system-clock.js';

const USAGE = `Makes the record, or brings it to the newest schema.

  npm run db:migrate`;

await runCommand(USAGE, async () => {
  if (process.argv.length > 2) return null;
  const { databaseFile } = readConfig(process.env);
  const { connection, applied } = await openRecord(databaseFile, SYSTEM_CLOCK);
  console.log(
    applied.length === 0
      ? `${databaseFile} is up to date.`
      : `${databaseFile}: applied ${applied.join(', ')}.`,
  );
  await connection.close();
});
