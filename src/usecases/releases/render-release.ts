import { writeXlsx } from '../../documents/write-xlsx.js';
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

/** Every form of a release. They are written once, on the day, and kept. */
export async function renderRelease(
  release: ProtectedRelease,
): Promise<Readonly<Partial<Record<ReleaseForm, Buffer>>>> {
  return {
    csv: Buffer.from(writeCsv(releaseRows(release))),
    xlsx: await writeXlsx(releaseDocument(release)),
    fhir: Buffer.from(releaseFhir(release)),
  };
}
