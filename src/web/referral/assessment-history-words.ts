import { britishDate } from '../../domain/calendar/british-date.js';
import { parsePlainDate } from '../../domain/calendar/plain-date.js';
import { findMeasure } from '../../domain/measures/catalogue.js';
import { shownValue } from '../../domain/measures/shown-value.js';
import type { HistoryWords } from '../components/history-list.js';
import { fieldWords, valueWords } from '../components/value-words.js';
import { plain } from './measure-words.js';

/** What a part of an assessment is called by already. */
const SAID_BY_THE_NAME = /\.(?:test|attempt|questionnaire)$/;

/**
 * How the history of an assessment is read.
 *
 * @param siteNames names of the sites of the team by id
 */
export function assessmentHistoryWords(siteNames: ReadonlyMap<string, string>): HistoryWords {
  return {
    isTold: (field) => !SAID_BY_THE_NAME.test(field),
    field: (field) => (field === 'siteId' ? 'Site' : fieldWords(field)),
    value: (field, value) => {
      if (Array.isArray(value)) return listWords(value);
      if (typeof value === 'number') return numberWords(field, value);
      if (typeof value !== 'string') return valueWords(value);
      if (field === 'siteId') return siteNames.get(value) ?? value;
      const date = parsePlainDate(value);
      return date === null ? value : britishDate(date);
    },
  };
}

/** A score in the places of its measure. @example numberWords('scores.cat-total', 21.333333) -> '21.3' */
function numberWords(field: string, value: number): string {
  const measure = findMeasure(field.replace(/^scores\./, ''));
  return measure === undefined ? plain(value) : shownValue(value, measure.unit);
}

/** @example listWords([3, null, 2]) -> '3, none, 2' */
function listWords(values: readonly unknown[]): string {
  return values.length === 0
    ? 'none'
    : values.map((value) => (value === null ? 'none' : valueWords(value))).join(', ');
}
