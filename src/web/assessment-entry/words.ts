import { capital } from '../components/words.js';
import type {
  NotDoneReason,
  SafetyScreen,
  StopReason,
  TestPlace,
  Timepoint,
  WalkingAid,
} from '../../domain/referral/closed-sets.js';

/** The closed sets of an assessment in words. */

export const TIMEPOINT_WORDS: Readonly<Record<Timepoint, string>> = {
  baseline: 'baseline assessment',
  discharge: 'discharge assessment',
  'follow-up': 'follow-up assessment',
};

export const NOT_DONE_WORDS: Readonly<Record<NotDoneReason, string>> = {
  declined: 'declined',
  'not-safe': 'not safe',
  unable: 'unable to do it',
  'no-time': 'no time',
  'no-equipment': 'no equipment',
  'not-offered': 'not offered',
  language: 'language',
  other: 'other reason',
};

export const STOP_WORDS: Readonly<Record<StopReason, string>> = {
  'end-of-test': 'end of the test',
  breathlessness: 'breathlessness',
  'leg-fatigue': 'tired legs',
  'could-not-keep-pace': 'could not keep the pace',
  'low-oxygen-saturation': 'low SpO2',
  'chest-pain': 'chest pain',
  dizziness: 'dizziness',
  pain: 'other pain',
  'operator-safety': 'stopped by the assessor for safety',
  other: 'other reason',
};

export const AID_WORDS: Readonly<Record<WalkingAid, string>> = {
  none: 'none',
  stick: 'stick',
  'two-sticks': 'two sticks',
  crutches: 'crutches',
  frame: 'frame',
  rollator: 'rollator',
  other: 'other',
};

export const PLACE_WORDS: Readonly<Record<TestPlace, string>> = {
  course: 'on a measured course',
  home: 'at home',
};

export const SCREEN_WORDS: Readonly<Record<SafetyScreen, string>> = {
  'no-concern': 'looked at: no concern',
  concern: 'looked at: a concern',
  'not-recorded': 'not looked at',
};

const ABBREVIATIONS: Readonly<Record<string, string>> = { copd: 'COPD', ipf: 'IPF', uk: 'UK', '3l': '3L' };

/** A form of a questionnaire in words. @example formWords('copd-specific') -> 'COPD specific' */
export function formWords(form: string): string {
  return capital(
    form
      .split('-')
      .map((part) => ABBREVIATIONS[part] ?? part)
      .join(' '),
  );
}
