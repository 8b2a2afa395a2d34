import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildDemo, DEMO_PASSPHRASE } from '../../seeds/build-demo.js';
import type { DemoAccounts } from '../../seeds/build-demo.js';
import { openRecord } from '../../src/app/open-record.js';
import type { OpenRecord } from '../../src/app/open-record.js';
import { clockAt } from '../../src/app/system-clock.js';
import { done, refused } from '../../src/domain/refusal/refusal.js';
import { need } from '../../seeds/perform.js';
import { addDays } from '../../src/domain/calendar/plain-date.js';
import { getPatient } from '../../src/usecases/patients/find-patients.js';
import { listReferrals } from '../../src/usecases/referrals/list-referrals.js';
import { whoseSession } from '../../src/usecases/accounts/session.js';
import { signIn } from '../../src/usecases/accounts/sign-in.js';
import { actorByToken } from '../../src/usecases/sign-in.js';
import { aPlan, coursesOf, TODAY } from './planned.js';

const SEED = 7;
const SCALE = 0.08;

interface Built {
  readonly record: OpenRecord;
  readonly demo: DemoAccounts;
  readonly progress: readonly (readonly [number, number, string])[];
}

const folder = mkdtempSync(join(tmpdir(), 'tidemark-demo-'));
let one: Built;
let other: Built;

async function build(name: string, scale: number): Promise<Built> {
  const record = await openRecord(join(folder, name), clockAt(`${TODAY}T10:00:00.000Z`));
  const progress: [number, number, string][] = [];
  const demo = await buildDemo(record.context, {
    today: TODAY,
    seed: SEED,
    scale,
    onProgress: (...report) => progress.push(report),
  });
  return { record, demo, progress };
}

beforeAll(async () => {
  one = await build('one.sqlite', SCALE);
  other = await build('other.sqlite', SCALE);
});

afterAll(async () => {
  await one.record.connection.close();
  await other.record.connection.close();
  rmSync(folder, { recursive: true, force: true });
});

