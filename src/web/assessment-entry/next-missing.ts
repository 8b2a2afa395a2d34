import { findWalkTest } from '../../domain/measures/catalogue.js';
import { QUESTIONNAIRES } from '../../domain/measures/registered.js';
import { textOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import { itemField, notDoneField, RESULT_OF_WALK, scoreField } from './field-names.js';

/** A part of the assessment that has not been typed yet, and the field with which it begins. */
export interface Missing {
  readonly what: string;
  readonly field: string;
}

/** Fields that a page leads to when they are missing next, beside items of questionnaires. */
export const NEXT_FIELDS: readonly string[] = [
  'spo2Percent',
  'walkTest',
  'walk1.distanceM',
  'walk2.distanceM',
  'sitToStandTest',
];

/** What is missing next in the order of the day; null where nothing is. Nothing of it must be typed. */
export function nextMissing(form: FormValues): Missing | null {
  const has = (...names: readonly string[]): boolean => names.some((name) => textOf(form, name) !== '');
  const isWalked = (attempt: string): boolean =>
    has(notDoneField(attempt), ...RESULT_OF_WALK.map((name) => `${attempt}.${name}`));
  const needsSecond = findWalkTest(textOf(form, 'walkTest'))?.needsPracticeWalk === true;
  const steps: readonly (readonly [isMissing: boolean, what: string, field: string])[] = [
    [!has('siteId'), 'the site', 'siteId'],
    [!has('safetyScreen'), 'the safety checklist', 'safetyScreen'],
    [!has('spo2Percent', 'heartRateBpm', 'systolicMmHg'), 'resting values', 'spo2Percent'],
    [!has('walkTest'), 'which walk test', 'walkTest'],
    [!isWalked('walk1'), 'the first walk, or why it was not done', 'walk1.distanceM'],
    [needsSecond && !isWalked('walk2'), 'the second walk, or why it was not done', 'walk2.distanceM'],
    [
      !has('sitToStand.repetitions', 'sitToStand.timeS', notDoneField('sitToStand')),
      'sit to stand, or why it was not done',
      'sitToStandTest',
    ],
  ];
  const step = steps.find(([isMissing]) => isMissing);
  if (step !== undefined) return { what: step[1], field: step[2] };
  return nextItem(form);
}

/** The first unanswered item of a questionnaire that was begun; or a questionnaire, where none was. */
function nextItem(form: FormValues): Missing | null {
  let begun = 0;
  for (const { id, shortName, items, measures } of QUESTIONNAIRES) {
    const typed = items.map((_limits, index) => textOf(form, itemField(id, index + 1)));
    const hasScores = measures.some((measure) => textOf(form, scoreField(id, measure.id)) !== '');
    const isNotDone = textOf(form, notDoneField(`q.${id}`)) !== '';
    if (hasScores || isNotDone || typed.some((text) => text !== '')) begun += 1;
    if (hasScores || isNotDone || typed.every((text) => text === '')) continue;
    const gap = typed.indexOf('');
    if (gap >= 0) return { what: `${shortName}, item ${gap + 1}`, field: itemField(id, gap + 1) };
  }
  return begun > 0 ? null : { what: 'questionnaires', field: itemField('mrc-dyspnoea', 1) };
}
