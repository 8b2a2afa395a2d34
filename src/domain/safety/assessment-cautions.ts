import type { CheckedAssessment } from '../assessment/assessment.js';
import { resultsOf } from '../assessment/results.js';
import type { TeamSettings } from '../settings/team-settings.js';
import { doneWalks } from './done-walks.js';
import { findingCautions } from './finding-cautions.js';
import { homeCautions } from './home-cautions.js';
import { questionnaireCautions } from './questionnaire-cautions.js';
import { restingCautions } from './resting-cautions.js';
import type { SafetyCaution } from './safety-caution.js';
import { walkCautions } from './walk-cautions.js';

/**
 * Everything about an assessment that a registered clinician must know, and what of it must be acknowledged by name.
 *
 * What is not recorded raises nothing, except the safety screen itself where a walk was done. The rest between two walks
 * is not recorded with them and is not judged.
 *
 * @param checked an assessment that passed every rule, or a stored one
 * @param settings the team's resting limits and its meaning of desaturation
 * @returns cautions in this order: findings, resting values, walks, tests at home, questionnaires; no two have the same id
 *   and measure
 * @source The citation of each caution.
 * @example resting systolic pressure of 185 mmHg, default settings -> resting-systolic-above-180, to be acknowledged
 */
export function cautionsOfAssessment(
  checked: CheckedAssessment,
  settings: Pick<TeamSettings, 'restingLimits' | 'desaturationDefinition'>,
): readonly SafetyCaution[] {
  const { entry } = checked;
  const walks = doneWalks(entry.walkTests);
  const results = resultsOf(checked);
  return [
    ...findingCautions(entry, walks),
    ...restingCautions(entry.resting, walks, settings.restingLimits),
    ...walks.flatMap((walk) => walkCautions(walk, results, settings.desaturationDefinition)),
    ...homeCautions(walks, results),
    ...questionnaireCautions(checked),
  ];
}
