import { Fhir } from 'fhir';
import readXlsxFile from 'read-excel-file/node';
import { describe, expect, it } from 'vitest';
import { writeXlsx } from '../../../src/documents/write-xlsx.js';
import { releaseDocument } from '../../../src/reports/release/release-document.js';
import { releaseFhir } from '../../../src/reports/release/release-fhir.js';
import { releaseRows } from '../../../src/reports/release/release-rows.js';
import { writeCsv } from '../../../src/sheets/write-csv.js';
import { printedIn } from '../../support/attacker.js';
import { randomFrom, randomQuarter } from '../../support/random-service.js';
import { releaseOf } from '../../support/rendered-release.js';
import { asRecord, asRecords } from '../../support/response.js';

const quarters = [1, 2, 3, 4].map((seed) => randomQuarter(randomFrom(seed), 50));
const { release } = releaseOf(
  quarters,
  { number: 1, mode: 'exact', period: { label: '2026-27', kind: 'year' } },
  [],
);
const printed = printedIn(writeCsv(releaseRows(release)));

describe('every form of a release', () => {
  it('has something hidden and something shown', () => {
    expect(printed.filter(({ value }) => value === null).length).toBeGreaterThan(3);
    expect(printed.filter(({ value }) => value !== null).length).toBeGreaterThan(30);
  });

  it('says the same: the spreadsheet', async () => {
    const sheets = await readXlsxFile(await writeXlsx(releaseDocument(release)));
    const rows = sheets.flatMap(({ data }) => data);
    for (const { kind, table, id, value } of printed) {
      const isTwoWay = id.includes('|');
      const found = rows.find((row) =>
        kind === 'total' ? row.length === 3 && row[2] === id : !isTwoWay && row[2] === table && row[3] === id,
      );
      if (!isTwoWay) expect(found?.[1], `${table} ${id}`).toBe(value ?? '*');
    }
  });

  it('says the same: the bundle of measure reports, which is valid, with masked counts for hidden ones', () => {
    const text = releaseFhir(release);
    const bundle = asRecord(JSON.parse(text));
    expect(
      new Fhir()
        .validate(JSON.parse(text) as object)
        .messages.filter(({ severity }) => String(severity) === 'error'),
    ).toEqual([]);
    const reports = asRecords(bundle['entry']).map((entry) => asRecord(entry['resource']));
    for (const report of reports) {
      const table = String(report['measure']).replace('urn:tidemark:measure:', '');
      const [group] = asRecords(report['group']);
      const counts = asRecords(group?.['population']).map((population) => population['count'] ?? null);
      const cells = printed.filter((each) => each.table === table).map(({ value }) => value);
      expect(counts.slice(0, cells.length)).toEqual(cells);
    }
  });
});
