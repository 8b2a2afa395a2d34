import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { aPatient, aReferralBody } from '../support/entries.js';
import { pagesAs } from '../support/page-client.js';
import type { PageClient } from '../support/page-client.js';
import { asRecord } from '../support/response.js';
import { created, givenMergedRecords, givenPatient } from '../support/scenario.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

let app: TestApp;
let lead: PageClient;
beforeAll(async () => {
  app = await startApp();
  lead = await pagesAs(app, 'lead');
});
afterAll(() => app.close());

const patientOf = async (id: string) => asRecord((await app.as('lead').get(`/api/v1/patients/${id}`)).body);
const REASON = 'Same address and telephone number';

/** Two records of one person by the same names and day of birth; the second has a referral. */
async function givenTwoRecords(familyName: string) {
  const firstId = await givenPatient(app, { familyName });
  const secondId = await givenPatient(app, { familyName, smokingStatus: 'never' });
  const referralId = await created(app, '/api/v1/referrals', aReferralBody(secondId, app.siteId));
  return { firstId, secondId, referralId };
}

describe('two records of one person', () => {
  it('are found from each other, and stand side by side with what differs', async () => {
    const { firstId, secondId, referralId } = await givenTwoRecords('Redshank');
    const fromReferral = await lead.get(`/referrals/${referralId}`);
    expect(fromReferral.text).toContain(`href="/patients/${secondId}/merge"`);
    const others = await lead.get(`/patients/${firstId}/merge`);
    expect(others.text).toContain(`href="/patients/${firstId}/merge?with=${secondId}"`);
    const found = await lead.submit(
      `/patients/${firstId}/merge`,
      { q: 'Redsh' },
      `/patients/${firstId}/merge/find`,
    );
    expect(found.text).toContain(`href="/patients/${firstId}/merge?with=${secondId}"`);
    expect(found.text).not.toContain(`with=${firstId}"`);
    const pair = (await lead.get(`/patients/${firstId}/merge?with=${secondId}`)).text;
    const rowOf = (what: string) => new RegExp(`<th[^>]*><span>${what}</span>.*?</tr>`).exec(pair)?.[0];
    expect(rowOf('Smoking')).toContain('differs');
    expect(rowOf('Smoking')).toContain('has never smoked');
    expect(rowOf('Born')).toContain('9 March 1954');
    expect(rowOf('Born')).not.toContain('differs');
    expect(pair).toContain(`href="/referrals/${referralId}"`);
  });

  it('are made one by a lead with a reason, and two again', async () => {
    const { firstId, secondId, referralId } = await givenTwoRecords('Whimbrel');
    const page = `/patients/${secondId}/merge?with=${firstId}`;
    const merged = await lead.submit(page, { keep: firstId, reason: REASON });
    expect([merged.status, merged.headers['location']]).toEqual([303, `/patients/${firstId}/merges`]);
    expect(await patientOf(secondId)).toMatchObject({ mergedInto: firstId });
    const referral = asRecord((await app.as('lead').get(`/api/v1/referrals/${referralId}`)).body);
    expect(referral['patientId']).toBe(firstId);

    const list = (await lead.get(`/patients/${firstId}/merges`)).text;
    expect(list).toContain(`Test lead, 25 November 2026, 10:00: ${REASON}`);
    expect(list).toContain('1 referral');
    const gone = await lead.get(`/patients/${secondId}/merge`);
    expect([gone.status, gone.headers['location']]).toEqual([303, `/patients/${secondId}/merges`]);
    const undo = /href="(\/patients\/[^"]+\/undo)"/.exec(list)?.[1] ?? '';
    const empty = await lead.submit(undo, { reason: '' });
    expect(empty.status).toBe(422);
    expect(empty.text).toContain('href="#field-reason"');
    const undone = await lead.submit(undo, { reason: 'They are cousins' });
    expect([undone.status, undone.headers['location']]).toEqual([303, `/patients/${firstId}/merges`]);
    expect(await patientOf(secondId)).toMatchObject({ mergedInto: null });
    const after = (await lead.get(`/patients/${firstId}/merges`)).text;
    expect(after).toContain('Test lead, 25 November 2026, 10:00: They are cousins');
    expect(after).not.toContain(undo);
  });

  it('stay two where nobody said which is kept and why; what was typed stays', async () => {
    const { firstId, secondId } = await givenTwoRecords('Dunlin');
    const page = `/patients/${firstId}/merge?with=${secondId}`;
    const nothing = await lead.submit(page, { reason: REASON });
    expect(nothing.status).toBe(422);
    expect(nothing.text).toContain('href="#field-keep"');
    expect(nothing.text).toContain(`value="${REASON}"`);
    const another = await lead.submit(page, { keep: app.siteId, reason: '' });
    expect(another.text).toContain('href="#field-keep"');
    expect(another.text).toContain('href="#field-reason"');
    expect(await patientOf(secondId)).toMatchObject({ mergedInto: null, version: 1 });
  });

  it('stay two while both have an open referral, and where one was changed meanwhile', async () => {
    const { firstId, secondId } = await givenTwoRecords('Sanderling');
    const page = `/patients/${firstId}/merge?with=${secondId}`;
    await app.as('lead').patch(`/api/v1/patients/${secondId}`, {
      changes: { gender: 'female' },
      reason: 'Asked again',
    });
    const stale = await lead.submit(page, { keep: firstId, reason: REASON, secondVersion: '1' });
    expect(stale.status).toBe(412);
    expect(stale.text).toContain('Somebody changed this while you were typing');
    expect(stale.text).toMatch(new RegExp(`value="${firstId}" checked`));
    await created(app, '/api/v1/referrals', aReferralBody(firstId, app.siteId));
    const both = await lead.submit(page, { keep: firstId, reason: REASON });
    expect(both.status).toBe(409);
    expect(both.text).toContain('Both records have an open referral');
    expect(await patientOf(secondId)).toMatchObject({ mergedInto: null });
  });
});

describe('the pages of merges', () => {
  it('are for leads, and know no other team', async () => {
    const { survivorId, mergeId } = await givenMergedRecords(app);
    const paths = [
      `/patients/${survivorId}/merge`,
      `/patients/${survivorId}/merges`,
      `/patients/${survivorId}/merges/${mergeId}/undo`,
    ];
    for (const role of ['admin', 'clinician'] as const) {
      const pages = await pagesAs(app, role);
      for (const path of paths) expect((await pages.get(path)).status, path).toBe(403);
    }
    const theirs = await created(app, '/api/v1/patients', aPatient(), 'other-team');
    for (const path of [
      `/patients/${theirs}/merge`,
      `/patients/${theirs}/merges`,
      `/patients/${survivorId}/merge?with=${theirs}`,
      `/patients/${survivorId}/merges/${theirs}/undo`,
      '/patients/nobody/merge',
    ]) {
      expect((await lead.get(path)).status, path).toBe(404);
    }
  });
});
