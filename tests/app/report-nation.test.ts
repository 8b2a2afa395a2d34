import { afterAll, beforeAll, expect, it } from 'vitest';
import { reportNation } from '../../src/usecases/reports/report-nation.js';
import { financialQuarter } from '../../src/domain/calendar/period.js';
import { plainDate } from '../../src/domain/calendar/plain-date.js';
import { expectRefused, expectUsage, runCommandFile } from '../support/command.js';
import type { Ended } from '../support/command.js';
import { itemsOf } from '../support/response.js';
import { givenReferral } from '../support/scenario.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

let service: TestApp;
beforeAll(async () => {
  // The command has the clock of the machine, so the cut is named.
  service = await startApp('2026-04-20T10:00:00.000Z');
  await givenReferral(service, { receivedOn: '2026-01-12' });
  await givenReferral(service, { receivedOn: '2026-02-09' });
});
afterAll(() => service.close());

const run = (...args: readonly string[]): Promise<Ended> =>
  runCommandFile('report-nation.ts', args, { TIDEMARK_DB: service.databaseFile });

it('prints the report over all teams, tells how far it is apart from it, and each team of it', async () => {
  const ended = await run('--period', '2025-26-Q4', '--as-at', '2026-04-15', '--form', 'json');
  expect([ended.code, ended.stderr]).toEqual([0, '1 of 2 teams read\n2 of 2 teams read\n']);
  const expected = await reportNation(service.record.context, {
    period: financialQuarter(2025, 4),
    asAt: plainDate('2026-04-15'),
  });
  expect(expected.cohorts.referral.referrals).toBe(2);
  expect(JSON.parse(ended.stdout)).toEqual(JSON.parse(JSON.stringify(expected)));
  for (const who of ['lead', 'other-team'] as const) {
    const [event] = itemsOf(await service.as(who).get('/api/v1/audit-events?limit=1'));
    expect(event).toMatchObject({
      action: 'report-exported',
      accountId: null,
      details: { form: 'json', period: '2025-26-Q4', asAt: '2026-04-15', of: 'all teams', by: 'operator' },
    });
  }
});

it('prints it for reading unless told otherwise', async () => {
  const { code, stdout } = await run('--period', '2025-26-Q4', '--as-at', '2026-04-15');
  expect(code).toBe(0);
  expect(stdout).toContain('All teams: 2025-26-Q4 (January to March 2026)');
  expect(stdout).toContain('Data cut 15 April 2026.');
});

it('refuses a period that is none or has not begun, and shows how it is called', async () => {
  expectRefused(await run('--period', 'spring'), /Give a financial quarter as 2026-27-Q1/);
  expectRefused(
    await run('--period', '2025-26-Q4', '--as-at', '2025-12-01'),
    /The period has not begun at the data cut/,
  );
  expectUsage(await run(), '--silent report:nation');
  expectUsage(await run('--period', '2025-26-Q4', '--form', 'pdf'), '--silent report:nation');
});
