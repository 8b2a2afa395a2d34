import type { Assessment, AssessmentEntry } from '../../domain/assessment/assessment.js';
import { checkQuestionnaire } from '../../domain/assessment/check-questionnaire.js';
import { compare } from '../../domain/exact/fraction.js';

/** Whether the record says of an assessment everything that a sheet says of it; what a sheet does not hold is no difference. */
export function sameAssessment(known: Assessment, sheet: AssessmentEntry): boolean {
  return sameFields(known.entry, sheet) && sameTests(known.entry, sheet) && sameScores(known, sheet);
}

function sameFields(known: AssessmentEntry, sheet: AssessmentEntry): boolean {
  return (
    holds(known.heightCm, sheet.heightCm) &&
    holds(known.weightKg, sheet.weightKg) &&
    holdsAll(known.spirometry, sheet.spirometry) &&
    holdsAll(known.resting, sheet.resting)
  );
}

function sameTests(known: AssessmentEntry, sheet: AssessmentEntry): boolean {
  return (
    sheet.walkTests.every((walk) =>
      known.walkTests.some(
        (each) => each.test === walk.test && each.attempt === walk.attempt && holdsAll(each, walk),
      ),
    ) &&
    sheet.sitToStands.every((stand) =>
      known.sitToStands.some((each) => each.test === stand.test && holdsAll(each, stand)),
    )
  );
}

function sameScores(known: Assessment, sheet: AssessmentEntry): boolean {
  return sheet.questionnaires.every((questionnaire) => {
    const there = known.entry.questionnaires.find(
      (each) => each.questionnaire === questionnaire.questionnaire,
    );
    if (there === undefined || !holds(there.notDoneReason, questionnaire.notDoneReason)) return false;
    // Read by the same rule as the record did, so that 3.43 is the 24/7 that it stands for.
    return checkQuestionnaire(questionnaire, '').scores.every(({ measure, value }) =>
      known.scores.some((score) => score.measure === measure && compare(score.value, value) === 0),
    );
  });
}

function holdsAll(known: object | null, sheet: object | null): boolean {
  if (sheet === null) return true;
  const there: Readonly<Record<string, unknown>> = { ...known };
  return Object.entries(sheet).every(([field, value]) => holds(there[field] ?? null, value));
}

function holds(known: unknown, sheet: unknown): boolean {
  return sheet === null || known === sheet;
}
