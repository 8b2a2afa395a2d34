import { typedDate } from '../forms/date-entry.js';
import type { FormValues } from '../forms/form-values.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { DraftFields } from '../../domain/draft/draft.js';
import type { EntrySheet } from '../../usecases/assessments/entry-sheet.js';
import { VERSION_FIELD } from '../components/version-field.js';
import { CSRF_FIELD } from '../csrf.js';
import { FORM_KEY_FIELD } from '../forms/form-key-field.js';
import {
  ANOTHER_WALK,
  BEGUN_FROM,
  conditionField,
  DRAFT_VERSION,
  ENDURANCE_TEST,
  formField,
} from './field-names.js';

/**
 * What stands in the fields when a sheet is opened: the draft, or else the day, the site, and what must be the same as at
 * baseline to be compared with it. Nothing that was measured is filled in.
 */
export function firstValues(sheet: EntrySheet, today: PlainDate): FormValues {
  const { draft, referral, assessments, timepoint } = sheet;
  if (draft.state === 'open') return new Map(Object.entries(draft.fields));
  const { day, month, year } = typedDate(today);
  const values = new Map<string, readonly string[]>([
    ['assessedOn-day', [day]],
    ['assessedOn-month', [month]],
    ['assessedOn-year', [year]],
    ['siteId', [referral.siteId]],
  ]);
  const baseline =
    timepoint === 'baseline' ? undefined : assessments.find(({ entry }) => entry.timepoint === 'baseline');
  if (baseline === undefined) return values;
  const { walkTests } = baseline.entry;
  const walk = walkTests.find(({ test }) => test !== ENDURANCE_TEST) ?? walkTests[0];
  const [stand] = baseline.entry.sitToStands;
  if (walk !== undefined) {
    values.set('walkTest', [walk.test]).set('place', [walk.place]);
    if (walk.courseLengthM !== null) values.set('courseLengthM', [String(walk.courseLengthM)]);
  }
  if (stand !== undefined) values.set('sitToStandTest', [stand.test]);
  for (const { questionnaire, form } of baseline.entry.questionnaires) {
    if (form !== null) values.set(formField(questionnaire), [form]);
  }
  for (const { test, conditions } of baseline.entry.physicalTests) {
    for (const [id, value] of Object.entries(conditions)) {
      // What the person walks with is looked at anew, as at the walk tests.
      if (id !== 'walking-aid') values.set(conditionField(test, id), [value]);
    }
  }
  return values;
}

/** The fields of a form that a draft keeps: all that was typed, and nothing of the page itself. */
export function fieldsToKeep(form: FormValues): DraftFields {
  const ofPage = [CSRF_FIELD, FORM_KEY_FIELD, ANOTHER_WALK, DRAFT_VERSION, BEGUN_FROM, VERSION_FIELD];
  const typed = [...form].filter(
    ([name, texts]) => !ofPage.includes(name) && texts.some((text) => text !== ''),
  );
  return Object.fromEntries(typed.map(([name, texts]) => [name, [...texts]]));
}
