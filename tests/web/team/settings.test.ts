import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DEFAULT_TEAM_SETTINGS } from '../../../src/domain/settings/team-settings.js';
import type { TeamSettings } from '../../../src/domain/settings/team-settings.js';
import { formOf, readSettingsForm } from '../../../src/web/team/settings-form.js';
import { tablesInPage } from '../../support/read-tables.js';
import { pagesAs } from '../../support/page-client.js';
import type { PageClient } from '../../support/page-client.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

const REASON = 'Agreed at the meeting of the team';

let service: TestApp;
let lead: PageClient;
beforeEach(async () => {
  service = await startApp();
  lead = await pagesAs(service, 'lead');
});
afterEach(() => service.close());

const fieldsOf = (settings: TeamSettings) =>
  Object.fromEntries([...formOf(settings)].map(([name, [value = '']]) => [name, value]));
const store = (fields: Record<string, string>) =>
  lead.submit('/team/settings', { ...fieldsOf(DEFAULT_TEAM_SETTINGS), reason: REASON, ...fields });
const present = async () =>
  (await service.as('lead').get('/api/v1/settings')).body as { version: number } & TeamSettings;

const rowsOf = (html: string) => tablesInPage(html).flatMap(({ rows }) => rows);

describe('a form of the settings', () => {
  it('reads back as the settings that it was filled with', () => {
    const settings: TeamSettings = {
      ...DEFAULT_TEAM_SETTINGS,
      completionReading: 'assessment',
      thresholds: { 'cat-total': 'cat-kon-2014' },
      thresholdsByDiagnosis: { 'incremental-shuttle-walk-distance/copd': 'iswd-singh-2008' },
      leadSecondFactor: 'required',
    };
    const form = new Map([...formOf(settings), ['reason', [REASON]]]);
    expect(readSettingsForm(form)).toEqual({ kind: 'settings', settings, reason: REASON });
  });

  it('shows every choice that holds', async () => {
    const { text } = await lead.get('/team/settings');
    expect(text).toContain('the defaults hold');
    expect(text).toMatch(/name="plannedSessions"[^>]*value="12"/);
    expect(text).toMatch(/value="sessions-and-assessment" checked/);
    expect(text).toMatch(/<option value="probst-2012" selected/);
    expect(text).toMatch(/name="target-started-within-90-days"[^>]*value="85"/);
  });
});

describe('storing', () => {
  it('makes a new version that the history tells of', async () => {
    const stored = await store({ plannedSessions: '16', leadSecondFactor: 'optional' });
    expect([stored.status, stored.headers['location']]).toEqual([303, '/team/settings']);
    expect(await present()).toMatchObject({ version: 1, plannedSessions: 16, plannedWeeks: 6 });
    const { text } = await lead.get('/team/settings/history');
    expect(text).toContain('Version 1');
    expect(text).toContain(REASON);
    expect(text).toContain('Supervised sessions planned');
  });

  it.each([
    ['plannedSessions', 'twelve', 'Give a whole number.'],
    ['plannedSessions', '0', 'Give a whole number from 1 to 60. You entered 0.'],
    ['plannedWeeks', '53', 'Give a whole number from 1 to 52. You entered 53.'],
    ['completionReading', 'by-feeling', 'Choose one of these.'],
    ['target-started-within-90-days', '101', 'A target is 0 to 100 %. You entered 101.'],
    ['target-started-within-90-days', 'most', 'Give a number from 0 to 100'],
    ['target-source-started-within-90-days', '', 'Where the target comes from: This must be given.'],
    ['equation-incremental-shuttle-walk-distance', 'enright-sherrill-1998', 'no equation of this id'],
    ['diagnosis-0', 'copd', 'Choose the threshold, or leave both empty.'],
    ['reason', '', 'Give the reason'],
  ])(
    'is refused where %s is "%s"; the error stands at the field and nothing is stored',
    async (name, value, message) => {
      const refused = await store({ [name]: value });
      expect(refused.status).toBe(422);
      expect(refused.text).toContain(message);
      expect(refused.text).toMatch(/role="alert"/);
      if (name !== 'reason') expect(refused.text).toContain(`value="${REASON}"`);
      expect((await present()).version).toBe(0);
    },
  );

  it('that is based on an older version is refused and shows what changed meanwhile', async () => {
    await store({ plannedSessions: '16' });
    const stale = await store({ plannedWeeks: '8', version: '0' });
    expect(stale.status).toBe(412);
    expect(stale.text).toContain('Somebody changed this while you were typing');
    expect(rowsOf(stale.text)).toContainEqual(['Supervised sessions planned', '12 sessions', '16 sessions']);
    expect(stale.text).toMatch(/name="plannedWeeks"[^>]*value="8"/);
    expect(await present()).toMatchObject({ version: 1, plannedWeeks: 6 });
    // What holds now was shown: sent again from there it is stored.
    expect(stale.text).toContain('name="version" value="1"');
  });
});

describe('the history of the settings', () => {
  const history = async () => rowsOf((await lead.get('/team/settings/history')).text);

  it('says each change in the words and units of the page', async () => {
    await store({
      completionReading: 'session-count',
      plannedWeeks: '1',
      retentionYears: '10',
      'threshold-incremental-shuttle-walk-distance': 'iswd-singh-2008',
      'equation-six-minute-walk-distance': '',
      'diagnosis-0': 'copd',
      'diagnosis-threshold-0': 'cat-kon-2014',
      'target-completed-of-assessed': '65.5',
      'disclosure-roundingBase': '10',
    });
    const rows = await history();
    expect(rows).toEqual(
      expect.arrayContaining([
        [
          'The headline of completion',
          'At least 75 % attended and discharge assessment done',
          'At least 8 sessions attended',
        ],
        ['Weeks planned', '6 weeks', '1 week'],
        ['How long a record is kept', '8 years', '10 years'],
        ['Rounded summaries round to multiples of', '5 people', '10 people'],
        ['Target: Completed, of those assessed', '70 %', '65.5 %'],
        [
          'Minimal important difference: Incremental shuttle walk distance',
          expect.stringMatching(/^Usual: /),
          expect.stringMatching(/^47\.5 m: .*Singh/),
        ],
        [
          'Prediction equation: Six-minute walk distance',
          expect.stringMatching(/Enright Sherrill 1998: Healthy adults, USA/),
          'None: no percentage predicted',
        ],
        [
          'Minimal important difference for COPD: COPD Assessment Test total',
          'As for every other diagnosis',
          expect.stringMatching(/^2 points: .*Kon/),
        ],
      ]),
    );
  });

  it('shows no code of a field or of a value, the defaults included', async () => {
    await store({ restingLimits: 'ers-ats-2014', desaturationDefinition: 'fall-4' });
    const cells = (await history()).flat();
    expect(cells.length).toBeGreaterThan(30);
    const codes: readonly string[] = Object.keys(DEFAULT_TEAM_SETTINGS);
    expect(cells.filter((cell) => codes.includes(cell) || /^[a-z]+(-[a-z0-9]+)+$/.test(cell))).toEqual([]);
  });
});
