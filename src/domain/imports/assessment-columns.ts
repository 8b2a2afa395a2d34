import { QUESTIONNAIRES, SIT_TO_STAND_TESTS, WALK_TESTS } from '../measures/registered.js';
import { TIMEPOINTS } from '../referral/closed-sets.js';
import type { Timepoint } from '../referral/closed-sets.js';
import { AID_WORDS } from './code-words.js';
import { codes, column, DATE, number } from './column.js';
import type { Column } from './column.js';
import { tightKey } from './words.js';

/** How teams mark the timepoint in front of or behind a heading (common practice, no source). */
const MARKS: Readonly<Record<Timepoint, readonly string[]>> = {
  baseline: ['baseline', 'initial', 'start', 'pre', 'first'],
  discharge: ['discharge', 'final', 'end', 'post', 'last'],
  'follow-up': ['followup', 'fu', '6month', '6months'],
};
const TIMEPOINT_LABELS: Readonly<Record<Timepoint, string>> = {
  baseline: 'Baseline',
  discharge: 'Discharge',
  'follow-up': 'Follow-up',
};

/** Further headings of measures, beside their names and short names (common practice, no source). */
const HEADINGS: Readonly<Record<string, readonly string[]>> = {
  'six-minute-walk': ['6mwt', '6mwd', '6minwalk', '6minutewalk', 'sixminutewalk'],
  'two-minute-walk': ['2mwt', '2mwd'],
  'incremental-shuttle-walk': ['iswt', 'iswd', 'shuttlewalk', 'incrementalshuttle'],
  'endurance-shuttle-walk': ['eswt'],
  'one-minute-sit-to-stand': ['1minsts', '1msts', 'sts1min', '1minutests', '1mstst'],
  'thirty-second-sit-to-stand': ['30sts', '30ssts', '30secsts', '30secondsts'],
  'five-repetition-sit-to-stand': ['5sts', '5xsts', '5repsts'],
  'cat-total': ['cat', 'catscore'],
  'mmrc-dyspnoea': ['mmrc'],
  'mrc-dyspnoea': ['mrcdyspnoeascale'],
  'hads-anxiety': ['hadsa', 'anxiety'],
  'hads-depression': ['hadsd', 'depression'],
  'eq-5d-5l-index': ['eq5dindex', 'eq5d'],
  'eq-vas': ['eqvas', 'eq5dvas'],
};

const PERSON_PARTS: readonly Column[] = [
  column(
    'assessedOn',
    'assessment on',
    DATE,
    'assessment',
    'assessmentdate',
    'dateofassessment',
    'assessedon',
    'assessed',
    'date',
  ),
  column('site', 'assessment site', { type: 'place', of: 'sites' }, 'assessmentsite', 'site'),
  column('heightCm', 'height in cm', number('cm'), 'height', 'heightcm'),
  column('weightKg', 'weight in kg', number('kg'), 'weight', 'weightkg'),
  column('fev1L', 'FEV1 in litres', number('L'), 'fev1', 'fev1l'),
  column(
    'fev1PercentPredicted',
    'FEV1 in percent of predicted',
    number('%'),
    'fev1%',
    'fev1%pred',
    'fev1%predicted',
    'fev1percentpredicted',
  ),
  column('fev1FvcPercent', 'FEV1/FVC in percent', number('%'), 'fev1fvc', 'fev1fvcratio'),
  column('spo2Percent', 'resting SpO2 in percent', number('%'), 'spo2', 'sats', 'restingspo2'),
  column('heartRateBpm', 'resting heart rate', number('beats/min'), 'hr', 'heartrate', 'pulse', 'restinghr'),
  column('systolicMmHg', 'systolic pressure', number('mmHg'), 'systolic', 'sbp'),
  column('diastolicMmHg', 'diastolic pressure', number('mmHg'), 'diastolic', 'dbp'),
];

