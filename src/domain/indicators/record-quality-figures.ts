import { daysBetween } from '../calendar/plain-date.js';
import type { CohortKind } from '../cohort/cohorts.js';
import { COHORT_WORDS } from '../cohort/cohorts.js';
import type { AssessmentFacts } from '../cohort/referral-facts.js';
import type { Course } from '../pathway/course.js';
import type { FigureRule } from './indicator.js';
import { countsIf, leftOut } from './judge.js';
import { SEVERAL_ASSESSMENTS_FIGURES } from './several-assessments-figures.js';
import { OWN_RULE } from './sources.js';

/** Days after the event within which an entry is in time. Our own figure: a week, so that a weekly list is right. */
const DAYS_FOR_ENTRY = 7;

/** One field that should be recorded; the referrals of whom it is not asked are left out. */
interface Field {
  readonly id: string;
  readonly title: string;
  readonly cohort: CohortKind;
  readonly isRecorded: (course: Course) => boolean;
  /** In words, whom it is asked of; null where everybody. */
  readonly askedOf?: { readonly words: string; readonly holds: (course: Course) => boolean };
}

const FIELDS: readonly Field[] = [
  person('nhs-number', 'NHS number', ({ hasNhsNumber }) => hasNhsNumber),
  person('sex-at-birth', 'Sex at birth', ({ sexAtBirth }) => sexAtBirth !== 'not-known'),
  // Z is an answer: asked, and declined to say. 99 is none.
  person('ethnic-category', 'Ethnic category', ({ ethnicCategory }) => ethnicCategory !== '99'),
  person('deprivation', 'Deprivation fifth', ({ deprivationQuintile }) => deprivationQuintile !== null),
  person('interpreter', 'Need of an interpreter', ({ interpreterNeed }) => interpreterNeed !== 'not-known'),
  person('home-oxygen', 'Oxygen at home', ({ homeOxygen }) => homeOxygen !== 'not-known'),
  person('smoking', 'Smoking status', ({ smokingStatus }) => smokingStatus !== 'not-known'),
  person('gp-practice', 'General practice', ({ hasGpPractice }) => hasGpPractice),
  referral('source', 'Referral source', ({ facts }) => facts.source !== 'not-known'),
  referral('diagnosis', 'Diagnosis', ({ facts }) => facts.diagnosis !== 'not-known'),
  referral('mrc-grade', 'MRC grade at referral', ({ facts }) => facts.mrcGrade !== null),
  referral('commissioner', 'Commissioner', ({ facts }) => facts.commissionerId !== null),
  {
    ...referral(
      'hospital-discharge',
      'Day of hospital discharge',
      ({ facts }) => facts.hospitalDischargedOn !== null,
    ),
    askedOf: {
      words: 'Not after an exacerbation',
      holds: ({ facts }) => facts.pathway === 'after-exacerbation',
    },
  },
  {
    id: 'triage',
    title: 'Triage decision',
    cohort: 'referral',
    isRecorded: ({ facts }) => facts.triage !== null,
    askedOf: {
      words: 'Not assessed and not started',
      holds: ({ assessedOn, startedOn }) => assessedOn !== null || startedOn !== null,
    },
  },
  started('delivery-mode', 'Mode of delivery', ({ facts }) => facts.deliveryMode !== null),
  started(
    'baseline-assessment',
    'Baseline assessment of those who started',
    ({ assessedOn }) => assessedOn !== null,
  ),
  started('height-and-weight', 'Height and weight at baseline', ({ facts }) =>
    facts.assessments.some(
      ({ timepoint, heightCm, weightKg }) =>
        timepoint === 'baseline' && heightCm !== null && weightKg !== null,
    ),
  ),
];

