import { requireSound, requireWritable } from './check-record.js';
import { readConfig } from './config.js';
import { openRecord } from './open-record.js';
import { runCommand } from './run-command.js';
import { serve } from './serve.js';
import { SYSTEM_CLOCK } from './system-clock.js';

const USAGE = `Serves the record.

  npm start`;

await runCommand(USAGE, async () => {
  const config = readConfig(process.env);
  // In this order: where nothing may be written, a sound record cannot be opened, and would look damaged.
  requireWritable(config.databaseFile);
  requireSound(config.databaseFile);
  await serve(await openRecord(config.databaseFile, SYSTEM_CLOCK), config, 'info');
});
