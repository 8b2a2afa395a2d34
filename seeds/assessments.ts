import { addDays } from '../src/domain/calendar/plain-date.js';
import type { PlainDate } from '../src/domain/calendar/plain-date.js';
import type {
  QuestionnaireEntry,
  SitToStandEntry,
  WalkTestEntry,
} from '../src/domain/assessment/assessment.js';
import type {
  DeliveryMode,
  NotDoneReason,
  SafetyScreen,
  Timepoint,
  WalkingAid,
} from '../src/domain/referral/closed-sets.js';
import { answersNotGiven, planAnswers, typedTotal } from './answers.js';
import type { Target } from './answers.js';
import { planResting } from './body.js';
import { planEnduranceWalk, planPhysicalTests } from './further-tests.js';
import type { FurtherAbilities } from './further-tests.js';
import { endOf } from './measurements.js';
import type { Abilities, Ends } from './measurements.js';
import type { PlannedAssessment, PlannedEntry, PlannedPerson } from './plan.js';
import { chance, clamp, normal, pick, pickWeighted, wholeBetween } from './random.js';
import type { Random } from './random.js';
import type { SiteScenario } from './scenario.js';
import { settle } from './settle.js';
import { planStands, planWalk, standsNotDone, walkNotDone } from './walks.js';

/** A visit at which a person is measured. */
export interface Visit {
  readonly timepoint: Timepoint;
  readonly assessedOn: PlainDate;
  readonly receivedOn: PlainDate;
  readonly site: SiteScenario;
  readonly person: PlannedPerson;
  readonly abilities: Abilities;
  /** What only some sites measure, and the numbers of its own that it is drawn from. */
  readonly further: FurtherAbilities & { readonly random: Random };
  readonly deliveryMode: DeliveryMode | null;
  readonly walkingAid: WalkingAid;
  readonly courseLengthM: number;
  /** The baseline of the same course; null at baseline, or where it was missed. */
  readonly baseline: PlannedAssessment | null;
}

/** Shares of tests that are not done, at baseline and at discharge; more discharge walks are missed away from a centre. */
const NOT_DONE = { walk: { baseline: 0.03, discharge: 0.08 }, stands: { baseline: 0.05, discharge: 0.09 } };
const MORE_AWAY_FROM_CENTRE = 0.12;
const FORM_NOT_DONE_SHARE = 0.03;
const SLIP_SHARE = 0.012;

/** One assessment with everything that was measured, checked as the service will check it. */
export function planAssessment(random: Random, visit: Visit): PlannedAssessment {
  const { person, timepoint, further } = visit;
  const entry: PlannedEntry = {
    timepoint,
    assessedOn: visit.assessedOn,
    heightCm: timepoint === 'baseline' || chance(random, 0.5) ? person.body.heightCm : null,
    weightKg: weightAt(random, visit),
    spirometry: timepoint === 'baseline' ? person.body.spirometry : null,
    resting: chance(random, 0.97) ? planResting(random, person.body) : null,
    ...planSafety(random),
    walkTests: planWalks(random, visit),
    sitToStands: [planSitToStand(random, visit)],
    questionnaires: planQuestionnaires(random, visit),
    physicalTests: planPhysicalTests(further.random, visit),
    notes: null,
    confirmed: [],
  };
  const context = { bornOn: person.details.bornOn, receivedOn: visit.receivedOn, baseline: visit.baseline };
  const slip = chance(random, SLIP_SHARE) ? planSlip(random, entry) : null;
  return {
    siteName: visit.site.name,
    ...settle(entry, context),
    slip: slip === null ? null : { ...slip, entry: settle(slip.entry, context).entry },
  };
}

function planWalks(random: Random, visit: Visit): readonly WalkTestEntry[] {
  const walks = planDistanceWalks(random, visit);
  return [...walks, ...planEnduranceWalk(visit.further.random, visit, walks)];
}

function planDistanceWalks(random: Random, visit: Visit): readonly WalkTestEntry[] {
  const { abilities, deliveryMode, person, timepoint } = visit;
  const test = visit.site.battery.walkTest;
  const isAway = timepoint === 'discharge' && (deliveryMode === 'home' || deliveryMode === 'remote');
  if (chance(random, NOT_DONE.walk[endOf(visit)] + (isAway ? MORE_AWAY_FROM_CENTRE : 0))) {
    return [walkNotDone(test, pickWeighted(random, isAway ? WALK_REASONS_AWAY : WALK_REASONS))];
  }
  const isShuttle = test === 'incremental-shuttle-walk';
  return planWalk(random, {
    test,
    body: person.body,
    walkingAid: visit.walkingAid,
    courseLengthM: isShuttle ? 10 : visit.courseLengthM,
    bestM: (isShuttle ? abilities.shuttleWalkM : abilities.sixMinuteWalkM)[endOf(visit)],
  });
}

function planSitToStand(random: Random, visit: Visit): SitToStandEntry {
  const { abilities, deliveryMode, timepoint } = visit;
  if (chance(random, NOT_DONE.stands[endOf(visit)]))
    return standsNotDone(pickWeighted(random, STANDS_REASONS));
  const isAway = timepoint === 'discharge' && (deliveryMode === 'home' || deliveryMode === 'remote');
  return planStands(random, {
    stands: abilities.oneMinuteStands[endOf(visit)],
    isAtHome: isAway && chance(random, 0.4),
  });
}

