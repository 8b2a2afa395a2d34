import { describe, expect, it } from 'vitest';
import { DEFAULT_TEAM_SETTINGS } from '../../../src/domain/settings/team-settings.js';
import type { TeamSettings } from '../../../src/domain/settings/team-settings.js';
import { buildQuarterlyReport } from '../../../src/reports/quarterly/build-quarterly-report.js';
import type { QuarterlyReport } from '../../../src/reports/quarterly/report-model.js';
import { indicatorFigure, outcomesOf, said } from '../../support/reported.js';
import { FIRST_SEVENTEEN } from '../../support/worked-quarter.js';

function reportWith(settings: Partial<TeamSettings>): QuarterlyReport {
  return buildQuarterlyReport({
    ...FIRST_SEVENTEEN,
    settings: { ...DEFAULT_TEAM_SETTINGS, ...settings },
    settingsVersion: 7,
  });
}

const walk = 'incremental-shuttle-walk-distance';

describe("the team's settings in the report", () => {
  it('choose the headline of completion and nothing else of its table', () => {
    const [plain, chosen] = [reportWith({}), reportWith({ completionReading: 'session-count' })];
    expect(said(indicatorFigure(chosen, 'completed-of-started'))).toBe('5 of 8, 1 open');
    expect(chosen.completion.map((row) => row.cells)).toEqual(plain.completion.map((row) => row.cells));
    expect([chosen.definitions.completionReading, chosen.settingsVersion]).toEqual(['session-count', 7]);
  });

  it('choose a threshold, which is printed: by 40 m, R04 reaches the MID among all pairs', () => {
    const report = reportWith({ thresholds: { [walk]: 'iswd-evans-2019' } });
    expect(said(outcomesOf(report, walk).allPairs.midReached)).toBe('3 of 3');
    expect(report.definitions.thresholds.filter((each) => each.measureId === walk)).toMatchObject([
      { thresholdId: 'iswd-evans-2019', value: 35, chosenBy: 'team', pairs: 3 },
    ]);
  });

  it('choose a threshold for one diagnosis, so that two judge one measure', () => {
    const report = reportWith({
      thresholdsByDiagnosis: { [`${walk}/copd`]: 'iswd-daynes-2025' },
    });
    expect(outcomesOf(report, walk).thresholds.map(({ thresholdId, pairs }) => [thresholdId, pairs])).toEqual(
      [
        ['iswd-daynes-2025', 2],
        ['iswd-singh-2008', 1],
      ],
    );
  });

  it('choose an equation, or none', () => {
    expect(reportWith({ equations: { [walk]: 'itaki-2018' } }).percentPredicted[0]?.equationId).toBe(
      'itaki-2018',
    );
    expect(reportWith({ equations: {} }).percentPredicted).toEqual([]);
    // An equation for another measure predicts nothing here.
    expect(reportWith({ equations: { [walk]: 'troosters-1999' } }).percentPredicted).toEqual([]);
  });

  it('set targets, also for the MID; equality reaches one', () => {
    const source = 'Agreed with the commissioner';
    const report = reportWith({
      targets: {
        'mid-reached.mrc-dyspnoea': { percent: 100, source },
        'exercise-plan-given': { percent: 50, source },
      },
    });
    const rows = report.indicators.filter((row) => row.target !== null);
    expect(rows.map(({ figure, isReached }) => [figure.id, said(figure), isReached])).toEqual([
      ['exercise-plan-given', '1 of 2', true],
      ['mid-reached.mrc-dyspnoea', '2 of 3', false],
    ]);
  });
});

describe('the definitions printed with the report', () => {
  const { rules, thresholds, equations } = reportWith({}).definitions;

  it('name each rule once, with its version and source', () => {
    const ids = rules.map((rule) => rule.ruleId);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids).toEqual(expect.arrayContaining(['completion/sessions-and-assessment@1', 'uptake@1']));
  });

  it('say what a threshold amounts to, and mark one whose source was not read', () => {
    const printed = thresholds.map(({ shortName, amountsTo, source }) => [shortName, amountsTo, source.mark]);
    expect(printed).toEqual([
      ['ISWD', '47.5 m means at least 50 m, because it moves in steps of 10 m.', null],
      ['CAT', 'At least 2 points.', 'quoted in another paper'],
      ['MRC', 'At least 1 grade.', 'common practice'],
    ]);
  });

  it('name the equations that were used, with the ages studied', () => {
    expect(equations.map(({ equationId, agesStudiedYears }) => [equationId, agesStudiedYears])).toEqual([
      ['probst-2012', { min: 18, max: 83 }],
    ]);
  });
});
