import type { AssessmentEntry, QuestionnaireEntry } from '../../domain/assessment/assessment.js';
import { byQuestionnaire, byTest, byTestAndAttempt } from '../../domain/assessment/stored-order.js';
import { findPhysicalTest } from '../../domain/measures/catalogue.js';

/** An entry as a text that is the same for the same content, in whatever order it was typed. */
export function inOrder(entry: AssessmentEntry): string {
  const ordered = {
    ...entry,
    confirmed: [],
    safetyFindings: [...entry.safetyFindings].sort(),
    safetyNote: withPlainLineEnds(entry.safetyNote),
    notes: withPlainLineEnds(entry.notes),
    walkTests: [...entry.walkTests].sort(byTestAndAttempt),
    sitToStands: [...entry.sitToStands].sort(byTest),
    questionnaires: [...entry.questionnaires].sort(byQuestionnaire).map(withoutBlanks),
    // A test with one measure may have been given with or without its name.
    physicalTests: [...entry.physicalTests].sort(byTest).map(({ measure, ...test }) => ({
      ...test,
      measure: test.value === null ? null : (measure ?? findPhysicalTest(test.test)?.measures[0]?.id),
    })),
  };
  return JSON.stringify(ordered, (_key, value: unknown) =>
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
      : value,
  );
}

function withPlainLineEnds(text: string | null): string | null {
  return text === null ? null : text.replaceAll('\r\n', '\n');
}

/** Items of which none was answered are no items. */
function withoutBlanks({ items, typedScores, ...rest }: QuestionnaireEntry): QuestionnaireEntry {
  const isBlank = items === null || items.every((item) => item === null);
  const byMeasure = [...typedScores].sort((a, b) => (a.measure < b.measure ? -1 : 1));
  return { ...rest, items: isBlank ? null : items, typedScores: byMeasure };
}
