// Where the sheets of a PDF end: no heading stands alone at the foot of one, whatever comes before it.
import { describe, expect, it } from 'vitest';
import { columnWidths } from '../../src/documents/column-widths.js';
import type { Block, Document, Table } from '../../src/documents/document-model.js';
import { newPaper, REPORT_SHEET } from '../../src/documents/sheet-of-paper.js';
import { writePdf } from '../../src/documents/write-pdf.js';
import { dotPlot } from '../../src/plots/dot-plot.js';
import { readPdf } from '../support/read-pdf.js';

function tableOf(caption: string, rowCount: number, numberCount = 1): Table {
  const numbers = Array.from({ length: numberCount });
  return {
    caption,
    columns: [{ head: 'Row', kind: 'text' }, ...numbers.map(() => ({ head: 'n', kind: 'number' as const }))],
    rows: Array.from({ length: rowCount }, (_, index) => [
      { kind: 'text', text: `${caption} row ${index + 1}` },
      ...numbers.map(() => ({ kind: 'number' as const, text: String(index), value: index, places: 0 })),
    ]),
  };
}

function documentOf(fillingRows: number, blocks: readonly Block[]): Document {
  const filling: Block = { kind: 'table', table: tableOf('Filling', fillingRows) };
  return {
    title: 'Report',
    subtitle: [],
    footer: '',
    sections: [
      { id: 'first', title: 'First', sheetName: 'First', blocks: [filling] },
      { id: 'second', title: 'Second section', sheetName: 'Second', blocks },
    ],
  };
}

const PLOT = dotPlot({
  id: 'plot',
  title: 'Drawn',
  rows: Array.from({ length: 8 }, (_, index) => ({
    label: `Site ${index}`,
    words: '50 %',
    value: 50,
    interval: null,
  })),
  lines: [],
  domain: [0, 100],
  axis: '%',
});

const BLOCKS: readonly (readonly [string, string, readonly Block[]])[] = [
  ['a short table', 'Short row 8', [{ kind: 'table', table: tableOf('Short', 8) }]],
  ['some rows of a long table', 'Long row 3', [{ kind: 'table', table: tableOf('Long', 60) }]],
  [
    'a sentence and a drawing that is too wide for its table',
    'Drawn below row 1',
    [
      { kind: 'paragraph', text: 'What is drawn.' },
      { kind: 'plot', title: 'Drawn', plot: PLOT, table: tableOf('Drawn below', 9, 8) },
    ],
  ],
];

describe('a heading on paper', () => {
  it.each(BLOCKS)('stands on the sheet of %s, wherever it comes', async (_name, last, blocks) => {
    for (const fillingRows of [4, 12, 16, 20, 24]) {
      const { pages } = await readPdf(await writePdf(documentOf(fillingRows, blocks)));
      const page = pages.find((text) => text.includes('Second section')) ?? '';
      expect(page, `${fillingRows} rows before it`).toContain(last);
    }
  });
});

describe('a table that goes on over the page', () => {
  it('leaves three rows for its last sheet, however many it has', async () => {
    const sheets: number[] = [];
    for (let rowCount = 26; rowCount <= 36; rowCount += 1) {
      const { pages } = await readPdf(await writePdf(documentOf(rowCount, [])));
      const ofTable = pages.filter((text) => text.includes('Filling row'));
      sheets.push(ofTable.length);
      expect(ofTable.at(-1), `${rowCount} rows`).toContain(`Filling row ${rowCount - 2} `);
    }
    expect(new Set(sheets)).toEqual(new Set([1, 2]));
  });
});

describe('the head of a group', () => {
  it('stands with the first of its rows, where they are the last three of the table too', async () => {
    for (let rowCount = 16; rowCount <= 24; rowCount += 1) {
      const groups = [
        { title: 'Opening', rowCount: rowCount - 3 },
        { title: 'Closing', rowCount: 3 },
      ];
      const table = { ...tableOf('Filling', rowCount), groups };
      const { pages } = await readPdf(await writePdf(documentOf(1, [{ kind: 'table', table }])));
      const page = pages.find((text) => /Closing(?!,)/.test(text));
      expect(page, `${rowCount} rows`).toContain(`Filling row ${rowCount - 2} `);
    }
  });
});

describe('the width of a column', () => {
  it('is enough for an interval on one line, where texts beside it want much more than there is', () => {
    const paper = newPaper('Report', REPORT_SHEET);
    const long = 'Royal Infirmary of an invented town, pulmonary rehabilitation '.repeat(6);
    const lines = [
      ['Figure', '95 % interval', 'Source', 'Left out', 'Rule', 'Caution', 'Who', 'Place', 'Note', 'Mark'],
      [long, '65.7 to 82.5', ...Array<string>(8).fill(long)],
    ];
    const isNumber = [false, true, ...Array<boolean>(8).fill(false)];
    const widths = columnWidths(paper, lines, { sizePt: 8, padPt: 2 }, isNumber);
    paper.doc.font('regular').fontSize(8);
    expect(widths[1]).toBeGreaterThan(paper.doc.widthOfString('65.7 to 82.5') + 4);
    expect(widths.reduce((sum, width) => sum + width, 0)).toBeLessThanOrEqual(paper.width + 0.01);
  });
});