const WALK_PARTS: readonly Column[] = WALK_TESTS.flatMap((test): readonly Column[] => {
  const [unit, what] = test.records === 'endurance' ? ['s', 'in seconds'] : ['m', 'in metres'];
  const known = [...(HEADINGS[test.id] ?? []), tightKey(test.name), tightKey(test.shortName)];
  const attempt = (count: 1 | 2): Column =>
    column(
      `walk.${test.id}.${count}`,
      `${test.shortName} ${what}, ${count === 1 ? 'first or only' : 'second'} attempt`,
      { type: 'result', unit },
      ...(count === 1 ? known : []),
      ...known.flatMap((name) => [
        `${name}${count}`,
        `${name}attempt${count}`,
        `${name}${count === 1 ? 'first' : 'second'}`,
      ]),
      ...known.map((name) => `${name}${unit}${count === 1 ? '' : '2'}`),
    );
  return [
    attempt(1),
    attempt(2),
    ...(test.records === 'endurance'
      ? [
          column(
            `walk.${test.id}.speedLevel`,
            `${test.shortName} speed level`,
            number(''),
            ...known.flatMap((name) => [`${name}level`, `${name}speed`]),
          ),
        ]
      : []),
  ];
});

const CONDITION_PARTS: readonly Column[] = [
  column(
    'walk.courseLengthM',
    'length of the walking course in metres',
    number('m'),
    'courselength',
    'track',
    'tracklength',
    'courselengthm',
  ),
  column('walk.walkingAid', 'walking aid', codes(AID_WORDS), 'walkingaid', 'aid'),
  column(
    'walk.oxygenLPerMin',
    'oxygen at the walk in litres a minute',
    number('L/min'),
    'oxygen',
    'o2',
    'walkoxygen',
    'oxygenlpermin',
  ),
];

const STAND_PARTS: readonly Column[] = SIT_TO_STAND_TESTS.map((test) =>
  column(
    `stand.${test.id}`,
    `${test.shortName} in ${test.measure.unit === 's' ? 'seconds' : 'repetitions'}`,
    { type: 'result', unit: test.measure.unit },
    ...(HEADINGS[test.id] ?? []),
    tightKey(test.name),
    tightKey(test.shortName),
  ),
);

const SCORE_PARTS: readonly Column[] = QUESTIONNAIRES.flatMap((questionnaire) => [
  ...questionnaire.measures.map((measure) =>
    column(
      `score.${measure.id}`,
      `${measure.shortName} in ${measure.unit}`,
      { type: 'result', unit: measure.unit },
      ...(HEADINGS[measure.id] ?? []),
      tightKey(measure.name),
      tightKey(measure.shortName),
    ),
  ),
  ...(questionnaire.forms.length > 0
    ? [
        column(
          `form.${questionnaire.id}`,
          `form of the ${questionnaire.shortName}`,
          codes(Object.fromEntries(questionnaire.forms.map((form) => [form, []]))),
          `${tightKey(questionnaire.shortName)}form`,
        ),
      ]
    : []),
]);

/** Everything a sheet may say of one assessment, without the timepoint. */
const ASSESSMENT_PARTS: readonly Column[] = [
  ...PERSON_PARTS,
  ...WALK_PARTS,
  ...CONDITION_PARTS,
  ...STAND_PARTS,
  ...SCORE_PARTS,
];

/** Everything a wide sheet may say of the three assessments of a course. */
export const ASSESSMENT_COLUMNS: readonly Column[] = TIMEPOINTS.flatMap((timepoint) =>
  ASSESSMENT_PARTS.map((each): Column => {
    const headings = each.headings.flatMap((name) =>
      MARKS[timepoint].flatMap((mark) => [`${mark}${name}`, `${name}${mark}`]),
    );
    return {
      ...each,
      id: `${timepoint}.${each.id}`,
      label: `${TIMEPOINT_LABELS[timepoint]}: ${each.label}`,
      headings,
    };
  }),
);
