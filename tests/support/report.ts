import { plainDate } from '../../src/domain/calendar/plain-date.js';
import { buildDemo } from '../../seeds/build-demo.js';
import { asRecord } from './response.js';
import { clientOf } from './start-app.js';
import type { TestApp, TestClient } from './start-app.js';

type Json = Readonly<Record<string, unknown>>;

/** Fills a record with a twelfth of the invented scenario, or another share, as at 25 November 2026; the leads of its teams, the larger team first. */
export async function givenDemo(service: TestApp, scale = 0.08): Promise<readonly TestClient[]> {
  const today = plainDate('2026-11-25');
  const demo = await buildDemo(service.record.context, { today, seed: 7, scale });
  const leads = demo.accounts.filter(({ role }) => role === 'lead');
  return leads.map(({ token }) => clientOf(service.app, token));
}

/** A report that must be given. */
export async function reportOf(client: TestClient, query: string): Promise<Json> {
  const response = await client.get(`/api/v1/reports/quarterly?${query}`);
  if (response.status !== 200) throw new Error(response.text);
  return asRecord(response.body);
}

/** The same report for the terminal. */
export async function reportTextOf(client: TestClient, query: string): Promise<string> {
  const response = await client.get(`/api/v1/reports/quarterly.txt?${query}`);
  if (response.status !== 200) throw new Error(response.text);
  return response.text;
}
