import { expect } from 'vitest';
import type { Known } from '../../src/domain/attack/system.js';
import type { ReleaseMode } from '../../src/domain/release/policy.js';
import type { ProtectedRelease } from '../../src/domain/release/protected-release.js';
import { writePdf } from '../../src/documents/write-pdf.js';
import { writeXlsx } from '../../src/documents/write-xlsx.js';
import { releaseDocument } from '../../src/reports/release/release-document.js';
import { releaseRows } from '../../src/reports/release/release-rows.js';
import { writeCsv } from '../../src/sheets/write-csv.js';
import { DocumentView } from '../../src/web/report/document-view.js';
import { knownFrom, printedIn } from './attacker.js';
import type { Printed, Reading } from './attacker.js';
import { printedInTables } from './printed-in-tables.js';
import { tablesInPdf } from './read-pdf-tables.js';
import { tablesInPage, tablesInSheets } from './read-tables.js';

/** The forms in which somebody may read a release. */
export const READ_FORMS = ['csv', 'page', 'xlsx', 'pdf'] as const;
export type ReadForm = (typeof READ_FORMS)[number];

/** Writes a release in one form, reads the bytes back, and gives the counts that stand in them. */
async function printedInForm(form: ReadForm, release: ProtectedRelease): Promise<readonly Printed[]> {
  const document = releaseDocument(release);
  switch (form) {
    case 'csv':
      return printedIn(writeCsv(releaseRows(release)));
    case 'page':
      return printedInTables(tablesInPage(await DocumentView({ document, addressOf: () => '#in-short' })));
    case 'xlsx':
      return printedInTables(await tablesInSheets(await writeXlsx(document)));
    case 'pdf':
      return printedInTables(await tablesInPdf(await writePdf(document)));
  }
}

/**
 * What a reader of the rows knows, when a reader of each of the other forms comes to the very same system: what is attacked
 * then is attacked from all of them.
 */
export async function readingFrom(
  forms: readonly ReadForm[],
  name: string,
  mode: ReleaseMode,
  release: ProtectedRelease,
): Promise<Reading> {
  const reading: Reading = { name, mode, printed: await printedInForm('csv', release) };
  for (const form of forms.filter((each) => each !== 'csv')) {
    const other: Reading = { name, mode, printed: await printedInForm(form, release) };
    expect(inOrder(knownFrom(other)), form).toEqual(inOrder(knownFrom(reading)));
  }
  return reading;
}

/** What is known as texts, in an order that does not hang on the form. */
export function inOrder(known: readonly Known[]): readonly string[] {
  return known
    .map(
      ({ sum, low, high }) =>
        `${low} to ${high}: ${[...sum]
          .map((each) => each.join(' x '))
          .sort()
          .join(' + ')}`,
    )
    .sort();
}
