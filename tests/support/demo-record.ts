import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { buildDemo } from '../../seeds/build-demo.js';
import type { DemoAccounts } from '../../seeds/build-demo.js';
import type { OpenRecord } from '../../src/app/open-record.js';
import { clockAt } from '../../src/app/system-clock.js';
import { plainDate } from '../../src/domain/calendar/plain-date.js';
import type { TeamMember } from '../../src/usecases/context.js';
import { openNewRecord } from './open-new-record.js';

/** The demo of the invented scenario in a record of its own. */
export interface DemoRecord {
  readonly record: OpenRecord;
  /** Path of its file. */
  readonly file: string;
  readonly demo: DemoAccounts;
  /** Lead of the larger team. */
  readonly lead: TeamMember;
  readonly close: () => Promise<void>;
}

/** @param scale 1 is the whole scenario, 0.1 a tenth of its referrals */
export async function demoRecord(today: string, seed: number, scale: number): Promise<DemoRecord> {
  const folder = mkdtempSync(join(tmpdir(), 'tidemark-demo-'));
  const file = join(folder, 'demo.sqlite');
  const record = await openNewRecord(file, clockAt(`${today}T10:00:00.000Z`));
  const demo = await buildDemo(record.context, { today: plainDate(today), seed, scale });
  const account = demo.accounts.find(({ role }) => role === 'lead');
  if (account === undefined || account.teamId === null) throw new Error('The demo has no lead.');
  return {
    record,
    file,
    demo,
    lead: { accountId: account.accountId, role: 'lead', teamId: account.teamId },
    close: async () => {
      await record.connection.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
