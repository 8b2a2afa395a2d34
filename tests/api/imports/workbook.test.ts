import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { handedIn, handIn, shown } from '../../support/import-sheets.js';
import { asRecord, asRecords, itemsOf } from '../../support/response.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';
import { workbook } from '../../support/workbook.js';
import type { BookCell } from '../../support/workbook.js';

let service: TestApp;
beforeEach(async () => {
  service = await startApp();
});
afterEach(() => service.close());

const GROUPS: readonly BookCell[] = [
  ...Array<null>(7).fill(null),
  'Baseline',
  null,
  null,
  'Discharge',
  null,
  null,
];
const HEADINGS: readonly BookCell[] = [
  ...['NHS number', 'Surname', 'Forename', 'D.O.B.', 'Site', 'Received', 'Diagnosis'],
  ...['Assessment date', '6MWT (m)', 'CAT', 'Assessment date', '6MWT (m)', 'CAT'],
];
// Days of a spreadsheet: 18353 is 31 March 1950, 46125 is 13 April 2026, 46139 is 27 April, 46203 is 30 June.
const WHIMBREL: readonly BookCell[] = [
  ...[9990001006, 'Whimbrel', 'Samphire', { day: 18353 }, 'Dune Hall', { day: 46125 }, 'COPD'],
  ...[{ formula: 'F4+14', value: 46139 }, { formula: 'MAX(270,280)', value: 280 }, 22],
  ...[{ day: 46203 }, '325 m', { formula: 'J4-4', value: 18 }],
];
const LOST: readonly BookCell[] = [
  ...[{ error: '#N/A' }, 'Plover', 'Sandy', { day: 18353 }, 'Dune Hall', { day: 46125 }, 'COPD'],
];
const WRONG: readonly BookCell[] = [
  ...['9990001022', 'Turnstone', 'Shingle', { day: 18353 }, 'Dune Hall', 'spring', 'COPD'],
];
const TOTAL: readonly BookCell[] = ['Total', { formula: 'COUNTA(B4:B6)', value: 3 }];

describe('a workbook', () => {
  it('is read with titles, merged groups above the headings, dates, values of formulas, blank lines and a total', async () => {
    const book = workbook({
      rows: [['Marram Coast PR team'], GROUPS, HEADINGS, WHIMBREL, [], WRONG, LOST, [], TOTAL],
      merged: ['A1:G1', 'H2:J2', 'K2:M2'],
    });
    const judged = await handedIn(service, 'register.xlsx', book);
    expect(judged.questions).toEqual([]);
    expect(judged.counts).toMatchObject({ new: 2, refused: 1, 'passed-over': 1 });
    expect(judged.rows).toMatchObject([
      { number: 6, verdict: 'refused', faults: [{ heading: 'Received', value: 'spring' }] },
      { number: 9, verdict: 'passed-over', passedOver: 'total' },
    ]);
    const response = await service
      .as('lead')
      .post(`${judged.path}/commit`, { rows: 'good-rows', confirmsUnusual: false });
    expect(shown(response).counts).toMatchObject({ new: 2 });
    const referrals = itemsOf(await service.as('lead').get('/api/v1/referrals'));
    expect(referrals.map(({ receivedOn }) => receivedOn)).toEqual(['2026-04-13', '2026-04-13']);
    const assessments = await Promise.all(
      referrals.map(async ({ id }) =>
        itemsOf(await service.as('lead').get(`/api/v1/referrals/${String(id)}/assessments`)),
      ),
    );
    const told = assessments.flat().map((assessment) => {
      const entry = asRecord(assessment['entry']);
      return { on: entry['assessedOn'], metres: asRecords(entry['walkTests'])[0]?.['distanceM'] };
    });
    expect(told).toEqual([
      { on: '2026-04-27', metres: 280 },
      { on: '2026-06-30', metres: 325 },
    ]);
  });

  it.each([
    ['the last cell of the sheet', 'XFD1048576'],
    ['a cell far below the table', 'A1048576'],
  ])('that reaches to %s is refused in words, and nothing is written', async (_name, cell) => {
    const before = await service.countRows();
    const row = `<row r="1048576"><c r="${cell}" t="inlineStr"><is><t>x</t></is></c></row>`;
    const response = await handIn(service, 'far.xlsx', workbook({ rows: [HEADINGS], moreRows: row }));
    expect(response.status).toBe(422);
    expect(response.text).toContain('Something stands far outside the table');
    expect(await service.countRows()).toEqual(before);
  });

  it('with hundreds of thousands of blank rows is refused in words', async () => {
    const blank = Array.from({ length: 200_001 }, (_, index) => `<row r="${index + 2}"/>`).join('');
    const response = await handIn(service, 'blank.xlsx', workbook({ rows: [HEADINGS], moreRows: blank }));
    expect(response.status).toBe(422);
    expect(response.text).toContain('Delete the blank rows below the table');
  });
});
