import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { anAssessment, aShuttleWalk } from '../../support/entries.js';
import type { Body } from '../../support/entries.js';
import { fieldsOfForm, formsOf } from '../../support/form-fields.js';
import { pagesAs } from '../../support/page-client.js';
import type { PageClient } from '../../support/page-client.js';
import { asRecord, asRecords } from '../../support/response.js';
import { givenAssessment, givenTriagedReferral } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
let pages: PageClient;
beforeAll(async () => {
  app = await startApp();
  pages = await pagesAs(app, 'clinician');
});
afterAll(() => app.close());

const REASON = 'Read from the sheet again';
/** Of every kind that the sheet has, with an unusual weight that was confirmed. */
const whole: Body = {
  heightCm: 160,
  weightKg: 190,
  confirmed: ['/weightKg'],
  spirometry: { fev1L: 1.2, fev1PercentPredicted: 45, fev1FvcPercent: 52 },
  resting: { spo2Percent: 94, heartRateBpm: 80, systolicMmHg: 130, diastolicMmHg: 80 },
  safetyScreen: 'no-concern',
  safetyNote: 'Line one\nand "line" two',
  walkTests: [
    aShuttleWalk(180, 1, { endBreathlessness: 0.5, stopReason: 'breathlessness' }),
    aShuttleWalk(200, 2),
  ],
  sitToStands: [{ test: 'one-minute-sit-to-stand', repetitions: 18, handsUsed: false, chairHeightCm: 46.5 }],
  questionnaires: [
    { questionnaire: 'copd-assessment-test', items: [3, 3, 2, null, 3, 2, 3, 2] },
    { questionnaire: 'hospital-anxiety-and-depression-scale', notDoneReason: 'language' },
  ],
  physicalTests: [
    { test: 'handgrip-strength', conditions: { side: 'left' }, value: 24.5 },
    { test: 'four-metre-gait-speed', parts: { 'four-metre-walk': 'unable' } },
  ],
  notes: 'Tired today',
};

async function given(changes: Body = whole) {
  const referralId = await givenTriagedReferral(app);
  const id = await givenAssessment(app, referralId, changes);
  return { id, referralId, path: `/assessments/${id}/correction` };
}
const read = async (id: string) =>
  asRecord((await app.as('clinician').get(`/api/v1/assessments/${id}`)).body);
/** What a browser would send of the page: every field with what stands in it. */
async function fieldsOf(path: string, who = pages) {
  const forms = formsOf((await who.get(path)).text);
  return fieldsOfForm(forms.find((form) => form.includes('class="sheet"')) ?? '');
}

