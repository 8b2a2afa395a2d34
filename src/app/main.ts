import { buildApp } from './build-app.js';
import { readConfig } from './config.js';
import { listen } from './listen.js';
import { openRecord } from './open-record.js';
import { runCommand } from './run-command.js';
import { SYSTEM_CLOCK } from './system-clock.js';

const USAGE = `Serves the record.

  npm start`;

await runCommand(USAGE, async () => {
  const config = readConfig(process.env);
  const { connection, context } = await openRecord(config.databaseFile, SYSTEM_CLOCK);
  const app = await buildApp(context, 'info');
  app.addHook('onClose', () => connection.close());
  for (const signal of ['SIGTERM', 'SIGINT'] as const) {
    process.once(signal, () => {
      void app.close().then(() => process.exit(0));
    });
  }
  await listen(app, config);
});
