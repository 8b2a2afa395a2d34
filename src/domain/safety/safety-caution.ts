import type { Citation } from '../evidence/citation.js';
import { evidenceMark } from '../evidence/citation.js';

/** Something about an assessment that a registered clinician must know. The product records it and decides nothing. */
export interface SafetyCaution {
  /** Stable id; with the measure it is unique within an assessment, so that an acknowledgement can name it. */
  readonly id: string;
  /** The measure it belongs to; null where it is about the person or the whole assessment. */
  readonly measureId: string | null;
  readonly text: string;
  readonly citation: Citation;
  /** How little the rule is known; null where its source was read. */
  readonly mark: string | null;
  /** Whether somebody must put a name to having seen it, which is kept in the record. */
  readonly mustBeAcknowledged: boolean;
  /** Who judges it, and acknowledges it where that is asked for. */
  readonly by: 'registered-clinician';
}

/** What a caution says; the rest follows. */
export type CautionParts = Pick<SafetyCaution, 'id' | 'measureId' | 'text' | 'citation'>;

/** A caution that stands in the record until somebody has acknowledged it by name. */
export function cautionToAcknowledge(parts: CautionParts): SafetyCaution {
  return { ...shown(parts), mustBeAcknowledged: true };
}

/** A caution that is shown and asks for nothing. */
export function cautionToShow(parts: CautionParts): SafetyCaution {
  return { ...shown(parts), mustBeAcknowledged: false };
}

function shown(parts: CautionParts): Omit<SafetyCaution, 'mustBeAcknowledged'> {
  return { ...parts, mark: evidenceMark(parts.citation.status), by: 'registered-clinician' };
}
