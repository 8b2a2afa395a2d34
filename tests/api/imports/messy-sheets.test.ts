import { parse } from 'csv-parse/sync';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { expectedRows, handedIn, sheetFile, shown } from '../../support/import-sheets.js';
import type { Shown } from '../../support/import-sheets.js';
import { asRecords } from '../../support/response.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let service: TestApp;
beforeEach(async () => {
  service = await startApp();
});
afterEach(() => service.close());

const GOOD_ROWS = { rows: 'good-rows', confirmsUnusual: false };

/** Holds every row of a sheet to the verdict that was written by hand beside it. */
function expectJudgement(judged: Shown, name: string): void {
  const expected = expectedRows(name);
  const counts: Record<string, number> = {};
  for (const { row, verdict, heading, message } of expected) {
    counts[verdict] = (counts[verdict] ?? 0) + 1;
    const told = judged.rows.find(({ number }) => String(number) === row);
    if (['new', 'added', 'already'].includes(verdict)) {
      expect(told, `row ${row}`).toBeUndefined();
      continue;
    }
    expect(told, `row ${row}`).toMatchObject({ verdict });
    if (verdict === 'passed-over') expect(told).toMatchObject({ passedOver: message });
    else {
      const faults = asRecords(told?.['faults']);
      const fits = faults.some(
        (fault) => (fault['heading'] ?? '') === heading && String(fault['message']).includes(message),
      );
      expect(fits, `row ${row}: ${JSON.stringify(faults)}`).toBe(true);
    }
  }
  expect(Object.fromEntries(Object.entries(judged.counts ?? {}).filter(([, count]) => count !== 0))).toEqual(
    counts,
  );
}

describe('a messy wide sheet', () => {
  it('is judged row by row, and nothing is written', async () => {
    const before = await service.countRows();
    const judged = await handedIn(service, 'wide.csv', sheetFile('wide-as-teams-keep-it.csv'));
    expect(judged.questions).toEqual([]);
    expectJudgement(judged, 'wide-as-teams-keep-it.judgement.csv');
    // What a rule of the record says is told with what stands in the cell, as what the reading of the cell says.
    for (const [row, value] of [
      [10, '>1000'],
      [17, '99'],
      [18, '900'],
    ] as const)
      expect(judged.rows.find(({ number }) => number === row)).toMatchObject({ faults: [{ value }] });
    const after = await service.countRows();
    expect({ ...after, import: 0, audit_event: 0 }).toEqual({ ...before, import: 0, audit_event: 0 });
  });

  it('comes in with its good rows, and changes nothing when it is sent again', async () => {
    const file = sheetFile('wide-as-teams-keep-it.csv');
    const first = await handedIn(service, 'wide.csv', file);
    const done = await service.as('lead').post(`${first.path}/commit`, GOOD_ROWS);
    expect(done.status, done.text).toBe(200);
    expect(shown(done).counts).toMatchObject({ new: 3, refused: 10, unusual: 1 });
    const before = await service.countRows();
    const second = await handedIn(service, 'wide.csv', file);
    expect(second.counts).toMatchObject({ new: 0, already: 3 });
    const again = await service.as('lead').post(`${second.path}/commit`, GOOD_ROWS);
    expect(again.status).toBe(200);
    const after = await service.countRows();
    expect({ ...after, import: 0, audit_event: 0 }).toEqual({ ...before, import: 0, audit_event: 0 });
  });
});

describe('a messy long sheet', () => {
  it('adds measurements to referrals of the record', async () => {
    const wide = [
      'NHS number,Surname,Forename,DOB,Site,Received,Diagnosis',
      '9990001006,Whimbrel,Samphire,31/03/1950,Dune Hall,13/04/2026,COPD',
    ];
    const first = await handedIn(service, 'wide.csv', wide.join('\n'));
    expect(first.counts, JSON.stringify([first.questions, first.rows])).toMatchObject({ new: 1 });
    await service.as('lead').post(`${first.path}/commit`, GOOD_ROWS);
    const judged = await handedIn(service, 'long.tsv', sheetFile('long-form.csv'));
    expectJudgement(judged, 'long-form.judgement.csv');
    const done = await service.as('lead').post(`${judged.path}/commit`, GOOD_ROWS);
    expect(shown(done).counts).toMatchObject({ added: 5, refused: 3 });
    expect((await service.countRows())['assessment']).toBe(2);
  });

  it('tells a broken rule once, at its row, and gives every row of the referral back', async () => {
    const people = ['9990001006,Whimbrel,Samphire', '9990001022,Plover,Sandy'].map(
      (person) => `${person},31/03/1950,Dune Hall,13/04/2026,COPD`,
    );
    const headings = 'NHS number,Surname,Forename,DOB,Site,Received,Diagnosis';
    const { path } = await handedIn(service, 'people.csv', [headings, ...people].join('\n'));
    await service.as('lead').post(`${path}/commit`, GOOD_ROWS);
    const measured = (nhsNumber: string, results: readonly string[]): string[] =>
      results.map((result) => `${nhsNumber},13/04/2026,${result}`);
    const rows = [
      'NHS number,Received,Timepoint,Measured on,Measure,Attempt,Value',
      ...measured('9990001006', [
        ...[
          'baseline,27/04/2026,CAT,,22',
          'baseline,27/04/2026,6MWD,1,280',
          'baseline,27/04/2026,HADS-A,,99',
        ],
        'discharge,30/06/2026,CAT,,17',
      ]),
      ...measured('9990001022', ['baseline,27/04/2026,CAT,,20', 'baseline,27/04/2026,6MWD,1,300']),
      // Assessed before the referral was received: a fault of the visit, told at its first row.
      ...measured('9990001022', ['discharge,01/04/2026,CAT,,18', 'discharge,01/04/2026,MRC,,3']),
    ];
    const judged = await handedIn(service, 'long.csv', rows.join('\n'));
    expect(judged.counts).toMatchObject({ refused: 8, added: 0 });
    expect(judged.rows).toMatchObject([
      { number: 4, faults: [{ heading: 'Value', value: '99' }], heldBack: [2, 3, 5] },
      {
        ...{ number: 8, heldBack: [6, 7, 9] },
        // It is before the baseline too.
        faults: [1, 2].map(() => ({ heading: 'Measured on', value: '01/04/2026' })),
      },
    ]);
    const page = await service.as('lead').get(`${judged.path}/refused-rows.csv`);
    const given = parse<Record<string, string>>(page.text, { columns: true, bom: true });
    expect(given.map((row) => row['Row in the file'])).toEqual(['2', '3', '4', '5', '6', '7', '8', '9']);
    const [four, eight] = ['See row 4 of the same referral.', 'See row 8 of the same referral.'];
    const wrong = [/^Value: /, /^Measured on: /].map((start): unknown => expect.stringMatching(start));
    expect(given.map((row) => row['What to mend'])).toEqual([
      ...[four, four, wrong[0], four],
      ...[eight, eight, wrong[1], eight],
    ]);
  });
});
