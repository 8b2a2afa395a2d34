import { MEASURES } from '../measures/catalogue.js';
import { tightKey, wordKey } from './words.js';
import { TIMEPOINT_WORDS } from './code-words.js';
import { codes, column, DATE, number } from './column.js';
import type { Column } from './column.js';

/** The columns of the long form, where each row holds one measurement. */
export const LONG_COLUMNS: readonly Column[] = [
  column(
    'long.timepoint',
    'Timepoint of the measurement',
    codes(TIMEPOINT_WORDS),
    'timepoint',
    'assessmenttype',
    'stage',
  ),
  column(
    'long.assessedOn',
    'Measured on',
    DATE,
    'assessedon',
    'assessmentdate',
    'measuredon',
    'testdate',
    'date',
  ),
  column(
    'long.measure',
    'What was measured',
    codes(measureWords()),
    'measure',
    'test',
    'tool',
    'outcomemeasure',
  ),
  column('long.value', 'Value measured', { type: 'text', longest: 60 }, 'value', 'result', 'score'),
  column('long.attempt', 'Attempt (1 or 2)', number(''), 'attempt', 'attemptno'),
  column('long.form', 'Form of the questionnaire', { type: 'text', longest: 60 }, 'form', 'version'),
];

function measureWords(): Readonly<Record<string, readonly string[]>> {
  return Object.fromEntries(
    MEASURES.map((measure) => [
      measure.id,
      [wordKey(measure.shortName), wordKey(measure.name), tightKey(measure.shortName)],
    ]),
  );
}
