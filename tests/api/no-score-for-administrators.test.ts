import type { Response } from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startWorld } from '../support/bad-input.js';
import type { World } from '../support/bad-input.js';
import { anAssessment, aShuttleWalk, aSixMinuteWalk } from '../support/entries.js';
import { callOperation, filledPath } from '../support/every-operation.js';
import { servedOperations } from '../support/operations.js';
import type { Operation } from '../support/operations.js';
import { pagesAs } from '../support/page-client.js';
import { asRecord, expectProblem, textAt } from '../support/response.js';

/**
 * Values that stand nowhere but in what was measured: distances of both ends and what lies between them, a heart rate,
 * a weight, and words of notes, of a draft and of what was done about a finding.
 */
const PLANTED = {
  numbers: [463, 647, 184, 146, 83.7, 89.3],
  words: ['kittiwake', 'phalarope', 'guillemot'],
} as const;

/** What the questionnaire of the baseline raises, and somebody must put a name to. */
const RISK = { cautionId: 'phq-9-item-9-above-zero', measureId: 'phq-9' };

/** Names under which the API tells what was measured. */
const NAMES = ['mrcGrade', 'scores', 'results', 'walkTests', 'questionnaires', 'distanceM', 'weightKg'];

/** What was found of it before it was planted. */
const planted: { readonly before: string[] } = { before: [] };

let world: World;
let operations: readonly Operation[];
beforeAll(async () => {
  world = await startWorld();
  operations = await servedOperations(world.app);
  for (const operation of operations.filter(({ method }) => method === 'get')) {
    planted.before.push(...plantedIn(await callOperation(world, operation, world.app.tokens.lead)));
  }
  world = await plant(world);
});
afterAll(() => world.app.close());

describe('what was measured', () => {
  it('stands in no definition: what is found was planted', async () => {
    expect(planted.before).toEqual([]);
  });

  it('is shown to leads by the same requests: what is looked for would be found', async () => {
    const seen: string[] = [];
    for (const operation of operations.filter(({ method }) => method === 'get')) {
      seen.push(...plantedIn(await callOperation(world, operation, world.app.tokens.lead)));
    }
    const hidden = [...PLANTED.numbers.map(String), ...PLANTED.words].filter((each) => !seen.includes(each));
    expect(hidden).toEqual([]);
  });

  it('reaches an administrator by no route, neither done nor refused', async () => {
    const found: string[] = [];
    for (const operation of operations) {
      const response = await callOperation(world, operation, world.app.tokens.admin);
      expect(response.status, operation.operationId).toBeLessThan(500);
      expect(Buffer.isBuffer(response.body), operation.operationId).toBe(false);
      for (const each of plantedIn(response)) found.push(`${operation.operationId}: ${each}`);
    }
    expect(found).toEqual([]);
  });

  it('reaches an administrator by no list that is narrowed, sorted or paged', async () => {
    const { referralId, patientId } = world;
    const addresses = [
      '/referrals?limit=200',
      `/referrals?patientId=${patientId}`,
      ...['awaiting-triage', 'awaiting-start', 'in-programme'].map((stage) => `/referrals?stage=${stage}`),
      '/patients?limit=200',
      '/sessions?limit=200',
      `/referrals/${referralId}/history`,
      `/patients/${patientId}/history`,
      '/work-list?limit=200',
    ];
    for (const address of addresses) {
      const response = await world.app.as('admin').get(`/api/v1${address}`);
      expect(plantedIn(response), address).toEqual([]);
      for (const name of NAMES) expect(response.text, address).not.toContain(`"${name}"`);
    }
  });

  it('reaches an administrator by no refusal of a change: neither its values nor its names', async () => {
    const admin = world.app.as('admin');
    const path = `/api/v1/referrals/${world.referralId}`;
    const changes = { reason: 'Misread', changes: { diagnosis: 'asthma' } };
    const late = await admin.patch(path, changes, '"1"');
    expectProblem(late, { status: 412, type: 'changed-meanwhile' });
    const graded = await admin.patch(path, { reason: 'Misread', changes: { mrcGrade: 5 } });
    const forbidden = await admin.get(`${path}/outcomes`);
    // They may type a grade from a letter; nothing tells them what stood there.
    expect(graded.status).toBe(200);
    for (const response of [late, graded, forbidden]) {
      expect(plantedIn(response)).toEqual([]);
      for (const name of NAMES) expect(response.text).not.toContain(name);
    }
  });

  it('reaches an administrator by no page, whoever is led there', async () => {
    const [asLead, asAdmin] = [await pagesAs(world.app, 'lead'), await pagesAs(world.app, 'admin')];
    // One address of each kind: pages lead to others, which are added here while they are visited.
    const addresses = new Map(['/', '/account'].map((address) => [kindOf(address), address]));
    const ours = operations
      .filter(({ method, path }) => method === 'get' && path.includes('{'))
      .map(({ path }) => filledPath(world, path.replace('/api/v1', '')));
    for (const address of ours) addresses.set(kindOf(address), address);
    for (const visitor of [asLead, asAdmin]) {
      for (const address of addresses.values()) {
        for (const link of linksIn((await visitor.get(address)).text)) {
          if (!addresses.has(kindOf(link))) addresses.set(kindOf(link), link);
        }
      }
    }
    expect(addresses.size).toBeGreaterThan(ours.length + 2);
    for (const address of addresses.values()) {
      const response = await asAdmin.get(address);
      expect(response.status, address).toBeLessThan(500);
      expect(plantedIn(response), address).toEqual([]);
    }
  });
});