describe('the correction of an assessment', () => {
  it('begins with all that is recorded, and changes nothing but what is corrected', async () => {
    const { id, referralId, path } = await given();
    const before = await read(id);
    const fields = await fieldsOf(path);
    const answer = await pages.post(path, { ...fields, 'walk2.distanceM': '210', reason: REASON });
    expect(answer.status, answer.text).toBe(303);
    expect(answer.headers['location']).toBe(`/referrals/${referralId}/assessments/baseline/recorded/${id}`);
    const after = await read(id);
    expect(after).toMatchObject({ version: 2, correctionReason: REASON });
    const [formerEntry, entry] = [asRecord(before['entry']), asRecord(after['entry'])];
    expect(asRecords(entry['walkTests']).map((walk) => walk['distanceM'])).toEqual([180, 210]);
    const untouched = (each: Readonly<Record<string, unknown>>) => ({ ...each, walkTests: null });
    expect(untouched(entry)).toEqual(untouched(formerEntry));
    expect(asRecords(entry['walkTests'])[0]).toEqual(asRecords(formerEntry['walkTests'])[0]);
  });

  it('stands in the history of the assessment: what was changed, by whom, when and why', async () => {
    const { id, referralId, path } = await given();
    await pages.post(path, { ...(await fieldsOf(path)), 'walk2.distanceM': '210', reason: REASON });
    expect((await pages.get(`/referrals/${referralId}`)).text).toContain(`href="/assessments/${id}/history"`);
    const { text } = await pages.get(`/assessments/${id}/history`);
    const [version2 = ''] = text.split('Version 1 of the assessment');
    expect(version2).toContain(`25 November 2026, 10:00, Test clinician: ${REASON}`);
    expect(version2).toMatch(/>200\u00a0m<[\s\S]*>210\u00a0m</);
    expect(version2).toContain('ISWT, second walk: distance');
    expect(text).toContain('Dune Hall');
    expect(text).toContain('20 April 2026');
    expect(text).toContain('3, 3, 2, none, 3, 2, 3, 2');
    expect((await (await pagesAs(app, 'admin')).get(`/assessments/${id}/history`)).status).toBe(403);
  });

  it('is reached from the referral and from what was recorded', async () => {
    const { id, referralId, path } = await given();
    for (const from of [
      `/referrals/${referralId}`,
      `/referrals/${referralId}/assessments/baseline/recorded/${id}`,
    ]) {
      expect((await pages.get(from)).text).toContain(`href="${path}"`);
    }
  });

  it('needs a reason and right values: what is wrong stands at its field, what was typed stays', async () => {
    const { id, path } = await given();
    const fields = await fieldsOf(path);
    const wrong = await pages.post(path, { ...fields, 'walk2.distanceM': '285', reason: '' });
    expect(wrong.status).toBe(422);
    expect(wrong.text).toContain('href="#field-walk2_distanceM"');
    expect(wrong.text).toContain('href="#field-reason"');
    expect(wrong.text).toMatch(/name="walk2.distanceM"[^>]*value="285"/);
    const unusual = await pages.post(path, { ...fields, heightCm: '120', reason: REASON });
    expect(unusual.status).toBe(422);
    expect(unusual.text).toContain('120 is right');
    expect(unusual.text).toContain(`value="${REASON}"`);
    expect(await read(id)).toMatchObject({ version: 1 });
  });

  it('only checks where Enter was pressed in a field', async () => {
    const { id, path } = await given();
    const fields = await fieldsOf(path);
    expect((await pages.get(path)).text).toMatch(
      /<form[^>]*class="sheet"[^>]*>(?:<input type="hidden"[^>]*>)*<button [^>]*formaction="[^"]*\/check"/,
    );
    const checked = await pages.post(`${path}/check`, { ...fields, reason: REASON });
    expect(checked.status).toBe(200);
    expect(await read(id)).toMatchObject({ version: 1 });
  });

  it('of two people is stored for the first; the second sees what changed, and keeps what they typed', async () => {
    const { id, path } = await given();
    const fields = await fieldsOf(path);
    await pages.post(path, { ...fields, 'walk2.distanceM': '210', reason: REASON });
    const late = await pages.post(path, { ...fields, 'walk2.distanceM': '220', reason: 'Another sheet' });
    expect(late.status).toBe(412);
    expect(late.text).toContain('Somebody changed this while you were typing');
    expect(late.text).toMatch(/name="walk2.distanceM"[^>]*value="220"/);
    expect(late.text).toContain('name="version" value="2"');
    expect(await read(id)).toMatchObject({ version: 2 });
  });

  it('that would say what another one says is not stored: it says which, by whom and when', async () => {
    const referralId = await givenTriagedReferral(app);
    const first = await givenAssessment(app, referralId, whole);
    const id = await givenAssessment(app, referralId, { ...whole, notes: 'Wide awake' });
    const path = `/assessments/${id}/correction`;
    const answer = await pages.post(path, {
      ...(await fieldsOf(path)),
      notes: 'Tired today',
      reason: REASON,
    });
    expect(answer.status).toBe(409);
    expect(answer.text).toContain('Test lead recorded the baseline assessment of 20 April 2026');
    expect(answer.text).toContain(`/assessments/baseline/recorded/${first}"`);
    expect(answer.text).toContain('Tired today</textarea>');
    expect(answer.text).not.toContain('error-summary');
    expect(await read(id)).toMatchObject({ version: 1 });
  });

  it('has the endurance walk of a visit beside its other walks, each corrected by itself', async () => {
    const endurance = {
      test: 'endurance-shuttle-walk',
      attempt: 1,
      place: 'course',
      timeS: 240,
      speedLevel: 7,
      courseLengthM: 10,
      walkingAid: 'none',
      oxygenLPerMin: 0,
      endBreathlessness: 4,
    };
    const { id, path } = await given({
      ...whole,
      walkTests: [aShuttleWalk(180, 1), aShuttleWalk(200, 2), endurance],
    });
    const fields = await fieldsOf(path);
    expect(fields).toMatchObject({ walkTest: 'incremental-shuttle-walk', 'endurance.timeS': '240' });
    const wrong = await pages.post(path, { ...fields, 'endurance.timeS': '1300', reason: REASON });
    expect(wrong.status).toBe(422);
    expect(wrong.text).toContain('href="#field-endurance_timeS"');
    const answer = await pages.post(path, { ...(await fieldsOf(path)), 'endurance.timeS': '270' });
    expect(answer.status, answer.text).toBe(303);
    const walks = asRecords(asRecord((await read(id))['entry'])['walkTests']);
    expect(walks).toMatchObject([
      { ...endurance, timeS: 270 },
      { test: 'incremental-shuttle-walk', distanceM: 180 },
      { test: 'incremental-shuttle-walk', distanceM: 200 },
    ]);
  });

  it('is not made on the page where an answer is in use no more: nothing is lost', async () => {
    const { id, path } = await given();
    const fields = await fieldsOf(path);
    const { db } = app.record.connection;
    const { version_id } = await db
      .selectFrom('assessment')
      .select('version_id')
      .where('id', '=', id)
      .executeTakeFirstOrThrow();
    await db
      .updateTable('physical_test')
      .set({ conditions: '{"side":"both"}' })
      .where('assessment_version_id', '=', version_id)
      .where('test', '=', 'handgrip-strength')
      .execute();
    const { text, status } = await pages.get(path);
    expect(status).toBe(200);
    expect(text).toContain('cannot be corrected on this page');
    expect(text).not.toContain('name="walk1.distanceM"');
    const forced = await pages.post(path, { ...fields, reason: REASON });
    expect(forced.status).toBe(409);
    expect(await read(id)).toMatchObject({ version: 1 });
  });

  it('is for clinicians, of their own team, and of an assessment that stands', async () => {
    const { id, path } = await given();
    expect((await (await pagesAs(app, 'admin')).get(path)).status).toBe(403);
    expect((await pages.get('/assessments/01a2183c-f333-7460-94ca-962303c36fcd/correction')).status).toBe(
      404,
    );
    await app
      .as('lead')
      .post(`/api/v1/assessments/${id}/entered-in-error`, { reason: 'The twin was tested' });
    const marked = await pages.get(path);
    expect(marked.status).toBe(409);
    expect(marked.text).toContain('Entered in error');
  });
});

