import {
  conditionField,
  ENDURANCE_TEST,
  formField,
  itemField,
  notDoneField,
  partField,
  scoreField,
  SHARED_WALK_FIELDS,
  standTestField,
  valueField,
} from './field-names.js';
import type { AttemptName } from './field-names.js';
import type { ReadEntry } from './read-entry.js';
import { isFurther, walkConditionField } from './walk-conditions.js';

/**
 * The field of the form that stands for a JSON Pointer into the entry.
 *
 * @example /walkTests/1/distanceM -> walk2.distanceM; /questionnaires/0/items/4 -> q.copd-assessment-test.5;
 * /physicalTests/0/value -> p.handgrip-strength.value.handgrip-strength
 */
export function fieldOf(read: ReadEntry, pointer: string): string {
  const { entry, stands, questionnaires } = read;
  const [, list = '', index = '', name = '', ...rest] = pointer.split('/');
  switch (list) {
    case 'walkTests':
      return walkField(read, Number(index), name);
    case 'sitToStands': {
      const stand = stands[Number(index)] ?? 'sitToStand';
      return name === 'test' ? standTestField(stand) : `${stand}.${name === '' ? 'repetitions' : name}`;
    }
    case 'questionnaires': {
      const questionnaire = questionnaires[Number(index)];
      if (questionnaire === undefined) return '';
      const { id, items, measures } = questionnaire;
      const scoreAt = entry.questionnaires[Number(index)]?.typedScores[Number(rest[0])]?.measure;
      if (name === 'form') return formField(id);
      if (name === 'notDoneReason') return notDoneField(`q.${id}`);
      if (name === 'typedScores') return scoreField(id, scoreAt ?? measures[0]?.id ?? '');
      if (items.length === 0) return scoreField(id, measures[0]?.id ?? '');
      return itemField(id, name === 'items' && rest[0] !== undefined ? Number(rest[0]) + 1 : 1);
    }
    case 'physicalTests':
      return physicalField(read, Number(index), name, rest[0]);
    case 'resting':
    case 'spirometry':
      return index;
    default:
      return list;
  }
}

function physicalField(
  { entry, physicalTests }: ReadEntry,
  index: number,
  name: string,
  part: string | undefined,
): string {
  const test = physicalTests[index];
  if (test === undefined) return '';
  const { id, parts, measures } = test;
  const value = valueField(id, entry.physicalTests[index]?.measure ?? measures[0]?.id ?? '');
  if (name === 'notDoneReason') return notDoneField(`p.${id}`);
  if (name === 'conditions') return conditionField(id, part ?? '');
  if (name === 'value' || name === 'measure' || parts[0] === undefined) return value;
  return partField(id, part ?? parts[0].id);
}

function walkField({ form, attempts, entry }: ReadEntry, index: number, name: string): string {
  const attempt = attempts[index] ?? 'walk1';
  if (name === 'test' && isFurther(attempt)) return `${attempt}.test`;
  if (name === 'test') return attempt === 'endurance' ? 'endurance.timeS' : 'walkTest';
  const condition = SHARED_WALK_FIELDS.find((shared) => shared === name);
  if (condition !== undefined) return walkConditionField(form, attempt, condition);
  const isTimed = entry.walkTests[index]?.test === ENDURANCE_TEST;
  return `${attempt}.${name === '' || name === 'attempt' ? (isTimed ? 'timeS' : 'distanceM') : name}`;
}

/** The part of the page that shows the figures of a result. */
export function slotOf(
  { attempts, stands, questionnaires, physicalTests }: ReadEntry,
  pointer: string,
): string {
  const [, list = '', index = ''] = pointer.split('/');
  if (list === 'walkTests') return slotOfWalk(attempts[Number(index)] ?? 'walk1');
  if (list === 'sitToStands') return stands[Number(index)] ?? 'sitToStand';
  if (list === 'physicalTests') return `p.${physicalTests[Number(index)]?.id ?? ''}`;
  return `q.${questionnaires[Number(index)]?.id ?? ''}`;
}

/** The better of two walks stands below the second; every other walk has a place of its own. */
function slotOfWalk(attempt: AttemptName): string {
  return attempt === 'walk1' || attempt === 'walk2' ? 'walk' : attempt;
}
