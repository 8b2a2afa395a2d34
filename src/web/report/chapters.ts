import type { Document, Link, Part, Section } from '../../documents/document-model.js';
import type { ReportPart } from '../../usecases/reports/report-request.js';
import type { AskedReport } from '../../usecases/reports/report-request.js';
import type { Addresses } from './document-view.js';
import { reportQuery } from './report-address.js';

/** Sections with a page of their own, and what each reads of other periods. All others stand on the first page. */
const CHAPTERS: Readonly<Record<string, readonly ReportPart[]>> = {
  indicators: [],
  comparisons: ['comparisons'],
  trend: ['trend'],
  breakdowns: [],
  sites: [],
  'data-quality': [],
  definitions: [],
};

/** What a page of a section reads of other periods. */
export function partsRead(sectionId: string): readonly ReportPart[] {
  return CHAPTERS[sectionId] ?? [];
}

/** The sections of the first page. */
export function onFirstPage({ sections }: Document): readonly Section[] {
  return sections.filter(({ id }) => !(id in CHAPTERS));
}

/** Where a section stands: on the first page of its report, or on its own. */
export function sectionAddress(sectionId: string, asked: AskedReport): string {
  return sectionId in CHAPTERS
    ? `/report/chapters/${sectionId}?${reportQuery(asked)}`
    : `/report?${reportQuery(asked)}#${sectionId}`;
}

/** Every section with where it stands, as seen from the first page. */
export function contentsOf(
  { sections }: Document,
  asked: AskedReport,
): readonly { readonly title: string; readonly to: string }[] {
  return sections.map(({ id, title }) => ({
    title,
    to: id in CHAPTERS ? sectionAddress(id, asked) : `#${id}`,
  }));
}

/** Where a part of a section stands: always on a page of its own. */
export function partAddress(sectionId: string, partId: string, asked: AskedReport): string {
  return `/report/chapters/${sectionId}/${encodeURIComponent(partId)}?${reportQuery(asked)}`;
}

/** The parts of a section, in their order. */
export function partsOf({ blocks }: Section): readonly Part[] {
  return blocks.flatMap((block) => (block.kind === 'part' ? [block] : []));
}

/** Where the links of a section lead. A figure opens with the query of its report; a referral is a page of its own. */
export function addressesOf(sectionId: string, asked: AskedReport): Addresses {
  return {
    ofLink: (link) => linkAddress(link, asked),
    ofPart: (partId) => partAddress(sectionId, partId, asked),
  };
}

function linkAddress(link: Link, asked: AskedReport): string {
  if (link.kind === 'referral') return `/referrals/${link.referralId}`;
  if (link.kind === 'entries-in-error')
    return `/report/entries-in-error?${reportQuery(asked)}#${encodeURIComponent(link.of)}`;
  const { of = {}, members } = link;
  const kind = members === undefined ? '' : `&kind=${members}`;
  return `/report/figures/${encodeURIComponent(link.figureId)}?${reportQuery({ ...asked, ...of })}${kind}`;
}
