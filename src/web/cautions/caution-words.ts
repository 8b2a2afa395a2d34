import { londonTime } from '../../domain/calendar/london-time.js';
import { findMeasure } from '../../domain/measures/catalogue.js';
import { WALK_TESTS } from '../../domain/measures/registered.js';
import type { Acknowledgement, StandingCaution } from '../../domain/safety/standing-cautions.js';

/** A caution with the measure it belongs to; many of them begin with it, or with the walk that it is of. */
export function cautionWords({ text, measureId }: Pick<StandingCaution, 'text' | 'measureId'>): string {
  if (measureId === null) return text;
  const name = findMeasure(measureId)?.shortName ?? measureId;
  const test = WALK_TESTS.find(({ measure }) => measure.id === measureId)?.shortName ?? name;
  return text.startsWith(name) || text.startsWith(test) ? text : `${name}: ${text}`;
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