describe('the demo in a real record', () => {
  it('holds every planned referral and person, with nothing refused', async () => {
    const { db } = one.record.connection;
    const planned = coursesOf(aPlan(SCALE, SEED));
    const referrals = await db.selectFrom('referral').select('id').execute();
    const patients = await db.selectFrom('patient').select('id').execute();
    expect(referrals).toHaveLength(planned.length);
    expect(patients).toHaveLength(new Set(planned.map(({ person }) => person)).size);
  });

  it('is the same data for the same seed, ids aside', async () => {
    const contentOf = async ({ record }: Built): Promise<unknown> => {
      const { db } = record.connection;
      return {
        patients: await db
          .selectFrom('patient')
          .select(['nhs_number', 'family_name', 'given_name', 'born_on', 'created_at'])
          .orderBy('created_at')
          .orderBy('family_name')
          .orderBy('born_on')
          .execute(),
        assessments: await db
          .selectFrom('assessment')
          .select(['assessed_on', 'timepoint', 'weight_g', 'recorded_at', 'correction_reason'])
          .orderBy('recorded_at')
          .orderBy('weight_g')
          .execute(),
        walks: await db
          .selectFrom('walk_test')
          .innerJoin('assessment', 'assessment.version_id', 'walk_test.assessment_version_id')
          .select(['recorded_at', 'attempt', 'distance_m', 'peak_heart_rate_bpm'])
          .orderBy('recorded_at')
          .orderBy('attempt')
          .orderBy('peak_heart_rate_bpm')
          .execute(),
        attendances: await db
          .selectFrom('attendance')
          .select(['recorded_at', 'outcome'])
          .orderBy('recorded_at')
          .orderBy('outcome')
          .execute(),
      };
    };
    expect(await contentOf(one)).toEqual(await contentOf(other));
  });

  it('records everything on the day it happens or later, never in the future', async () => {
    const { db } = one.record.connection;
    const assessments = await db.selectFrom('assessment').select(['assessed_on', 'recorded_at']).execute();
    const sessions = await db.selectFrom('session').select(['held_on', 'created_at']).execute();
    expect(assessments.length).toBeGreaterThan(30);
    for (const { assessed_on, recorded_at } of assessments) {
      expect(recorded_at.slice(0, 10) >= assessed_on).toBe(true);
      expect(recorded_at < `${TODAY}T00:00:00.000Z`).toBe(true);
    }
    const late = sessions.filter(({ held_on, created_at }) => created_at.slice(0, 10) !== held_on);
    // Only the classes of the coming week are on the calendar before they are held.
    expect(late.length).toBeGreaterThan(0);
    expect(late.every(({ held_on }) => held_on >= TODAY && held_on < addDays(TODAY, 7))).toBe(true);
  });

  it('gives a lead, a clinician and an admin to each team and a reader to each commissioner, each with a passphrase and a token', async () => {
    const { demo, record } = one;
    expect(demo.accounts.map(({ role, belongsTo }) => `${role} of ${belongsTo}`)).toEqual([
      'lead of Marram Coast PR team',
      'clinician of Marram Coast PR team',
      'admin of Marram Coast PR team',
      'clinician of Marram Coast PR team',
      'lead of Eelgrass Lagoon PR team',
      'clinician of Eelgrass Lagoon PR team',
      'admin of Eelgrass Lagoon PR team',
      'commissioner of Shingle and Dune Commissioning',
      'commissioner of Eelgrass Lagoon Commissioning',
    ]);
    for (const { accountId, role, token, signInName } of demo.accounts) {
      expect(await actorByToken(record.context, token)).toMatchObject({ accountId, role });
      const attempt = { signInName, passphrase: DEMO_PASSPHRASE, address: null };
      const { sessionSecret } = need('sign in', await signIn(record.context, attempt));
      expect(await whoseSession(record.context, sessionSecret)).toMatchObject({ actor: { accountId, role } });
    }
    expect(demo.teams.map(({ sites }) => sites.length)).toEqual([3, 1]);
  });

  it('shares the people of the large team between its clinicians by site', async () => {
    const { demo, record } = one;
    const clinicians = demo.accounts.filter(
      ({ role, teamId }) => role === 'clinician' && teamId === demo.teams[0]?.teamId,
    );
    const rows = await record.connection.db
      .selectFrom('assessment')
      .innerJoin('referral', 'referral.id', 'assessment.referral_id')
      .innerJoin('site', 'site.id', 'assessment.site_id')
      .select(['assessment.recorded_by', 'site.name'])
      .where('referral.team_id', '=', demo.teams[0]?.teamId ?? '')
      .execute();
    const [first, second] = clinicians.map(
      ({ accountId }) => new Set(rows.flatMap((row) => (row.recorded_by === accountId ? [row.name] : []))),
    );
    expect(second).toEqual(new Set(['Saltmarsh Centre']));
    expect(first).toEqual(new Set(['Dune Hall', 'Old Beacon Rooms']));
  });

  it('keeps the teams apart: no lead reaches a person or a referral of the other', async () => {
    const { demo, record } = one;
    const leads = demo.accounts.filter(({ role }) => role === 'lead');
    const filter = { siteId: null, patientId: null, stage: null };
    const seen: { patientIds: ReadonlySet<string>; teamId: string; accountId: string }[] = [];
    for (const { accountId, teamId } of leads) {
      if (teamId === null) throw new Error('A lead belongs to a team.');
      const actor = { accountId, role: 'lead', teamId } as const;
      const page = await listReferrals(record.context, actor, filter, { after: null, limit: 500 });
      expect(page.rows.length).toBeGreaterThan(5);
      seen.push({ patientIds: new Set(page.rows.map((row) => row.referral.patientId)), teamId, accountId });
    }
    const [large, small] = seen;
    if (large === undefined || small === undefined) throw new Error('There are two teams.');
    expect([...large.patientIds].filter((id) => small.patientIds.has(id))).toEqual([]);
    const [stranger] = small.patientIds;
    const actor = { accountId: large.accountId, role: 'lead', teamId: large.teamId } as const;
    expect(await getPatient(record.context, actor, stranger ?? '')).toMatchObject({
      kind: 'refused',
      refusal: { code: 'not-found' },
    });
  });

  it('has people at every stage of the pathway, and history where something was corrected', async () => {
    const { demo, record } = one;
    const stages = new Set<string>();
    for (const { accountId, teamId, role } of demo.accounts) {
      if (role !== 'lead' || teamId === null) continue;
      const filter = { siteId: null, patientId: null, stage: null };
      const actor = { accountId, role, teamId };
      const page = await listReferrals(record.context, actor, filter, { after: null, limit: 500 });
      for (const { stage } of page.rows) stages.add(stage);
    }
    expect([...stages]).toEqual(
      expect.arrayContaining(['awaiting-assessment', 'awaiting-start', 'in-programme', 'closed']),
    );
    const { db } = record.connection;
    expect((await db.selectFrom('patient_version').select('version').execute()).length).toBeGreaterThan(0);
  });

  it('tells how far it has come, up to the end', () => {
    const last = one.progress.at(-1);
    expect(last?.[0]).toBe(last?.[1]);
    expect(last?.[2]).toMatch(/^Eelgrass Lagoon PR team, November 2026$/);
    expect(one.progress.every(([done, total]) => done <= total)).toBe(true);
  });

  it('stops and names the refusal, without a word about anybody, when the service refuses an entry', () => {
    const faults = [{ pointer: '/bornOn', code: 'in-the-future', message: 'Said to people.' }];
    expect(() => need('register', refused({ code: 'rules-broken', faults }))).toThrow(
      'The demo was refused (register): rules-broken, /bornOn in-the-future',
    );
    expect(() => need('close', refused({ code: 'already-closed' }))).toThrow(
      'The demo was refused (close): already-closed',
    );
    expect(need('close', done(3))).toBe(3);
  });
});
