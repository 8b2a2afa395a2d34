import {
  findMeasure,
  findPhysicalTest,
  findQuestionnaire,
  findSitToStandTest,
  findWalkTest,
} from '../../domain/measures/catalogue.js';
import {
  AID_WORDS,
  NOT_DONE_WORDS,
  PLACE_WORDS,
  SCREEN_WORDS,
  STOP_WORDS,
  TIMEPOINT_WORDS,
} from '../assessment-entry/words.js';
import { fieldWords } from '../components/value-words.js';

/** How one field of an assessment is read. */
export interface AssessmentField {
  readonly label: string;
  /** As it stands behind the number; null where the number has none. */
  readonly unit: string | null;
  /** What its codes mean; null where it has none. */
  readonly codes: Readonly<Record<string, string>> | null;
}

const field = (label: string, unit: string | null = null): AssessmentField => ({ label, unit, codes: null });
const coded = (label: string, codes: Readonly<Record<string, string>>): AssessmentField => ({
  label,
  unit: null,
  codes,
});

/** Fields that tests have, by their name. */
const OF_A_TEST: Readonly<Record<string, AssessmentField>> = {
  place: coded('where', PLACE_WORDS),
  distanceM: field('distance', 'm'),
  level: field('last level begun'),
  shuttles: field('shuttles in it'),
  timeS: field('time', 's'),
  speedLevel: field('speed level'),
  courseLengthM: field('length of the course', 'm'),
  walkingAid: coded('walking aid', AID_WORDS),
  oxygenLPerMin: field('oxygen', 'L/min'),
  startSpo2Percent: field('SpO2 at start', '%'),
  lowestSpo2Percent: field('lowest SpO2', '%'),
  startHeartRateBpm: field('heart rate at start', 'beats/min'),
  peakHeartRateBpm: field('peak heart rate', 'beats/min'),
  startBreathlessness: field('Borg breathlessness at start'),
  endBreathlessness: field('Borg breathlessness at end'),
  startFatigue: field('Borg fatigue at start'),
  endFatigue: field('Borg fatigue at end'),
  stops: field('stops to rest'),
  stopReason: coded('why it ended', STOP_WORDS),
  repetitions: field('repetitions'),
  handsUsed: field('hands used'),
  chairHeightCm: field('chair height', 'cm'),
  form: field('form'),
  items: field('items in printed order'),
  notDoneReason: coded('not done because', NOT_DONE_WORDS),
};

/** The other fields, by their path. */
const OF_THE_VISIT: Readonly<Record<string, AssessmentField>> = {
  timepoint: coded('Assessment', TIMEPOINT_WORDS),
  siteId: field('Site'),
  heightCm: field('Height', 'cm'),
  weightKg: field('Weight', 'kg'),
  'spirometry.fev1L': field('FEV1', 'L'),
  'spirometry.fev1PercentPredicted': field('FEV1 of predicted', '%'),
  'spirometry.fev1FvcPercent': field('FEV1 of FVC', '%'),
  'resting.spo2Percent': field('SpO2 at rest', '%'),
  'resting.heartRateBpm': field('Heart rate at rest', 'beats/min'),
  'resting.systolicMmHg': field('Systolic pressure at rest', 'mmHg'),
  'resting.diastolicMmHg': field('Diastolic pressure at rest', 'mmHg'),
  safetyScreen: coded('Safety checklist', SCREEN_WORDS),
  safetyNote: field('Note on safety'),
  safetyFindings: field('Found on the safety checklist'),
  confirmed: field('Unusual values that were confirmed'),
  'enteredInError.reason': field('Entered in error because'),
};

/**
 * A field of an assessment as its history names it, as it is read.
 *
 * @param path as `stateOfAssessment` and `changesBetween` give it
 * @example assessmentField('walkTests.incremental-shuttle-walk.1.oxygenLPerMin').label -> 'ISWT, first walk: oxygen'
 */
export function assessmentField(path: string): AssessmentField {
  const [list = '', id = '', ...rest] = path.split('.');
  const name = rest.at(-1) ?? '';
  switch (list) {
    case 'walkTests':
      return ofTest(
        `${findWalkTest(id)?.shortName ?? id}, ${rest[0] === '2' ? 'second' : 'first'} walk`,
        name,
      );
    case 'sitToStands':
      return ofTest(findSitToStandTest(id)?.shortName ?? id, name);
    case 'questionnaires':
      return ofQuestionnaire(id, rest[0] ?? '', name);
    case 'physicalTests':
      return ofPhysicalTest(id, rest[0] ?? '', name);
    case 'scores':
      return field(findMeasure(id)?.name ?? id);
    default:
      return OF_THE_VISIT[path] ?? field(fieldWords(path));
  }
}

function ofTest(test: string, name: string): AssessmentField {
  const known = OF_A_TEST[name] ?? field(fieldWords(name).toLowerCase());
  return { ...known, label: `${test}: ${known.label}` };
}

function ofQuestionnaire(id: string, part: string, name: string): AssessmentField {
  const short = findQuestionnaire(id)?.shortName ?? id;
  if (part !== 'typedScores') return ofTest(short, name);
  return field(`${findMeasure(name)?.name ?? name}, added up by hand`);
}

function ofPhysicalTest(id: string, part: string, name: string): AssessmentField {
  const test = findPhysicalTest(id);
  const short = test?.shortName ?? id;
  if (part === 'conditions') {
    const condition = test?.conditions.find((each) => each.id === name);
    return field(`${short}: ${(condition?.label ?? name).toLowerCase()}`);
  }
  if (part === 'parts')
    return field(`${short}: ${test?.parts.find((each) => each.id === name)?.label ?? name}`, 's');
  if (part === 'measure') return field(`${short}: what was measured`);
  return part === 'value' ? field(`${short}: result`) : ofTest(short, name);
}
