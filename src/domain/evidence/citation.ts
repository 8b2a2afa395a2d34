/**
 * How well a figure is known.
 *
 * - `retrieved`: read in the named source
 * - `retrieved-indirect`: read in another paper or page that quotes the source
 * - `value-from-memory`: the source exists and was found, the figure itself is remembered
 * - `from-memory`: neither source nor figure was read
 * - `common-practice`: a convention of the trade without a publication
 * - `derived`: follows by arithmetic from other figures
 */
export type EvidenceStatus =
  'retrieved' | 'retrieved-indirect' | 'value-from-memory' | 'from-memory' | 'common-practice' | 'derived';

/** Where a figure comes from, and how well that was checked. */
export interface Citation {
  /** Short stable id such as `holland-2014`. */
  readonly id: string;
  /** Authors, year, journal, pages; `Common practice` where there is no publication. */
  readonly text: string;
  readonly doi: string | null;
  readonly status: EvidenceStatus;
}

/** The mark that stands wherever a figure is shown whose source was not read; null where it was read. */
export function evidenceMark(status: EvidenceStatus): string | null {
  switch (status) {
    case 'retrieved':
      return null;
    case 'retrieved-indirect':
      return 'quoted in another paper';
    case 'value-from-memory':
    case 'from-memory':
      return 'from memory, check before use';
    case 'common-practice':
      return 'common practice';
    case 'derived':
      return 'derived';
  }
}
