import Sqlite from 'better-sqlite3';
import { aPatient, aReferralBody } from './entries.js';
import type { Body } from './entries.js';
import { asRecord, asRecords, textAt } from './response.js';
import { created } from './scenario.js';
import type { TestApp } from './start-app.js';

/** People who are referred for the commissioner in a quarter: so many of each source, diagnosis and age. */
export interface Referred {
  readonly count: number;
  readonly receivedOn: string;
  readonly changes?: Body;
  readonly patient?: Body;
}

/** Registers people, each referred once for the test commissioner; gives the ids of their referrals. */
export async function refer(app: TestApp, groups: readonly Referred[]): Promise<readonly string[]> {
  const referralIds: string[] = [];
  for (const { count, receivedOn, changes = {}, patient = {} } of groups) {
    for (let each = 0; each < count; each += 1) {
      const person = { nhsNumber: null, nhsNumberMissingReason: 'not-yet-traced', ...patient };
      const patientId = await created(app, '/api/v1/patients', aPatient(person));
      const referral = { receivedOn, commissionerId: app.commissionerId, ...changes };
      referralIds.push(
        await created(app, '/api/v1/referrals', aReferralBody(patientId, app.siteId, referral)),
      );
    }
  }
  return referralIds;
}

/** Forty referrals of the first quarter of a financial year, the last three of them from a ward. */
export async function aSmallQuarter(app: TestApp, year = 2026): Promise<readonly string[]> {
  return refer(app, [
    { count: 24, receivedOn: `${year}-04-10`, changes: { source: 'general-practice', diagnosis: 'copd' } },
    {
      count: 13,
      receivedOn: `${year}-05-12`,
      changes: { source: 'respiratory-clinic', diagnosis: 'asthma' },
    },
    { count: 3, receivedOn: `${year}-06-02`, changes: { source: 'hospital-ward', diagnosis: 'copd' } },
  ]);
}

/** The body of a release of a quarter. */
export function aRelease(app: TestApp, changes: Body = {}): Body {
  return {
    commissionerId: app.commissionerId,
    period: '2026-27-Q1',
    asAt: '2026-08-01',
    mergeAsProposed: true,
    ...changes,
  };
}

/** Makes a release, which must pass; gives its number. */
export async function released(app: TestApp, changes: Body = {}): Promise<number> {
  const response = await app.as('lead').post('/api/v1/releases', aRelease(app, changes));
  if (response.status !== 201) throw new Error(`The release was refused: ${response.text}`);
  return Number(asRecord(response.body)['number']);
}

/** The printed counts of a table, by cell. */
export function printedCounts(document: unknown, tableId: string): Readonly<Record<string, number | '*'>> {
  const table = asRecords(asRecord(document)['tables']).find((each) => each['id'] === tableId);
  if (table === undefined) throw new Error(`There is no table ${tableId}.`);
  return Object.fromEntries(
    asRecords(table['cells']).map((cell) => {
      const count = asRecord(cell['count']);
      return [textAt(cell, 'id'), count['kind'] === 'hidden' ? '*' : Number(count['value'])];
    }),
  );
}

/** What the trail of a team tells of releases, in order. */
export function toldOfReleases(app: TestApp): readonly string[] {
  const db = new Sqlite(app.databaseFile, { readonly: true });
  const rows = db
    .prepare(
      "select action, role, subject_id as subject from audit_event where team_id = ? and action like 'release%' order by sequence",
    )
    .all(app.teamId) as readonly { action: string; role: string; subject: string | null }[];
  db.close();
  return rows.map(({ action, role, subject }) => `${role} ${action}${subject === null ? '' : ` ${subject}`}`);
}
