import { beforeAll, describe, expect, it } from 'vitest';
import { columnsToRead } from '../../../src/documents/columns-to-read.js';
import { writePdf } from '../../../src/documents/write-pdf.js';
import type { Figure } from '../../../src/domain/indicators/figure.js';
import { buildQuarterlyReport } from '../../../src/reports/quarterly/build-quarterly-report.js';
import { quarterlyDocument } from '../../../src/reports/quarterly/document/build-document.js';
import { readPdf } from '../../support/read-pdf.js';
import type { ReadPdf } from '../../support/read-pdf.js';
import { tablesIn } from '../../support/counts-in-document.js';
import { figuresIn } from '../../support/reported.js';
import { wholeInput } from '../../support/whole-report.js';
import { WORKED_INPUT } from '../../support/worked-quarter.js';

/** Without the charts of a trend, which take long to draw; their tables are written as all others are. */
const REPORT = buildQuarterlyReport({ ...wholeInput(WORKED_INPUT), trendOver: null });

describe('the report as a PDF', () => {
  let read: ReadPdf;
  let text: string;
  beforeAll(async () => {
    read = await readPdf(await writePdf(quarterlyDocument(REPORT)));
    text = read.pages.join(' ').replaceAll(/\s+/g, ' ');
  });

  it('is tagged: headings, tables with heads, and drawings with their numbers in words', () => {
    for (const tag of ['Document', 'H1', 'H2', 'H3', 'P', 'Table', 'TR', 'TH', 'TD', 'Figure']) {
      expect(read.tags, tag).toContain(tag);
    }
    const figures = read.tags.filter((tag) => tag === 'Figure').length;
    expect(figures).toBeGreaterThan(10);
    expect(read.alternatives).toHaveLength(figures);
    expect(read.alternatives.filter((alternative) => !/\d/.test(alternative))).toEqual([]);
    expect(read.language).toBe('en-GB');
  });

  it('can be found one’s way in, by bookmarks of its sections', () => {
    expect(read.bookmarks).toEqual(quarterlyDocument(REPORT).sections.map(({ title }) => title));
  });

  it('has completion under the name of each reading, said once for its six rows, and again where they go on', () => {
    for (const { title, ruleId, isHeadline } of REPORT.completion) {
      const head = `${title}${isHeadline ? ' (headline)' : ''} (rule ${ruleId})`;
      const once = text.replaceAll(`${head}, continued`, '').split(head);
      expect(once, head).toHaveLength(2);
    }
    expect(text.split('of those assessed (referral cohort), without deaths')).toHaveLength(5);
  });

  it('has its number and the data cut on every page', () => {
    const count = read.pages.length;
    read.pages.forEach((page, index) => {
      expect(page).toContain(`Page ${index + 1} of ${count}`);
      expect(page).toContain('Data cut 20 September 2026');
    });
  });

  it('has the table of a spread on the sheet of its drawing', () => {
    const drawn = REPORT.outcomes.filter(({ likeForLike }) => likeForLike.pairs >= 5);
    expect(drawn.length).toBeGreaterThan(0);
    for (const { shortName, likeForLike } of drawn) {
      const title = `${shortName}: how ${likeForLike.pairs} like-for-like changes spread`;
      const sheet = read.pages
        .map((page) => page.replaceAll(/\s+/g, ' '))
        .find((page) => page.includes(title));
      expect(sheet, shortName).toContain(`${shortName}: pairs by change`);
    }
  });

  it('draws the groups of a figure within their table, and says so once at its head', () => {
    const drawn = REPORT.breakdowns.filter(({ whole }) => whole.numerator < whole.denominator);
    expect(drawn.length).toBeGreaterThan(3);
    for (const { title, whole } of drawn) {
      const words = read.alternatives.filter((alternative) => alternative.startsWith(`${title}, by `));
      expect(words.length, title).toBeGreaterThan(0);
      const { numerator, denominator } = whole;
      for (const each of words) {
        expect(each).toContain(`Marked: all ${((100 * numerator) / denominator).toFixed(1)} %.`);
      }
    }
    expect(text).toMatch(/0 to 100 %; line: all [\d.]+ % n of %/);
  });

  it('has the numbers of every figure of the report as text', () => {
    const { funnel, completion, indicators, reasons, breakdowns, sites, dataQuality } = REPORT;
    const figures = figuresIn([funnel, completion, indicators, reasons, breakdowns, sites, dataQuality]);
    expect(figures.length).toBeGreaterThan(200);
    const missing = figures.filter((figure) => figure.denominator > 0 && !text.includes(numbersOf(figure)));
    expect(missing.map(({ id }) => id)).toEqual([]);
  });

  it('has every row of every table, cell by cell as it is read', () => {
    const flat = text.replaceAll(' ', '');
    const rows = tablesIn(quarterlyDocument(REPORT)).flatMap((table) => {
      const shown = columnsToRead(table);
      return table.rows.map((cells) => shown.map((index) => cells[index]?.text ?? '').join(''));
    });
    expect(rows.length).toBeGreaterThan(500);
    expect(rows.filter((row) => !flat.includes(row.replaceAll(/\s+/g, '')))).toEqual([]);
  });

  it('has the sentences of the narrative and every rule of the definitions', () => {
    const flat = text.replaceAll(' ', '');
    for (const sentence of REPORT.narrative) expect(flat).toContain(sentence.text.replaceAll(' ', ''));
    for (const { ruleId } of REPORT.definitions.rules) expect(flat).toContain(ruleId);
  });

  it('never prints what a machine would say of nothing', () => {
    expect(text).not.toMatch(/NaN|Infinity|undefined|null|\[object/);
  });
});

/** A figure as its row is read, rounded here a second time: numerator, denominator, percentage and both limits. */
function numbersOf({ numerator, denominator, interval }: Figure): string {
  const tenths = Number((2000n * BigInt(numerator) + BigInt(denominator)) / (2n * BigInt(denominator)));
  const limits = interval === null ? 'none' : `${interval.low.toFixed(1)} to ${interval.high.toFixed(1)}`;
  return `${numerator} ${denominator} ${(tenths / 10).toFixed(1)} ${limits}`;
}
