import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildDemo } from '../../../seeds/build-demo.js';
import { parsePeriod } from '../../../src/domain/calendar/period.js';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import type { Context } from '../../../src/usecases/context.js';
import { bringRecordIn } from '../../../src/usecases/exports/bring-record-in.js';
import { exportRecordByName } from '../../../src/usecases/exports/export-record.js';
import { REPORT_PARTS } from '../../../src/usecases/reports/report-request.js';
import { emptyStore } from '../../support/moved-record.js';
import type { EmptyStore } from '../../support/moved-record.js';

const TODAY = plainDate('2026-11-26');
const TEAM = 'Marram Coast PR team';
const QUARTERS = [
  '2024-25-Q4',
  '2025-26-Q1',
  '2025-26-Q2',
  '2025-26-Q3',
  '2025-26-Q4',
  '2026-27-Q1',
  '2026-27-Q2',
  '2026-27-Q3',
];

let former: EmptyStore;
let fresh: EmptyStore;
let teamId: string;
beforeAll(async () => {
  [former, fresh] = [await emptyStore(), await emptyStore()];
  const demo = await buildDemo(former.record.context, { today: TODAY, seed: 11, scale: 0.03 });
  teamId = demo.teams.find(({ name }) => name === TEAM)?.teamId ?? '';
});
afterAll(async () => {
  await former.remove();
  await fresh.remove();
});

async function takenOut(context: Context, form: 'zip' | 'json' = 'zip'): Promise<Uint8Array> {
  const file = await exportRecordByName(context, TEAM, form);
  if (typeof file === 'string') throw new Error(file);
  return file.content;
}

describe('a team that moves to another store', () => {
  it('has the same reports there to the last digit, and the same record to the last byte', async () => {
    const file = await takenOut(former.record.context);
    const brought = await bringRecordIn(fresh.record.context, file);
    expect(brought).toMatchObject({ kind: 'done', teamName: TEAM });
    const reportOf = async ({ record }: EmptyStore, label: string): Promise<string> => {
      const period = parsePeriod(label);
      if (period === null) throw new Error(`${label} is no period.`);
      const request = { teamId, period, asAt: TODAY, include: REPORT_PARTS };
      return JSON.stringify(await record.context.reports.report(request));
    };
    for (const quarter of QUARTERS) {
      const report = await reportOf(former, quarter);
      expect(report.length).toBeGreaterThan(10_000);
      expect(await reportOf(fresh, quarter), quarter).toBe(report);
    }
    // Both were taken out at the instant at which the clock of the tests stands.
    expect(Buffer.from(await takenOut(fresh.record.context)).equals(Buffer.from(file))).toBe(true);
  });

  it('is the same record there too where it moves as JSON', async () => {
    const other = await emptyStore();
    try {
      const json = await takenOut(former.record.context, 'json');
      expect(await bringRecordIn(other.record.context, json)).toMatchObject({ kind: 'done', teamName: TEAM });
      const [one, two] = [await takenOut(former.record.context), await takenOut(other.record.context)];
      expect(Buffer.from(two).equals(Buffer.from(one))).toBe(true);
    } finally {
      await other.remove();
    }
  });
});
