import {
  conditionField,
  ENDURANCE_TEST,
  formField,
  itemField,
  notDoneField,
  partField,
  scoreField,
  SHARED_WALK_FIELDS,
  valueField,
} from './field-names.js';
import type { ReadEntry } from './read-entry.js';

/**
 * The field of the form that stands for a JSON Pointer into the entry.
 *
 * @example /walkTests/1/distanceM -> walk2.distanceM; /questionnaires/0/items/4 -> q.copd-assessment-test.5;
 * /physicalTests/0/value -> p.handgrip-strength.value.handgrip-strength
 */
export function fieldOf(read: ReadEntry, pointer: string): string {
  const { entry, attempts, questionnaires } = read;
  const [, list = '', index = '', name = '', ...rest] = pointer.split('/');
  switch (list) {
    case 'walkTests':
      return walkField(attempts[Number(index)] ?? 'walk1', name, entry.walkTests[Number(index)]?.test ?? '');
    case 'sitToStands':
      return name === 'test' ? 'sitToStandTest' : `sitToStand.${name === '' ? 'repetitions' : name}`;
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

function walkField(attempt: string, name: string, test: string): string {
  if (name === 'test') return attempt === 'endurance' ? 'endurance.timeS' : 'walkTest';
  if (SHARED_WALK_FIELDS.some((shared) => shared === name)) return name;
  const isTimed = test === ENDURANCE_TEST;
  return `${attempt}.${name === '' || name === 'attempt' ? (isTimed ? 'timeS' : 'distanceM') : name}`;
}

/** The part of the page that shows the figures of a result. */
export function slotOf({ attempts, questionnaires, physicalTests }: ReadEntry, pointer: string): string {
  const [, list = '', index = ''] = pointer.split('/');
  if (list === 'walkTests') return attempts[Number(index)] === 'endurance' ? 'endurance' : 'walk';
  if (list === 'sitToStands') return 'sitToStand';
  if (list === 'physicalTests') return `p.${physicalTests[Number(index)]?.id ?? ''}`;
  return `q.${questionnaires[Number(index)]?.id ?? ''}`;
}
