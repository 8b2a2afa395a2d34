// Published figures beside the team's own, each as its source prints it: context, and never a target.
import { describe, expect, it } from 'vitest';
import { BENCHMARKS } from '../../../src/domain/benchmarks/benchmarks.js';
import { MEAN_BENCHMARKS } from '../../../src/domain/benchmarks/mean-benchmarks.js';
import { findFigureRule } from '../../../src/domain/indicators/figure-rules.js';
import { findMeasure } from '../../../src/domain/measures/catalogue.js';
import { buildQuarterlyReport } from '../../../src/reports/quarterly/build-quarterly-report.js';
import { csvTable } from '../../../src/reports/quarterly/csv/csv-table.js';
import { quarterlyDocument } from '../../../src/reports/quarterly/document/build-document.js';
import { figuresIn, outcomesOf } from '../../support/reported.js';
import { tablesIn } from '../../support/counts-in-document.js';
import { WORKED_INPUT } from '../../support/worked-quarter.js';

const report = buildQuarterlyReport(WORKED_INPUT);

describe('published percentages', () => {
  // Counts as the sources print them; where only the other share is printed, 100 less it.
  it.each([
    ['uptake-leicester-2023', 'uptake', 313, (100 * 175) / 313],
    ['started-within-90-days-national-2016', 'started-within-90-days', 7413, 100 - 37],
    ['completed-of-started-stone-2021', 'completed-of-started', 7060, (100 * 4635) / 7060],
    ['completed-of-started-leicester-2023', 'completed-of-started', 175, (100 * 114) / 175],
    ['completed-by-both-boutou-2014', 'completion.of-started.sessions-and-assessment', 787, 57.1],
    ['completed-of-assessed-national-2016', 'completed-of-assessed', 7413, 100 - 40],
    ['completed-of-referred-jones-2014', 'completed-of-referred', 90, (100 * 44) / 90],
    ['exercise-plan-national-2016', 'exercise-plan-given', 7413, 100 - 26],
    // Bondarenko 2024, 49 trials: people given rehabilitation, not those given usual care.
    ['mid-reached-trials-six-minute-walk-distance', 'mid-reached.six-minute-walk-distance', null, 47],
    ['mid-reached-trials-crq-dyspnoea', 'mid-reached.crq-dyspnoea', null, 43],
    ['mid-reached-trials-crq-fatigue', 'mid-reached.crq-fatigue', null, 48],
    ['mid-reached-trials-crq-emotional-function', 'mid-reached.crq-emotional-function', null, 37],
  ])('%s', (id, figureId, n, percent) => {
    const row = report.benchmarks.find((each) => each.id === id);
    expect([row?.own.id, row?.published.n]).toEqual([figureId, n]);
    const places = id.includes('boutou') ? 1 : 0;
    expect(row?.published.percent.toFixed(places)).toBe(percent.toFixed(places));
    expect(row?.published.source.text).not.toBe('');
    expect(row?.caution).not.toBe('');
  });

  it('are all that are shown, and none is a target', () => {
    expect(report.benchmarks).toHaveLength(12);
    expect(BENCHMARKS).toHaveLength(12);
    for (const { figureId } of BENCHMARKS) expect(findFigureRule(figureId), figureId).toBeDefined();
    const targets = report.indicators.flatMap(({ target }) => target?.source ?? []);
    for (const { published } of report.benchmarks) expect(targets).not.toContain(published.source.text);
  });
});

describe('published mean changes', () => {
  it.each([
    // Singh 2008: 65.9 m (58.9 to 72.9), n = 372. Zatloukal 2019: ISWT 61.8 m (56.0 to 67.5), ESWT 342.0 s (312.4 to
    // 371.6), half the SD of the change 173.7 s, n = 531.
    ['mean-change-singh-2008', 'incremental-shuttle-walk-distance', 372, 65.9, null, [58.9, 72.9]],
    ['mean-change-iswt-zatloukal-2019', 'incremental-shuttle-walk-distance', 531, 61.8, null, [56, 67.5]],
    ['mean-change-eswt-zatloukal-2019', 'endurance-shuttle-walk-time', 531, 342, 2 * 173.7, [312.4, 371.6]],
    // Smid 2017, n = 419: mean (SD).
    ['mean-change-cat-total-smid-2017', 'cat-total', 419, -3, 6.8, null],
    ['mean-change-sgrq-total-smid-2017', 'sgrq-total', 419, -9.1, 14, null],
    ['mean-change-hads-anxiety-smid-2017', 'hads-anxiety', 419, -1.7, 3.7, null],
    ['mean-change-hads-depression-smid-2017', 'hads-depression', 419, -2.1, 3.7, null],
  ] as const)('%s', (id, measureId, n, mean, sd, interval) => {
    const row = report.benchmarkMeans.find((each) => each.id === id);
    expect(row?.measureId).toBe(measureId);
    expect(row?.published).toMatchObject({
      n,
      mean,
      sd,
      interval: interval === null ? null : { low: interval[0], high: interval[1] },
    });
    // The team's own is the headline: like-for-like pairs, and it opens.
    const { likeForLike, likeForLikePairsOverStarters, unit } = outcomesOf(report, measureId);
    expect(row).toMatchObject({ own: likeForLike.change, unit, figureId: likeForLikePairsOverStarters.id });
    expect(figuresIn(report).map((figure) => figure.id)).toContain(row?.figureId);
  });

  it('stand beside measures that somebody has, and no other', () => {
    expect(report.benchmarkMeans).toHaveLength(MEAN_BENCHMARKS.length);
    for (const { measureId } of MEAN_BENCHMARKS) expect(findMeasure(measureId), measureId).toBeDefined();
    expect(buildQuarterlyReport({ ...WORKED_INPUT, facts: [] }).benchmarkMeans).toEqual([]);
  });

  it('stand in the document and in the tidy table with n, interval and source', () => {
    const table = tablesIn(quarterlyDocument(report)).find(({ caption }) =>
      caption.startsWith('The team’s mean change'),
    );
    const singh = table?.rows.find((cells) => cells.some(({ text }) => text.startsWith('Singh SJ')));
    const words = singh?.map(({ text }) => text);
    // R03 +50 and R15 +60.
    expect(words).toEqual(expect.arrayContaining(['ISWD', '2', '55.0', '65.9', '58.9 to 72.9', '372']));
    const [head, ...rows] = csvTable(report);
    const row = rows.find((cells) => cells.includes('mean-change-singh-2008'));
    const said = new Map((head ?? []).map((name, index) => [name, row?.[index]]));
    const columns = ['section', 'statistic', 'n', 'value', 'unit', 'low', 'high'];
    expect(columns.map((column) => said.get(column))).toEqual([
      'benchmarks',
      'published mean change',
      372,
      65.9,
      'm',
      58.9,
      72.9,
    ]);
    expect(said.get('source')).toContain('Singh');
  });
});
