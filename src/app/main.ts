import { createIdentityProvider } from '../auth/identity-provider.js';
import { takeBackHalfIn } from '../usecases/imports/take-back.js';
import { requireSound, requireWritable } from './check-record.js';
import { readConfig } from './config.js';
import { openRecord } from './open-record.js';
import { readProviderConfig } from './provider-config.js';
import { readPseudonymKey } from './pseudonym-key.js';
import { runCommand } from './run-command.js';
import { serve } from './serve.js';
import { SYSTEM_CLOCK } from './system-clock.js';

const USAGE = `Serves the record.

  npm start`;

await runCommand(USAGE, async () => {
  const config = readConfig(process.env);
  const byProvider = readProviderConfig(process.env);
  const pseudonymKey = readPseudonymKey(process.env);
  // In this order: where nothing may be written, a sound record cannot be opened, and would look damaged.
  requireWritable(config.databaseFile);
  requireSound(config.databaseFile);
  const oidc =
    byProvider === null
      ? null
      : { provider: createIdentityProvider(byProvider.settings), rules: byProvider.rules };
  const record = await openRecord(config.databaseFile, SYSTEM_CLOCK);
  await takeBackHalfIn(record.context);
  await serve(record, config, 'info', {
    oidc,
    trustedProxies: config.trustedProxies,
    pseudonymKey,
  });
});
