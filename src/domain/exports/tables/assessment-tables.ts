import { MEASURES } from '../../measures/catalogue.js';
import { PHYSICAL_TESTS, QUESTIONNAIRES, SIT_TO_STAND_TESTS, WALK_TESTS } from '../../measures/registered.js';
import {
  NOT_DONE_REASONS,
  SAFETY_SCREENS,
  STOP_REASONS,
  TEST_PLACES,
  TIMEPOINTS,
  WALKING_AIDS,
} from '../../referral/closed-sets.js';
import {
  column,
  DATE,
  ID,
  IN_ERROR,
  INSTANT,
  OBJECT,
  OF_TEAM,
  oneOf,
  optional,
  ownedThrough,
  rowOf,
  TEXT,
  VERSION,
  whole,
  YES_NO,
} from '../column.js';
import type { ColumnKind, RecordColumn, RecordTable } from '../record-table.js';

const OF_VERSION = ownedThrough('assessment_version_id', 'assessment', 'version_id');
const VERSION_ID = column(
  'assessment_version_id',
  rowOf('assessment', 'version_id'),
  'The version of the assessment',
);
const PLACE = column('place', oneOf(TEST_PLACES), 'On a course or at home');
const NOT_DONE = optional(
  'not_done_reason',
  oneOf(NOT_DONE_REASONS),
  'Why it was not done; empty where it was',
);
const TEXTS: ColumnKind = { type: 'json', form: 'list-of-texts' };
const BORG: ColumnKind = whole(0, 100, 'tenths of a point');
const NUMERATOR: ColumnKind = whole(-1_000_000_000, 1_000_000_000);
const DENOMINATOR: ColumnKind = whole(1, 1_000_000_000);
const EXACT = 'numerator over denominator, in the unit of the measure';
const idsOf = (entries: readonly { readonly id: string }[]): readonly string[] => entries.map(({ id }) => id);

const MEASURED: readonly RecordColumn[] = [
  optional('height_mm', whole(1200, 2200, 'mm'), 'Height'),
  optional('weight_g', whole(25_000, 300_000, 'g'), 'Weight'),
  optional('fev1_ml', whole(200, 7000, 'mL'), 'FEV1'),
  optional('fev1_percent_predicted', whole(5, 150, '%'), 'FEV1 in percent of predicted'),
  optional('fev1_fvc_percent', whole(15, 100, '%'), 'FEV1 in percent of FVC'),
  optional('resting_spo2_percent', whole(50, 100, '%'), 'SpO2 at rest'),
  optional('resting_heart_rate_bpm', whole(30, 220, 'beats/min'), 'Heart rate at rest'),
  optional('systolic_mmhg', whole(60, 280, 'mmHg'), 'Systolic pressure at rest'),
  optional('diastolic_mmhg', whole(30, 160, 'mmHg'), 'Diastolic pressure at rest'),
];

