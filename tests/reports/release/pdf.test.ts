import { beforeAll, describe, expect, it } from 'vitest';
import { releaseDocument } from '../../../src/reports/release/release-document.js';
import { countText } from '../../../src/reports/release/release-words.js';
import { renderRelease } from '../../../src/usecases/releases/render-release.js';
import { randomFrom, randomQuarter } from '../../support/random-service.js';
import { readPdf } from '../../support/read-pdf.js';
import type { ReadPdf } from '../../support/read-pdf.js';
import { releaseOf } from '../../support/rendered-release.js';

const { release } = releaseOf(
  [randomQuarter(randomFrom(2), 110)],
  { number: 3, mode: 'rounded', period: { label: '2026-27-Q1', kind: 'quarter' } },
  [],
  { 'started-within-90-days': { percent: 85, source: 'the contract of the invented board' } },
);

describe('a release as a PDF', () => {
  let file: Buffer;
  let read: ReadPdf;
  let text: string;
  beforeAll(async () => {
    ({ pdf: file } = await renderRelease(release));
    read = await readPdf(file);
    text = read.pages.join(' ').replaceAll(/\s+/g, ' ');
  });

  it('is tagged: headings, tables with heads, and drawings with their numbers in words', () => {
    for (const tag of ['Document', 'H1', 'H2', 'H3', 'P', 'Table', 'TR', 'TH', 'TD', 'Figure']) {
      expect(read.tags, tag).toContain(tag);
    }
    expect(read.alternatives).toHaveLength(read.tags.filter((tag) => tag === 'Figure').length);
    expect(read.alternatives.filter((alternative) => !/\d/.test(alternative))).toEqual([]);
    expect(read.language).toBe('en-GB');
    expect(read.bookmarks).toEqual(releaseDocument(release).sections.map(({ title }) => title));
  });

  it('has its number, the release and the data cut on every page', () => {
    const count = read.pages.length;
    read.pages.forEach((page, index) => {
      expect(page).toContain(`Page ${index + 1} of ${count}`);
      expect(page).toContain('Release 3. Data cut 1 June 2027');
    });
  });

  it('has every printed count and mark as text beside its words, and every paragraph', () => {
    const flat = text.replaceAll(' ', '');
    const oneWay = release.tables.filter(({ kind }) => kind === 'one-way');
    const marks = oneWay.flatMap(({ cells }) => cells).filter(({ count }) => count.kind === 'hidden');
    expect(marks.length).toBeGreaterThan(0);
    for (const { words, count } of [...release.totals, ...oneWay.flatMap(({ cells }) => cells)]) {
      expect(flat).toContain(`${words}${countText(count)}`.replaceAll(' ', ''));
    }
    for (const { explanation } of release.tables) expect(flat).toContain(explanation.replaceAll(' ', ''));
    for (const { ruleId } of release.definitions) expect(flat).toContain(ruleId);
  });

  it('is the same bytes whenever it is written, and says of itself its title and the day only', async () => {
    expect((await renderRelease(release)).pdf.equals(file)).toBe(true);
    const { Title, Creator, Producer, CreationDate, ModDate, Author, Subject, Keywords, Custom } =
      read.properties;
    expect({ Title, Creator, Producer, CreationDate }).toEqual({
      Title: releaseDocument(release).title,
      Creator: 'Tidemark',
      Producer: 'Tidemark',
      CreationDate: 'D:20270601000000Z',
    });
    expect([ModDate, Author, Subject, Keywords, Custom].filter((each) => each !== undefined)).toEqual([]);
    const words = read.metadata
      .replaceAll(/<[^>]*>/g, ' ')
      .trim()
      .split(/\s+/)
      .join(' ');
    expect(words).toBe(`2027-06-01T00:00:00Z Tidemark ${releaseDocument(release).title} Tidemark`);
  });
});