/** How completely each field is recorded. */
export const COMPLETENESS_FIGURES: readonly FigureRule[] = FIELDS.map((field) => ({
  id: `recorded.${field.id}`,
  ruleId: 'field-recorded@1',
  title: field.title,
  cohort: field.cohort,
  numerator: 'Recorded; for ethnic category "not stated" counts, "not known" does not',
  denominator: COHORT_WORDS[field.cohort],
  exclusions: field.askedOf?.words ?? null,
  source: OWN_RULE,
  judge: (course) => {
    if (field.askedOf?.holds(course) === false) return leftOut('not-asked-of', field.askedOf.words);
    return countsIf(field.isRecorded(course), 'Recorded', 'Not recorded');
  },
}));

/** Whether what happened was entered in time. */
export const TIMELINESS_FIGURES: readonly FigureRule[] = [
  {
    id: 'entered-in-time.referral',
    ruleId: 'entered-in-time-referral@1',
    title: `Referral entered within ${DAYS_FOR_ENTRY} days of receipt`,
    cohort: 'referral',
    numerator: `Entered in the record on day ${DAYS_FOR_ENTRY} after receipt or before`,
    denominator: COHORT_WORDS.referral,
    exclusions: null,
    source: OWN_RULE,
    judge: ({ facts }) => {
      const days = daysBetween(facts.receivedOn, facts.registeredOn);
      return countsIf(days <= DAYS_FOR_ENTRY, `Entered on day ${days}`, `Entered on day ${days}`);
    },
  },
  {
    id: 'entered-in-time.assessments',
    ruleId: 'entered-in-time-assessments@1',
    title: `Assessments entered within ${DAYS_FOR_ENTRY} days`,
    cohort: 'discharge',
    numerator: `Every assessment was entered on day ${DAYS_FOR_ENTRY} after it or before`,
    denominator: `${COHORT_WORDS.discharge}, with an assessment that stands as it was first entered`,
    exclusions: 'No assessment, or corrected ones only: these carry the day of the correction',
    source: OWN_RULE,
    judge: ({ facts }) => {
      const delays = facts.assessments.flatMap(entryDelay);
      if (delays.length === 0) return leftOut('nothing-to-enter', 'No assessment, or corrected ones only');
      const longest = Math.max(...delays);
      const reason = `Entered ${longest} days after it at the latest`;
      return countsIf(longest <= DAYS_FOR_ENTRY, reason, reason);
    },
  },
];

/** Values outside the usual range that were confirmed: right as a rule, and worth a look. */
export const CONFIRMED_VALUES_FIGURE: FigureRule = {
  id: 'confirmed-values',
  ruleId: 'confirmed-values@1',
  title: 'With a value outside the usual range that was confirmed',
  cohort: 'discharge',
  numerator:
    'At least one value of an assessment lies outside the usual range and was confirmed by the assessor',
  denominator: `${COHORT_WORDS.discharge}, with an assessment`,
  exclusions: 'No assessment',
  source: OWN_RULE,
  judge: ({ facts }) => {
    if (facts.assessments.length === 0) return leftOut('nothing-to-enter', 'No assessment');
    const confirmed = facts.assessments.reduce((sum, { confirmedValues }) => sum + confirmedValues, 0);
    return countsIf(confirmed > 0, `Values confirmed: ${confirmed}`, 'None');
  },
};

export const RECORD_QUALITY_RULES: readonly FigureRule[] = [
  ...COMPLETENESS_FIGURES,
  ...TIMELINESS_FIGURES,
  CONFIRMED_VALUES_FIGURE,
  ...SEVERAL_ASSESSMENTS_FIGURES,
];

function entryDelay({ assessedOn, enteredOn }: AssessmentFacts): readonly number[] {
  return enteredOn === null ? [] : [daysBetween(assessedOn, enteredOn)];
}

function person(
  id: string,
  title: string,
  isRecorded: (person: Course['facts']['patient']) => boolean,
): Field {
  return { id, title, cohort: 'referral', isRecorded: ({ facts }) => isRecorded(facts.patient) };
}

function referral(id: string, title: string, isRecorded: Field['isRecorded']): Field {
  return { id, title, cohort: 'referral', isRecorded };
}

function started(id: string, title: string, isRecorded: Field['isRecorded']): Field {
  return { id, title, cohort: 'start', isRecorded };
}
