import { londonTime } from '../../domain/calendar/london-time.js';
import { findMeasure } from '../../domain/measures/catalogue.js';
import type { Acknowledgement, StandingCaution } from '../../domain/safety/standing-cautions.js';

/** A caution with the measure it belongs to, which many of them begin with. */
export function cautionWords({ text, measureId }: Pick<StandingCaution, 'text' | 'measureId'>): string {
  if (measureId === null) return text;
  const name = findMeasure(measureId)?.shortName ?? measureId;
  return text.startsWith(name) ? text : `${name}: ${text}`;
}

/** Where a caution comes from, and how well that is known. */
export function sourceWords({ citation, mark }: Pick<StandingCaution, 'citation' | 'mark'>): string {
  return mark === null ? citation.text : `${citation.text}; ${mark}`;
}

/** @example 'Acknowledged by Rosa Knot, 4 May 2026, 10:12. What was done: rang the practice' */
export function acknowledgementWords({
  acknowledgedBy,
  acknowledgedAt,
  actionTaken,
}: Acknowledgement): string {
  return `Acknowledged by ${acknowledgedBy}, ${londonTime(acknowledgedAt)}. What was done: ${actionTaken}`;
}

/** What tells a caution from the others of its assessment. */
export function cautionKey({ id, measureId }: Pick<StandingCaution, 'id' | 'measureId'>): string {
  return measureId === null ? id : `${id}.${measureId}`;
}
