import type { Database } from 'better-sqlite3';

/** The body of the benchmark's assessment, taken at its word. */
export interface BareAssessment {
  readonly siteId: string;
  readonly timepoint: string;
  readonly assessedOn: string;
  readonly heightCm: number;
  readonly weightKg: number;
  readonly spirometry: Readonly<Record<'fev1L' | 'fev1PercentPredicted' | 'fev1FvcPercent', number>>;
  readonly resting: Readonly<
    Record<'spo2Percent' | 'heartRateBpm' | 'systolicMmHg' | 'diastolicMmHg', number>
  >;
  readonly safetyScreen: string;
  readonly walkTests: readonly BareWalk[];
  readonly sitToStands: readonly BareStand[];
  readonly questionnaires: readonly {
    readonly questionnaire: string;
    readonly form?: string;
    readonly items: readonly number[];
  }[];
}

interface BareWalk {
  readonly test: string;
  readonly attempt: number;
  readonly place: string;
  readonly distanceM: number;
  readonly courseLengthM: number;
  readonly walkingAid: string;
  readonly oxygenLPerMin: number;
  readonly startSpo2Percent: number;
  readonly lowestSpo2Percent: number;
  readonly startHeartRateBpm: number;
  readonly peakHeartRateBpm: number;
  readonly startBreathlessness: number;
  readonly endBreathlessness: number;
  readonly startFatigue: number;
  readonly endFatigue: number;
  readonly stops: number;
  readonly stopReason: string;
}

interface BareStand {
  readonly test: string;
  readonly place: string;
  readonly repetitions: number;
  readonly handsUsed: boolean;
  readonly chairHeightCm: number;
}

/** Keys of the new rows. */
export interface BareKeys {
  readonly id: string;
  readonly versionId: string;
  readonly teamId: string;
  readonly patientId: string;
  readonly referralId: string;
  readonly accountId: string;
  readonly now: string;
}

/** What scoring makes of the benchmark's items; the bare server knows it beforehand, scoring being no insert. */
const SCORES: readonly (readonly [string, string, number, number])[] = [
  ['copd-assessment-test', 'cat-total', 22, 1],
  ['chronic-respiratory-questionnaire', 'crq-dyspnoea', 3, 1],
  ['chronic-respiratory-questionnaire', 'crq-emotional-function', 32, 7],
  ['chronic-respiratory-questionnaire', 'crq-fatigue', 3, 1],
  ['chronic-respiratory-questionnaire', 'crq-mastery', 17, 4],
  ['chronic-respiratory-questionnaire', 'crq-total', 19, 5],
  ['hospital-anxiety-and-depression-scale', 'hads-anxiety', 7, 1],
  ['hospital-anxiety-and-depression-scale', 'hads-depression', 9, 1],
];

/** Prepares every statement once; each call writes one assessment in one transaction. */
export function prepareBareInserts(database: Database): (body: BareAssessment, keys: BareKeys) => void {
  const into = (table: string, columns: readonly string[]): ((...values: readonly unknown[]) => unknown) => {
    const places = columns.map(() => '?').join(', ');
    const statement = database.prepare(`insert into ${table} (${columns.join(', ')}) values (${places})`);
    return (...values) => statement.run(...values);
  };
  const assessment = into('assessment', ASSESSMENT);
  const walk = into('walk_test', WALK_TEST);
  const stand = into('sit_to_stand', SIT_TO_STAND);
  const questionnaire = into('questionnaire', ['assessment_version_id', 'instrument', 'form', 'items']);
  const score = into('score', SCORE);
  const event = into('audit_event', AUDIT_EVENT);
  let sequence = 0;
  const insert = database.transaction((body: BareAssessment, keys: BareKeys) => {
    const { versionId } = keys;
    const { spirometry, resting } = body;
    assessment(
      ...[versionId, keys.id, 1, keys.teamId, keys.referralId, body.siteId, body.timepoint, body.assessedOn],
      ...[body.heightCm * 10, body.weightKg * 1000],
      ...[spirometry.fev1L * 1000, spirometry.fev1PercentPredicted, spirometry.fev1FvcPercent],
      ...[resting.spo2Percent, resting.heartRateBpm, resting.systolicMmHg, resting.diastolicMmHg],
      ...[body.safetyScreen, '[]', '[]', keys.now, keys.accountId],
    );
    for (const entry of body.walkTests) walk(versionId, ...walkValues(entry));
    for (const entry of body.sitToStands) {
      const { test, place, repetitions, handsUsed, chairHeightCm } = entry;
      stand(versionId, test, place, repetitions, Number(handsUsed), chairHeightCm * 10);
    }
    for (const entry of body.questionnaires) {
      questionnaire(versionId, entry.questionnaire, entry.form ?? null, JSON.stringify(entry.items));
    }
    for (const values of SCORES) score(versionId, ...values, 'items');
    sequence += 1;
    event(
      ...[
        sequence,
        keys.now,
        keys.teamId,
        keys.accountId,
        'clinician',
        'assessment-recorded',
        keys.patientId,
      ],
      ...[keys.referralId, keys.id, told(body), UNSALTED, UNCHAINED, UNCHAINED],
    );
  });
  return insert;
}

