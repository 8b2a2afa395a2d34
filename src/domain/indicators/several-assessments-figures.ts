import { WHICH_COUNTS } from '../change/pair.js';
import { COHORT_WORDS } from '../cohort/cohorts.js';
import { findMeasure } from '../measures/catalogue.js';
import type { Course } from '../pathway/course.js';
import type { FigureRule } from './indicator.js';
import { countsIf, leftOut } from './judge.js';
import { OWN_RULE } from './sources.js';

type End = keyof typeof WHICH_COUNTS;

/** Who was assessed more than once at one end: nothing to mend as such, but one of two results counts, and which is said. */
export const SEVERAL_ASSESSMENTS_FIGURES: readonly FigureRule[] = (['baseline', 'discharge'] as const).map(
  (end) => ({
    id: `several-assessments.${end}`,
    ruleId: 'several-assessments@1',
    title: `With more than one ${end} assessment`,
    cohort: 'discharge',
    numerator: `Two ${end} assessments or more: ${WHICH_COUNTS[end]}`,
    denominator: `${COHORT_WORDS.discharge}, with a ${end} assessment`,
    exclusions: `No ${end} assessment`,
    source: OWN_RULE,
    judge: ({ facts }) => {
      const assessments = facts.assessments.filter(({ timepoint }) => timepoint === end);
      if (assessments.length === 0) return leftOut('nothing-to-enter', `No ${end} assessment`);
      return countsIf(assessments.length > 1, reasonOf(end, assessments), `One ${end} assessment`);
    },
  }),
);

/** @example '2 baseline assessments; more than once: CAT' */
function reasonOf(end: End, assessments: Course['facts']['assessments']): string {
  const measured = assessments.flatMap(({ results }) => results.map(({ measureId }) => measureId));
  const repeated = new Set(measured.filter((id, index) => measured.indexOf(id) !== index));
  const names = [...repeated].map((id) => findMeasure(id)?.shortName ?? id);
  const words = names.length === 0 ? 'nothing was measured twice' : `more than once: ${names.join(', ')}`;
  return `${assessments.length} ${end} assessments; ${words}`;
}
