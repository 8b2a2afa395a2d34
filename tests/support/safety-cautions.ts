import type { AssessmentEntry, CheckedAssessment } from '../../src/domain/assessment/assessment.js';
import { decimal } from '../../src/domain/exact/fraction.js';
import { cautionsOfAssessment } from '../../src/domain/safety/assessment-cautions.js';
import type { SafetyCaution } from '../../src/domain/safety/safety-caution.js';
import { DEFAULT_TEAM_SETTINGS } from '../../src/domain/settings/team-settings.js';
import type { TeamSettings } from '../../src/domain/settings/team-settings.js';
import { anEntry } from './assessment-entries.js';

/** The cautions of an entry with its questionnaire scores, as `questionnaire/measure`; the settings of a new team. */
export function cautionsFor(
  changes: Partial<AssessmentEntry>,
  scores: Readonly<Record<string, number>> = {},
  settings: Partial<TeamSettings> = {},
): readonly SafetyCaution[] {
  const checked: CheckedAssessment = {
    entry: anEntry(changes),
    scores: Object.entries(scores).map(([key, value]) => {
      const [questionnaire = '', measure = ''] = key.split('/');
      return { questionnaire, measure, value: decimal(value), basis: 'typed' };
    }),
    physicalResults: [],
  };
  return cautionsOfAssessment(checked, { ...DEFAULT_TEAM_SETTINGS, ...settings });
}

/** Each caution in one line: its id, its measure where it has one, and `!` where it must be acknowledged. */
export function inShort(cautions: readonly SafetyCaution[]): readonly string[] {
  return cautions.map(({ id, measureId, mustBeAcknowledged }) =>
    [id, ...(measureId === null ? [] : [measureId]), ...(mustBeAcknowledged ? ['!'] : [])].join(' '),
  );
}

/** The text of the one caution with this id. */
export function textOf(cautions: readonly SafetyCaution[], id: string): string {
  const [caution, ...others] = cautions.filter((each) => each.id === id);
  if (caution === undefined || others.length > 0) throw new Error(`Not exactly one caution ${id}`);
  return caution.text;
}
