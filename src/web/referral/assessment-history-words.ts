import { britishDate } from '../../domain/calendar/british-date.js';
import { parsePlainDate } from '../../domain/calendar/plain-date.js';
import { findMeasure } from '../../domain/measures/catalogue.js';
import { shownValue } from '../../domain/measures/shown-value.js';
import { SAFETY_CHECKLIST } from '../../domain/safety/registered.js';
import { formWords } from '../assessment-entry/words.js';
import type { HistoryWords } from '../components/history-list.js';
import { valueWords } from '../components/value-words.js';
import { assessmentField } from './assessment-field-words.js';
import { plain } from './measure-words.js';
import { UNIT_SPACE } from '../../domain/text/unit-space.js';

/** What a part of an assessment is called by already, and what the line above the table tells: who marked it, and when. */
const UNTOLD = /\.(?:test|attempt|questionnaire|markedAt|markedBy)$/;

const NO_NAMES: ReadonlyMap<string, string> = new Map();

/**
 * How the history of an assessment is read: every test by its name, numbers with their units, codes in words.
 *
 * @param siteNames names of the sites of the team by id; left out where they are not at hand
 */
export function assessmentHistoryWords(siteNames: ReadonlyMap<string, string> = NO_NAMES): HistoryWords {
  return {
    isTold: (field) => !UNTOLD.test(field),
    field: (field) => assessmentField(field).label,
    value: (field, value) => {
      if (Array.isArray(value)) return listWords(field, value);
      if (typeof value === 'number') return numberWords(field, value);
      return typeof value === 'string' ? textWords(field, value, siteNames) : valueWords(value);
    },
  };
}

/**
 * A number with its unit, a score in the places of its measure.
 *
 * @example numberWords('scores.cat-total', 21.333333) -> '21.3'
 * @example numberWords('heightCm', 160) -> '160 cm'
 */
function numberWords(field: string, value: number): string {
  const measure = findMeasure(field.replace(/^scores\./, ''));
  if (measure !== undefined) return shownValue(value, measure.unit);
  const { unit } = assessmentField(field);
  return unit === null ? plain(value) : `${plain(value)}${UNIT_SPACE}${unit}`;
}

function textWords(field: string, value: string, siteNames: ReadonlyMap<string, string>): string {
  if (field === 'siteId') return siteNames.get(value) ?? value;
  if (field.startsWith('physicalTests.')) {
    if (field.endsWith('.measure')) return findMeasure(value)?.name ?? value;
    if (field.includes('.conditions.')) return value.replaceAll('-', ' ');
  }
  if (field.startsWith('questionnaires.') && field.endsWith('.form')) return formWords(value);
  const date = parsePlainDate(value);
  return date === null ? (assessmentField(field).codes?.[value] ?? value) : britishDate(date);
}

/** @example listWords('questionnaires.copd-assessment-test.items', [3, null, 2]) -> '3, none, 2' */
function listWords(field: string, values: readonly unknown[]): string {
  if (values.length === 0) return 'none';
  if (field === 'confirmed') return String(values.length);
  if (field === 'safetyFindings') return values.map((id) => FINDINGS.get(id) ?? valueWords(id)).join('; ');
  return values.map((value) => (value === null ? 'none' : valueWords(value))).join(', ');
}

const FINDINGS: ReadonlyMap<unknown, string> = new Map<unknown, string>(
  SAFETY_CHECKLIST.flatMap(({ items }) => items.map(({ id, text }) => [id, text] as const)),
);