describe('the draft of a correction', () => {
  const typed = { 'walk2.distanceM': '210', notes: 'Half a sen' };
  const save = async (path: string, fields: Record<string, string | string[]>, who = pages) =>
    who.post(`${path}/draft`, fields);

  it('is saved while somebody types and stands on the page again, for a colleague on another device too', async () => {
    const { id, path } = await given();
    const saved = await save(path, { ...(await fieldsOf(path)), ...typed });
    expect(saved.status, saved.text).toBe(200);
    expect(saved.body).toMatchObject({
      version: 1,
      words: 'Draft saved 25 November 2026, 10:00 by Test clinician.',
      faults: [],
      next: { what: 'why it is corrected', id: 'field-reason' },
    });
    const { text } = await (await pagesAs(app, 'lead')).get(path);
    expect(text).toMatch(/name="walk2.distanceM"[^>]*value="210"/);
    expect(text).toContain('Half a sen</textarea>');
    expect(text).toContain('Draft saved 25 November 2026, 10:00 by Test clinician.');
    expect(await read(id)).toMatchObject({ version: 1 });
  });

  it('keeps a field empty that was emptied', async () => {
    const { path } = await given();
    await save(path, { ...(await fieldsOf(path)), notes: '', weightKg: '' });
    const fields = await fieldsOf(path);
    expect([fields['notes'], fields['weightKg'], fields['heightCm']]).toEqual(['', '', '160']);
  });

  it('is kept without a script by "Save and check" and by a refused recording', async () => {
    const { path } = await given();
    const checked = await pages.post(`${path}/check`, { ...(await fieldsOf(path)), ...typed });
    expect(checked.status).toBe(200);
    expect(checked.text).toContain('The draft is saved');
    await pages.post(path, { ...(await fieldsOf(path)), heightCm: '16', reason: REASON });
    const fields = await fieldsOf(path);
    expect([fields['walk2.distanceM'], fields['heightCm'], fields['reason']]).toEqual(['210', '16', REASON]);
  });

  it('ends when the correction is recorded, and when it is thrown away', async () => {
    const { id, path } = await given();
    await save(path, { ...(await fieldsOf(path)), ...typed });
    await pages.post(path, { ...(await fieldsOf(path)), reason: REASON });
    expect(await read(id)).toMatchObject({ version: 2, entry: { notes: 'Half a sen' } });
    expect((await pages.get(path)).text).toContain('Nothing is saved yet.');
    await save(path, { ...(await fieldsOf(path)), notes: 'Otherwise' });
    const discarded = await pages.submit(path, {}, `${path}/discard`);
    expect([discarded.status, discarded.headers['location']]).toEqual([303, path]);
    expect((await fieldsOf(path))['notes']).toBe('Half a sen');
    expect(await draftRow(id)).toMatchObject({ state: 'discarded', fields: '{}', version: 4 });
  });

  it('begun before somebody else corrected the assessment is told of that each time, and never applied in silence', async () => {
    const { id, path } = await given();
    const fields = await fieldsOf(path);
    await save(path, { ...fields, ...typed });
    const corrected = { ...anAssessment(app.siteId, { ...whole, weightKg: 191 }), reason: 'Weighed again' };
    const put = await app.as('lead').put(`/api/v1/assessments/${id}`, corrected, '"1"');
    expect(put.status, put.text).toBe(200);
    for (const version of [2, 3]) {
      const { text } = await pages.get(path);
      expect(text).toContain('Somebody changed this since the draft was begun');
      expect(text).toContain('Test lead, 25 November 2026, 10:00: Weighed again');
      expect(text).toMatch(/>190\u00a0kg<[\s\S]*>191\u00a0kg</);
      expect(text).toMatch(/name="walk2.distanceM"[^>]*value="210"/);
      const saved = await save(path, { ...(await fieldsOf(path)), ...typed });
      expect(saved.body).toMatchObject({ version });
      expect(saved.text).toContain('Test lead corrected this assessment meanwhile');
    }
    // The page of before it was corrected knows nothing of that.
    const late = await pages.post(path, { ...fields, ...typed, draftVersion: '3', reason: REASON });
    expect(late.status).toBe(412);
    expect(late.text).toContain('Somebody changed this while you were typing');
    expect(await read(id)).toMatchObject({ version: 2 });
    const told = await pages.post(path, {
      ...(await fieldsOf(path)),
      weightKg: '191',
      'confirm.weightKg': '191',
      reason: REASON,
    });
    expect(told.status, told.text).toBe(303);
    expect(await read(id)).toMatchObject({ version: 3, entry: { weightKg: 191, notes: 'Half a sen' } });
  });

  it('of two people is not overwritten by the second, neither by saving nor by recording', async () => {
    const { id, path } = await given();
    const fields = await fieldsOf(path);
    const lead = await pagesAs(app, 'lead');
    await save(path, { ...(await fieldsOf(path, lead)), ...typed }, lead);
    const late = await save(path, { ...fields, notes: 'Mine' });
    expect(late.status).toBe(409);
    expect(late.body).toMatchObject({ version: 1 });
    expect(late.text).toContain('Test lead');
    const recorded = await pages.post(path, { ...fields, notes: 'Mine', reason: REASON });
    expect(recorded.status).toBe(409);
    expect(recorded.text).toContain('saved this draft on another page or device');
    expect(recorded.text).toContain('Mine</textarea>');
    expect(await read(id)).toMatchObject({ version: 1 });
    expect((await fieldsOf(path))['notes']).toBe('Half a sen');
  });

  it('is told to the trail without anything that was typed', async () => {
    const { id, path } = await given();
    await save(path, { ...(await fieldsOf(path)), ...typed });
    const rows = await app.record.connection.db
      .selectFrom('audit_event')
      .select(['action', 'details'])
      .where('subject_id', '=', id)
      .orderBy('sequence')
      .execute();
    expect(rows.slice(1)).toEqual([
      { action: 'assessment-sheet-read', details: '{"timepoint":"baseline"}' },
      { action: 'draft-saved', details: '{"assessmentVersion":1,"version":1}' },
    ]);
  });
});

async function draftRow(id: string) {
  return app.record.connection.db
    .selectFrom('correction_draft')
    .selectAll()
    .where('assessment_id', '=', id)
    .executeTakeFirst();
}
