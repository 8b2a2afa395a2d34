import type { CohortKind } from '../cohort/cohorts.js';
import { COHORT_KINDS, COHORT_WORDS } from '../cohort/cohorts.js';
import type { Course } from '../pathway/course.js';
import { DIAGNOSES, PATHWAYS, REFERRAL_SOURCES } from '../referral/closed-sets.js';
import { DIAGNOSIS_WORDS, PATHWAY_WORDS, SOURCE_WORDS } from '../referral/words.js';
import type { FigureRule } from './indicator.js';
import { countsIf } from './judge.js';
import { OWN_RULE } from './sources.js';

/** How many of each cohort nobody has closed: what keeps its figures provisional. */
export const NOT_CLOSED: Readonly<Record<CohortKind, FigureRule>> = {
  referral: notClosed('referral'),
  start: notClosed('start'),
  discharge: notClosed('discharge'),
};

/** Referrals of the period by where they came from. */
export const BY_SOURCE: readonly FigureRule[] = REFERRAL_SOURCES.map((source) =>
  shareOfReferrals('source', source, SOURCE_WORDS[source], (course) => course.facts.source),
);

export const BY_PATHWAY: readonly FigureRule[] = PATHWAYS.map((pathway) =>
  shareOfReferrals('pathway', pathway, PATHWAY_WORDS[pathway], (course) => course.facts.pathway),
);

export const BY_DIAGNOSIS: readonly FigureRule[] = DIAGNOSES.map((diagnosis) =>
  shareOfReferrals('diagnosis', diagnosis, DIAGNOSIS_WORDS[diagnosis], (course) => course.facts.diagnosis),
);

export const BREAKDOWN_RULES: readonly FigureRule[] = [
  ...COHORT_KINDS.map((kind) => NOT_CLOSED[kind]),
  ...BY_SOURCE,
  ...BY_PATHWAY,
  ...BY_DIAGNOSIS,
];

function notClosed(kind: CohortKind): FigureRule {
  return {
    id: `cohort.${kind}`,
    ruleId: `${kind}-cohort@1`,
    title: 'Not closed by the data cut',
    cohort: kind,
    numerator: 'Not closed by the data cut',
    denominator: COHORT_WORDS[kind],
    exclusions: null,
    source: OWN_RULE,
    judge: (course) => {
      const isOpen = course.facts.closure === null;
      return countsIf(isOpen, 'Not closed', 'Closed');
    },
  };
}

function shareOfReferrals(
  by: 'source' | 'pathway' | 'diagnosis',
  value: string,
  words: string,
  valueOf: (course: Course) => string,
): FigureRule {
  const title = words.charAt(0).toUpperCase() + words.slice(1);
  return {
    id: `referrals.by-${by}.${value}`,
    ruleId: `referrals-by-${by}@1`,
    title,
    cohort: 'referral',
    numerator: `Those with this ${by} as recorded at referral`,
    denominator: COHORT_WORDS.referral,
    exclusions: null,
    source: OWN_RULE,
    judge: (course) => countsIf(valueOf(course) === value, title, `Another ${by}`),
  };
}