/** A referral with both ends, a draft and an acknowledgement, in the place of the one that the world came with. */
async function plant(plain: World): Promise<World> {
  const { app, referralId } = plain;
  const lead = app.as('lead');
  const post = async (path: string, body: object) => {
    const response = await lead.post(`/api/v1${path}`, body);
    if (response.status >= 300) throw new Error(`${path}: ${response.text}`);
    return asRecord(response.body);
  };
  const grade = { reason: 'Graded by telephone', changes: { mrcGrade: 4 } };
  await lead.patch(`/api/v1/referrals/${referralId}`, grade);
  const path = `/referrals/${referralId}`;
  const walk = (distanceM: number) => [
    aSixMinuteWalk(distanceM, { startHeartRateBpm: 88, peakHeartRateBpm: 146, lowestSpo2Percent: 84 }),
    aShuttleWalk(430, 1),
  ];
  const baseline = await post(`${path}/assessments`, {
    ...anAssessment(app.siteId, { walkTests: walk(463), weightKg: 83.7, notes: 'kittiwake' }),
    questionnaires: [{ questionnaire: 'patient-health-questionnaire-9', items: [1, 1, 0, 0, 0, 0, 0, 0, 1] }],
  });
  await post(`${path}/assessments`, {
    ...anAssessment(app.siteId, { walkTests: walk(647), weightKg: 89.3, notes: 'kittiwake' }),
    timepoint: 'discharge',
    assessedOn: '2026-07-01',
  });
  const assessmentId = textAt(baseline, 'id');
  const typed = { fields: { notes: ['phalarope'] } };
  await lead.put(`/api/v1${path}/drafts/baseline`, typed);
  await post(`/assessments/${assessmentId}/acknowledgements`, { ...RISK, actionTaken: 'guillemot' });
  return { ...plain, assessmentId };
}

/** What was planted, and stands in an answer. Ids, instants and long tokens are left aside. */
function plantedIn({ text, body }: Response): readonly string[] {
  // A file comes packed, as bytes in which nothing can be looked for; administrators are given none.
  if (Buffer.isBuffer(body)) return [];
  const plain = text.replace(/[\w-]{20,}/g, '').replace(/\d{4}-\d\d-\d\d(T[\d:.]+Z)?/g, '');
  const numbers = PLANTED.numbers.filter((number) =>
    new RegExp(`(?<![\\d.])${String(number).replace('.', '\\.')}(?![\\d.]*\\d)`).test(plain),
  );
  return [...numbers.map(String), ...PLANTED.words.filter((word) => plain.includes(word))];
}

/** An address without its query, and without ids and the like. @example kindOf('/referrals/01a2?x=1') -> '/referrals/-' */
function kindOf(address: string): string {
  return address.replace(/[?#].*$/s, '').replace(/\/[^/]*\d[^/]*/g, '/-');
}

/** Where the links of a page lead within this service. */
function linksIn(html: string): readonly string[] {
  return [...html.matchAll(/<a\b[^>]*href="(\/[^"#]*)/g)].map(([, href = '']) =>
    href.replaceAll('&amp;', '&'),
  );
}