function planQuestionnaires(random: Random, visit: Visit): readonly QuestionnaireEntry[] {
  const { abilities } = visit;
  const end = endOf(visit);
  const { mood, hasChronicRespiratoryQuestionnaire } = visit.site.battery;
  const to = (measureId: string, ends: Ends): Target => ({ measureId, value: ends[end] });
  const given = (id: string, targets: readonly Target[], form: string | null = null): QuestionnaireEntry => {
    if (!chance(random, FORM_NOT_DONE_SHARE)) return planAnswers(random, id, targets, form);
    const needsInterpreter = visit.person.details.interpreterNeed === 'yes';
    const reason: NotDoneReason = needsInterpreter ? 'language' : pickWeighted(random, FORM_REASONS);
    return answersNotGiven(id, reason);
  };
  const cat = chance(random, 0.05)
    ? typedTotal('copd-assessment-test', 'cat-total', abilities.cat[end])
    : given('copd-assessment-test', [to('cat-total', abilities.cat)]);
  const moodForms =
    mood === 'hads'
      ? [
          given('hospital-anxiety-and-depression-scale', [
            to('hads-anxiety', abilities.hadsAnxiety),
            to('hads-depression', abilities.hadsDepression),
          ]),
        ]
      : [
          given('patient-health-questionnaire-9', [to('phq-9', abilities.phq9)]),
          given('generalised-anxiety-disorder-7', [to('gad-7', abilities.gad7)]),
        ];
  const crqTargets = [
    to('crq-dyspnoea', abilities.crqDyspnoea),
    to('crq-fatigue', abilities.crqFatigue),
    to('crq-emotional-function', abilities.crqEmotionalFunction),
    to('crq-mastery', abilities.crqMastery),
  ];
  const crq = hasChronicRespiratoryQuestionnaire
    ? [given('chronic-respiratory-questionnaire', crqTargets, 'self-reported')]
    : [];
  return [given('mrc-dyspnoea', [to('mrc-dyspnoea', abilities.mrc)]), cat, ...moodForms, ...crq];
}

function weightAt(random: Random, { person, timepoint }: Visit): number | null {
  if (chance(random, timepoint === 'baseline' ? 0.01 : 0.25)) return null;
  const changed = timepoint === 'baseline' ? 0 : normal(random, -0.3, 1.5);
  return Math.round(10 * clamp(28, 195, person.body.weightKg + changed)) / 10;
}

/** A screen that raises a concern names what was found, but for some where only the note says it. */
function planSafety(random: Random): Pick<PlannedEntry, 'safetyScreen' | 'safetyNote' | 'safetyFindings'> {
  const safetyScreen = pickWeighted<SafetyScreen>(random, [
    ['no-concern', 91],
    ['concern', 6],
    ['not-recorded', 3],
  ]);
  if (safetyScreen !== 'concern') return { safetyScreen, safetyNote: null, safetyFindings: [] };
  const safetyFindings = chance(random, 0.7) ? [pick(random, FOUND)] : [];
  return { safetyScreen, safetyNote: 'Seen by the physiotherapist first', safetyFindings };
}

/** Items of the safety checklist that a clinician weighs and that need not keep anybody from walking. */
const FOUND = [
  'moderate-valve-stenosis',
  'tachyarrhythmia-or-bradyarrhythmia',
  'significant-pulmonary-hypertension',
  'orthopaedic-impairment',
] as const;

/** What was typed at first where a slip was found a few days later. */
function planSlip(
  random: Random,
  entry: PlannedEntry,
): { readonly entry: PlannedEntry; readonly correctedOn: PlainDate; readonly reason: string } {
  const correctedOn = addDays(entry.assessedOn, wholeBetween(random, 1, 6));
  if (entry.weightKg !== null && chance(random, 0.6)) {
    const weightKg = Math.round(10 * clamp(28, 195, entry.weightKg + 9)) / 10;
    return { entry: { ...entry, weightKg }, correctedOn, reason: 'Weight read from the wrong line' };
  }
  const walkTests = entry.walkTests.map((walk) =>
    walk.walkingAid === null ? walk : { ...walk, walkingAid: null },
  );
  return { entry: { ...entry, walkTests }, correctedOn, reason: 'The walking aid was left out' };
}

const WALK_REASONS: readonly (readonly [NotDoneReason, number])[] = [
  ['declined', 30],
  ['not-safe', 22],
  ['unable', 20],
  ['no-time', 14],
  ['not-offered', 10],
  ['other', 4],
];

const WALK_REASONS_AWAY: readonly (readonly [NotDoneReason, number])[] = [
  ['no-equipment', 55],
  ['not-offered', 25],
  ['declined', 20],
];

const STANDS_REASONS: readonly (readonly [NotDoneReason, number])[] = [
  ['unable', 40],
  ['declined', 25],
  ['no-time', 20],
  ['not-safe', 15],
];

const FORM_REASONS: readonly (readonly [NotDoneReason, number])[] = [
  ['declined', 45],
  ['no-time', 35],
  ['not-offered', 20],
];
