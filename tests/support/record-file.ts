import { SYSTEM_CLOCK } from '../../src/app/system-clock.js';
import { createAccount, createTeam } from '../../src/usecases/accounts/provision.js';
import { openNewRecord } from './open-new-record.js';

/** A record of the invented team in a file that nobody has open, with a lead who may sign in by a token. */
export async function makeRecordFile(
  file: string,
): Promise<{ readonly token: string; readonly siteId: string }> {
  const { connection, context } = await openNewRecord(file, SYSTEM_CLOCK);
  const team = { name: 'Marram Coast PR team', kind: 'demo', siteNames: ['Dune Hall'] } as const;
  const { teamId, siteIds } = await createTeam(context, team);
  const { token } = await createAccount(context, {
    displayName: 'Test lead',
    belonging: { role: 'lead', teamId },
    tokenName: 'tests',
    expiresAt: SYSTEM_CLOCK.inDays(2),
  });
  await connection.close();
  return { token, siteId: siteIds['Dune Hall'] ?? '' };
}
