import { utcMidnight } from '../../domain/calendar/instant.js';
import { plainDate } from '../../domain/calendar/plain-date.js';
import type { ReleaseForm } from '../../domain/release/kept-release.js';
import type { ProtectedRelease } from '../../domain/release/protected-release.js';
import { releaseDocument } from '../../reports/release/release-document.js';
import { releaseFhir } from '../../reports/release/release-fhir.js';
import { releaseRows } from '../../reports/release/release-rows.js';
import { writeCsv } from '../../sheets/write-csv.js';

/** Media types of the forms of a release. */
export const RELEASE_MEDIA_TYPES: Readonly<Record<ReleaseForm, string>> = {
  csv: 'text/csv; charset=utf-8',
  xlsx: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
  pdf: 'application/pdf',
  fhir: 'application/fhir+json',
};

/**
 * Every form of a release. They are written once, on the day, and kept. What writes PDF and spreadsheets is large, and
 * loaded with the first of them.
 */
export async function renderRelease(
  release: ProtectedRelease,
): Promise<Readonly<Record<ReleaseForm, Buffer>>> {
  const { LEAFLET_SHEET } = await import('../../documents/sheet-of-paper.js');
  const { writePdf } = await import('../../documents/write-pdf.js');
  const { writeXlsx } = await import('../../documents/write-xlsx.js');
  const document = releaseDocument(release);
  const madeAt = utcMidnight(plainDate(release.releasedOn));
  return {
    csv: Buffer.from(writeCsv(releaseRows(release))),
    xlsx: await writeXlsx(document),
    pdf: await writePdf(document, { ...LEAFLET_SHEET, madeAt }),
    fhir: Buffer.from(releaseFhir(release)),
  };
}