/** Assessments and everything that was measured at them. */
export const ASSESSMENT_TABLES: readonly RecordTable[] = [
  {
    name: 'assessment',
    holds: 'One version of an assessment; the one that is not superseded holds',
    key: ['version_id'],
    owned: OF_TEAM,
    columns: [
      column('version_id', ID, 'Identifies this version'),
      column('id', ID, 'Identifies the assessment over all its versions'),
      column('version', VERSION, 'Number of the version'),
      optional('superseded_at', INSTANT, 'When the next version took its place'),
      optional('correction_reason', TEXT, 'Why this version was made; empty for the first', 'free-text'),
      column('team_id', rowOf('team'), 'The team'),
      column('referral_id', rowOf('referral'), 'The referral'),
      column('site_id', rowOf('site'), 'The site'),
      column('timepoint', oneOf(TIMEPOINTS), 'Which assessment of the course'),
      column('assessed_on', DATE, 'The day'),
      ...MEASURED,
      column('safety_screen', oneOf(SAFETY_SCREENS), 'What the safety checklist gave'),
      optional('safety_note', TEXT, 'Note on it', 'free-text'),
      optional('notes', TEXT, 'Notes', 'free-text'),
      column('confirmed_fields', TEXTS, 'Fields outside the usual range that the assessor confirmed: JSON'),
      column('safety_findings', TEXTS, 'Ids of the safety checklist that were found present: JSON'),
      column('recorded_at', INSTANT, 'When it was entered'),
      column('recorded_by', rowOf('account'), 'By whom', 'staff'),
      ...IN_ERROR,
    ],
  },
  {
    name: 'walk_test',
    holds: 'One attempt at a walk test',
    key: ['assessment_version_id', 'test', 'attempt'],
    owned: OF_VERSION,
    columns: [
      VERSION_ID,
      column('test', oneOf(idsOf(WALK_TESTS)), 'The test'),
      column('attempt', whole(1, 2), 'First or second attempt'),
      PLACE,
      optional('distance_m', whole(0, 1500, 'm'), 'Distance walked; 0 is a result'),
      optional('time_s', whole(0, 1200, 's'), 'Time walked, of tests that are measured in time'),
      optional('speed_level', whole(1, 16, 'level'), 'Speed of the endurance shuttle walk'),
      optional('course_length_dm', whole(50, 1000, 'dm'), 'Length of the course'),
      optional('walking_aid', oneOf(WALKING_AIDS), 'Walking aid'),
      optional('oxygen_ml_per_min', whole(0, 15_000, 'mL/min'), 'Oxygen flow'),
      optional('start_spo2_percent', whole(50, 100, '%'), 'SpO2 at the start'),
      optional('lowest_spo2_percent', whole(50, 100, '%'), 'Lowest SpO2'),
      optional('start_heart_rate_bpm', whole(30, 220, 'beats/min'), 'Heart rate at the start'),
      optional('peak_heart_rate_bpm', whole(30, 230, 'beats/min'), 'Highest heart rate'),
      optional('start_breathlessness_tenths', BORG, 'Borg score of breathlessness at the start'),
      optional('end_breathlessness_tenths', BORG, 'Borg score of breathlessness at the end'),
      optional('start_fatigue_tenths', BORG, 'Borg score of fatigue at the start'),
      optional('end_fatigue_tenths', BORG, 'Borg score of fatigue at the end'),
      optional('stops', whole(0, 20, 'stops'), 'How often the person stopped'),
      optional('stop_reason', oneOf(STOP_REASONS), 'Why the walk ended'),
      NOT_DONE,
    ],
  },
  {
    name: 'sit_to_stand',
    holds: 'A sit-to-stand test',
    key: ['assessment_version_id', 'test'],
    owned: OF_VERSION,
    columns: [
      VERSION_ID,
      column('test', oneOf(idsOf(SIT_TO_STAND_TESTS)), 'The test'),
      PLACE,
      optional('repetitions', whole(0, 80, 'repetitions'), 'Repetitions; 0 is a result'),
      optional('time_tenths_s', whole(30, 1200, 'tenths of a second'), 'Time of five repetitions'),
      optional('hands_used', YES_NO, 'Whether hands were used'),
      optional('chair_height_mm', whole(300, 650, 'mm'), 'Height of the chair'),
      NOT_DONE,
    ],
  },
  {
    name: 'questionnaire',
    holds: 'A questionnaire; items are numbers in printed order, without their wording',
    key: ['assessment_version_id', 'instrument'],
    owned: OF_VERSION,
    columns: [
      VERSION_ID,
      column('instrument', oneOf(idsOf(QUESTIONNAIRES)), 'The questionnaire'),
      optional('form', TEXT, 'Which form of it'),
      optional(
        'items',
        { type: 'json', form: 'list-of-numbers' },
        'Scores of the items, null where unanswered: JSON; empty where only scores were typed',
      ),
      NOT_DONE,
    ],
  },
  {
    name: 'score',
    holds: `A score of a questionnaire, exact: ${EXACT}`,
    key: ['assessment_version_id', 'measure'],
    owned: OF_VERSION,
    columns: [
      VERSION_ID,
      column('instrument', oneOf(idsOf(QUESTIONNAIRES)), 'The questionnaire'),
      column('measure', oneOf(idsOf(MEASURES)), 'What is scored'),
      column('numerator', NUMERATOR, 'Numerator of the score'),
      column('denominator', DENOMINATOR, 'Denominator of the score'),
      column('basis', oneOf(['items', 'typed']), 'Worked out from items, or typed'),
    ],
  },
  {
    name: 'physical_test',
    holds: `A test of strength, balance or speed; its result exact: ${EXACT}`,
    key: ['assessment_version_id', 'test'],
    owned: OF_VERSION,
    columns: [
      VERSION_ID,
      column('test', oneOf(idsOf(PHYSICAL_TESTS)), 'The test'),
      PLACE,
      column('conditions', OBJECT, 'Conditions of the test by id: JSON'),
      optional('parts', OBJECT, 'Parts of the test by id, in s or unable: JSON'),
      optional('measure', oneOf(idsOf(MEASURES)), 'What was measured; empty where it has no number'),
      optional('numerator', NUMERATOR, 'Numerator of the result'),
      optional('denominator', DENOMINATOR, 'Denominator of the result'),
      optional('basis', oneOf(['parts', 'typed']), 'Worked out from parts, or typed'),
      NOT_DONE,
    ],
  },
  {
    name: 'acknowledgement',
    holds: 'That somebody saw a caution of an assessment, and what they did',
    key: ['id'],
    owned: ownedThrough('assessment_id', 'assessment'),
    columns: [
      column('id', ID, 'Identifies the entry'),
      column('assessment_id', rowOf('assessment'), 'The assessment'),
      column('caution_id', TEXT, 'The caution'),
      optional(
        'measure_id',
        oneOf(idsOf(MEASURES)),
        'The measure it belongs to; empty where it is about all',
      ),
      column('action_taken', TEXT, 'What was done', 'free-text'),
      column('acknowledged_at', INSTANT, 'When'),
      column('acknowledged_by', rowOf('account'), 'By whom', 'staff'),
    ],
  },
  {
    name: 'assessment_draft',
    holds: 'What was typed of an assessment that is not recorded yet; empty when it ended',
    key: ['referral_id', 'timepoint'],
    owned: ownedThrough('referral_id', 'referral'),
    columns: [
      column('referral_id', rowOf('referral'), 'The referral'),
      column('timepoint', oneOf(TIMEPOINTS), 'Which assessment of the course'),
      column('version', VERSION, 'How often it was saved'),
      column('state', oneOf(['open', 'recorded', 'discarded']), 'What became of it'),
      column('fields', OBJECT, 'Texts by the name of the field: JSON', 'free-text'),
      column('saved_at', INSTANT, 'When it was saved last'),
      column('saved_by', rowOf('account'), 'By whom', 'staff'),
    ],
  },
  {
    name: 'correction_draft',
    holds: 'What was typed of a correction that is not recorded yet; empty when it ended',
    key: ['assessment_id'],
    owned: ownedThrough('assessment_id', 'assessment'),
    columns: [
      column('assessment_id', rowOf('assessment'), 'The assessment that is corrected'),
      column('assessment_version', VERSION, 'The version of it that the typing began with'),
      column('version', VERSION, 'How often it was saved'),
      column('state', oneOf(['open', 'recorded', 'discarded']), 'What became of it'),
      column('fields', OBJECT, 'Texts by the name of the field: JSON', 'free-text'),
      column('saved_at', INSTANT, 'When it was saved last'),
      column('saved_by', rowOf('account'), 'By whom', 'staff'),
    ],
  },
];
