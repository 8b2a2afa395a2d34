import { describe, expect, it } from 'vitest';
import { buildQuarterlyReport } from '../../../src/reports/quarterly/build-quarterly-report.js';
import { renderQuarterlyReportText } from '../../../src/reports/quarterly/render-text.js';
import { FIRST_SEVENTEEN } from '../../support/worked-quarter.js';

const text = renderQuarterlyReportText(buildQuarterlyReport(FIRST_SEVENTEEN));
const lines = text.split('\n');

/** The line that begins with a text, its runs of spaces made one. */
function lineOf(start: string): string {
  const found = lines.find((line) => line.trimStart().startsWith(start)) ?? 'no such line';
  return found.trim().replaceAll(/ +/g, ' ');
}

describe('the report as text', () => {
  it('is at most 100 columns wide, without spaces at the ends of lines', () => {
    expect(lines.filter((line) => line.length > 100)).toEqual([]);
    expect(lines.filter((line) => line !== line.trimEnd())).toEqual([]);
  });

  it('says what it is about, its data cut, and that it is provisional', () => {
    expect(lines.slice(0, 3)).toEqual([
      'Marram Coast: 2026-27-Q1 (April to June 2026)',
      '1 April 2026 to 30 June 2026. Data cut 20 September 2026. Settings version 1.',
      'PROVISIONAL: referral cohort: 4 of 14 still open; start cohort: 2 of 9 still open.',
    ]);
  });

  it('has counts beside every percentage of a table', () => {
    const withPercentage = lines.filter((line) => /\d\.\d % {2}/.test(line));
    expect(withPercentage.length).toBeGreaterThan(50);
    expect(withPercentage.filter((line) => !/\d+ of \d+ +\d+\.\d %/.test(line))).toEqual([]);
  });

  it('prints interval, open cases, bounds, rule and exclusions', () => {
    // 10 of 11: Wilson by hand 62.3 to 98.4; bounds 10 of 13 and 12 of 13.
    expect(lineOf('Started, of those referred')).toBe(
      'Started, of those referred 10 of 11 90.9 % 62.3 to 98.4 2 open, 76.9 to 92.3',
    );
    expect(lineOf('rule uptake@1')).toBe(
      'rule uptake@1; left out: 1 registered in error, 1 died before the start',
    );
  });

  it('prints pairs with both ends and the change', () => {
    expect(lineOf('Like for like (headline)')).toBe(
      'Like for like (headline) 2 175.0 (35.4) 230.0 (28.3) 55.0 (-8.5 to 118.5)',
    );
    expect(lineOf('All pairs')).toBe('All pairs 3 216.7 (76.4) 266.7 (66.6) 50.0 (25.2 to 74.8)');
  });

  it('marks thresholds whose source was not read', () => {
    expect(text).toContain('[quoted in another paper]');
    expect(text).toContain('[common practice]');
  });

  it('names those still waiting beside every median', () => {
    const medians = lines.filter((line) => line.includes(': median '));
    const waiting = lines.filter((line) => line.includes('still waiting: '));
    expect([medians.length, waiting.length]).toEqual([4, 4]);
  });
});