function walkValues(walk: BareWalk): readonly unknown[] {
  return [
    ...[walk.test, walk.attempt, walk.place, walk.distanceM, walk.courseLengthM * 10, walk.walkingAid],
    ...[walk.oxygenLPerMin * 1000, walk.startSpo2Percent, walk.lowestSpo2Percent],
    ...[walk.startHeartRateBpm, walk.peakHeartRateBpm],
    ...[
      walk.startBreathlessness * 10,
      walk.endBreathlessness * 10,
      walk.startFatigue * 10,
      walk.endFatigue * 10,
    ],
    ...[walk.stops, walk.stopReason],
  ];
}

/** The details of the event as the audit trail has them. */
function told(body: BareAssessment): string {
  const { timepoint, assessedOn, siteId, heightCm, weightKg, spirometry, resting, safetyScreen } = body;
  const results = SCORES.map(
    ([, measure, numerator, denominator]) => [measure, numerator / denominator] as const,
  );
  const after: Readonly<Record<string, unknown>> = {
    ...{ timepoint, assessedOn, siteId, heightCm, weightKg, spirometry, resting, safetyScreen },
    ...{ safetyFindings: [], confirmed: [] },
    'incremental-shuttle-walk-distance': body.walkTests[1]?.distanceM,
    'one-minute-sit-to-stand': body.sitToStands[0]?.repetitions,
    ...Object.fromEntries<number>(results),
  };
  const changes = Object.fromEntries(Object.entries(after).map(([name, value]) => [name, [null, value]]));
  return JSON.stringify({ changes });
}

/** As long as a hash: chaining the entries is no insert. */
const UNCHAINED = '0'.repeat(64);
/** As long as the salt of an entry of the trail. */
const UNSALTED = '0'.repeat(32);

const ASSESSMENT = [
  ...['version_id', 'id', 'version', 'team_id', 'referral_id', 'site_id', 'timepoint', 'assessed_on'],
  ...['height_mm', 'weight_g', 'fev1_ml', 'fev1_percent_predicted', 'fev1_fvc_percent'],
  ...['resting_spo2_percent', 'resting_heart_rate_bpm', 'systolic_mmhg', 'diastolic_mmhg'],
  ...['safety_screen', 'confirmed_fields', 'safety_findings', 'recorded_at', 'recorded_by'],
];
const WALK_TEST = [
  ...['assessment_version_id', 'test', 'attempt', 'place', 'distance_m', 'course_length_dm', 'walking_aid'],
  ...['oxygen_ml_per_min', 'start_spo2_percent', 'lowest_spo2_percent'],
  ...[
    'start_heart_rate_bpm',
    'peak_heart_rate_bpm',
    'start_breathlessness_tenths',
    'end_breathlessness_tenths',
  ],
  ...['start_fatigue_tenths', 'end_fatigue_tenths', 'stops', 'stop_reason'],
];
const SIT_TO_STAND = [
  ...['assessment_version_id', 'test', 'place', 'repetitions', 'hands_used', 'chair_height_mm'],
];
const AUDIT_EVENT = [
  ...['sequence', 'occurred_at', 'team_id', 'account_id', 'role', 'action', 'patient_id'],
  ...['referral_id', 'subject_id', 'details', 'details_salt', 'previous_hash', 'hash'],
];
const SCORE = ['assessment_version_id', 'instrument', 'measure', 'numerator', 'denominator', 'basis'];
