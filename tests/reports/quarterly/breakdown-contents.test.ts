// By whom and at which steps the report breaks its figures down, and that nothing of it is an order of merit.
import { describe, expect, it } from 'vitest';
import { buildQuarterlyReport } from '../../../src/reports/quarterly/build-quarterly-report.js';
import { columnsToRead } from '../../../src/documents/columns-to-read.js';
import { breakdownsSection } from '../../../src/reports/quarterly/document/breakdowns.js';
import type { QuarterlyReport } from '../../../src/reports/quarterly/report-model.js';
import { WORKED_INPUT } from '../../support/worked-quarter.js';

const report = buildQuarterlyReport(WORKED_INPUT);

describe('breakdowns', () => {
  it('are of each step from referral to outcome: the measure with most pairs for each thing that must be measured', () => {
    expect(report.breakdowns.map(({ figureId }) => figureId)).toEqual([
      'funnel.referred',
      'assessed-of-referred',
      'uptake',
      'started-within-90-days',
      'completed-of-started',
      'discharge-assessment-done',
      // Like-for-like pairs: shuttle walks 2, six-minute walks 2, of which the first in the catalogue; MRC 5; CAT 5.
      expect.stringMatching(
        /^mid-reached\.(incremental-shuttle-walk|six-minute-walk|endurance|two-minute)/,
      ) as string,
      'mid-reached.mrc-dyspnoea',
      'mid-reached.cat-total',
    ]);
  });

  it('are by sex, age, ethnic group, deprivation, diagnosis, pathway, source, mode, interpreter, home oxygen and site', () => {
    for (const { dimensions } of report.breakdowns) {
      expect(dimensions.map(({ dimension }) => dimension)).toEqual([
        'sex',
        'age',
        'ethnic-group',
        'deprivation',
        'diagnosis',
        'pathway',
        'source',
        'mode',
        'interpreter',
        'home-oxygen',
        'site',
      ]);
    }
  });

  it('say at the first step which share of all referred each group is', () => {
    const section = breakdownsSection(report);
    const [part] = section.blocks.filter((block) => block.kind === 'part');
    expect(part?.title).toBe('Referred: 17');
    const tables = (part?.blocks ?? []).flatMap((block) => (block.kind === 'table' ? [block.table] : []));
    for (const table of tables) {
      const heads = columnsToRead(table).map((index) => table.columns[index]?.head);
      expect(heads.slice(-2)).toEqual(['% of all 17', '95 % interval of this share']);
    }
    const cells = tables.flatMap((table) =>
      table.rows.map((row) => columnsToRead(table).map((index) => row[index]?.text)),
    );
    // 3 of 17 are 17.65 %; the limits of Wilson, worked apart from the program: 6.19 and 41.03 %.
    expect(cells).toContainEqual(expect.arrayContaining(['3', '17.6', '6.2 to 41.0']) as unknown[]);
    const ofSexes = report.breakdowns[0]?.dimensions[0]?.rows.map(({ figure }) => figure.denominator) ?? [];
    expect(ofSexes.reduce((sum, n) => sum + n, 0)).toBe(17);
  });

  it('have an interval and a difference to the rest wherever both have somebody', () => {
    const rows = report.breakdowns.flatMap(({ whole, dimensions }) =>
      dimensions.flatMap((each) => each.rows.map((row) => ({ whole, row }))),
    );
    expect(rows.length).toBeGreaterThan(100);
    for (const { whole, row } of rows) {
      const { numerator, denominator, interval } = row.figure;
      expect(interval !== null).toBe(denominator > 0);
      const isCompared =
        denominator > 0 && whole.denominator > denominator && whole.numerator < whole.denominator;
      expect([row.figure.id, row.differenceToRest !== null]).toEqual([row.figure.id, isCompared]);
      if (row.differenceToRest === null) continue;
      const rest = (whole.numerator - numerator) / (whole.denominator - denominator);
      expect(row.differenceToRest.points).toBeCloseTo(100 * (numerator / denominator - rest), 9);
    }
  });

  it('keep the order of their groups, whoever does better', () => {
    // The same quarter with the two pathways changed over: other figures, the same order.
    const changedOver = buildQuarterlyReport({
      ...WORKED_INPUT,
      facts: WORKED_INPUT.facts.map((each) => ({
        ...each,
        pathway: each.pathway === 'stable' ? ('after-exacerbation' as const) : ('stable' as const),
      })),
    });
    const ofPathway = ({ breakdowns }: QuarterlyReport): readonly (readonly [string, number])[] =>
      breakdowns
        .filter(({ figureId }) => figureId === 'uptake')
        .flatMap(({ dimensions }) => dimensions.filter(({ dimension }) => dimension === 'pathway'))
        .flatMap(({ rows }) => rows.map((row) => [row.group, row.figure.numerator] as const));
    expect(ofPathway(report)).toEqual([
      ['stable', 8],
      ['after-exacerbation', 2],
    ]);
    expect(ofPathway(changedOver)).toEqual([
      ['stable', 2],
      ['after-exacerbation', 8],
    ]);
  });
});
