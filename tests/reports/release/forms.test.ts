import { parse } from 'csv-parse/sync';
import readXlsxFile from 'read-excel-file/node';
import { describe, expect, it } from 'vitest';
import { writeXlsx } from '../../../src/documents/write-xlsx.js';
import { withChanges } from '../../../src/domain/release/changes-since.js';
import { releaseDocument } from '../../../src/reports/release/release-document.js';
import { releaseFhir } from '../../../src/reports/release/release-fhir.js';
import { releaseRows } from '../../../src/reports/release/release-rows.js';
import { writeCsv } from '../../../src/sheets/write-csv.js';
import { printedIn } from '../../support/attacker.js';
import { faultsOfFhir } from '../../support/fhir-validators.js';
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
    expect(faultsOfFhir(text)).toEqual([]);
    const reports = asRecords(bundle['entry']).map((entry) => asRecord(entry['resource']));
    for (const report of reports) {
      const table = String(report['measure']).replace('urn:tidemark:measure:', '');
      const [group, ...scores] = asRecords(report['group']);
      const counts = asRecords(group?.['population']).map((population) => population['count'] ?? null);
      const cells = printed.filter((each) => each.table === table).map(({ value }) => value);
      expect(counts.slice(0, cells.length)).toEqual(cells);
      const shares = release.tables.find(({ id }) => id === table)?.shares ?? [];
      expect(scores.map((score) => asRecord(score['measureScore'])['value'] ?? null)).toEqual(
        shares.map(({ percent }) => percent),
      );
    }
    expect(release.tables.flatMap(({ shares }) => shares).some(({ percent }) => percent !== null)).toBe(true);
  });

  it('names what it corrects, and in the rows what was printed before', () => {
    const [before, after] = [60, 90].map((received) => randomQuarter(randomFrom(7), received));
    if (before === undefined || after === undefined) throw new Error('There are two.');
    const about = { mode: 'rounded', period: { label: '2026-27-Q1', kind: 'quarter' } } as const;
    const first = releaseOf([before], { ...about, number: 1 }, []);
    const second = releaseOf([after], { ...about, number: 2, corrects: '1' }, [first.issued]);
    const correction = { ofNumber: 1, reason: 'Thirty people were entered late', changes: [] };
    const corrected = withChanges({ ...second.release, correction }, first.release);
    const rows: readonly (readonly string[])[] = parse(writeCsv(releaseRows(corrected)), { bom: true });
    const kept = rows.filter(([, kind]) => kind === 'before-correction');
    expect(kept).toContainEqual([
      '2',
      'before-correction',
      '',
      '',
      'Referrals counted: Referrals received in the period',
      '60',
      'referrals',
    ]);
    expect(kept.length).toBe(corrected.correction?.changes.length);
    const text = releaseFhir(corrected);
    expect(faultsOfFhir(text)).toEqual([]);
    expect(JSON.parse(text)).toMatchObject({
      link: [{ relation: 'predecessor-version', url: 'urn:tidemark:release:1' }],
    });
    expect(JSON.parse(releaseFhir(first.release))).not.toHaveProperty('link');
  });
});
