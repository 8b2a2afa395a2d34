import { buildApp } from './build-app.js';
import { readConfig } from './config.js';
import { openRecord } from './open-record.js';
import { SYSTEM_CLOCK } from './system-clock.js';

const config = readConfig(process.env);
const { connection, context } = await openRecord(config.databaseFile, SYSTEM_CLOCK);
const app = await buildApp(context, 'info');
app.addHook('onClose', () => connection.close());

for (const signal of ['SIGTERM', 'SIGINT'] as const) {
  process.once(signal, () => {
    void app.close().then(() => process.exit(0));
  });
}
await app.listen({ host: config.host, port: config.port });
