import type { Timepoint } from '../referral/closed-sets.js';

/** What became of a draft; `none` where nothing was ever saved. */
export const DRAFT_STATES = ['none', 'open', 'recorded', 'discarded'] as const;
export type DraftState = (typeof DRAFT_STATES)[number];

/** What was typed, by the name of the field: unchecked, and no part of the record until it is recorded. */
export type DraftFields = Readonly<Record<string, readonly string[]>>;

/** What has been typed and is no part of the record yet. */
export interface TypedDraft {
  /** Goes up with every saving and ending, and never starts again; 0 where nothing was ever saved. */
  readonly version: number;
  readonly state: DraftState;
  readonly fields: DraftFields;
  /** When and by whom it was saved or ended last; null where nothing was ever saved. */
  readonly saved: { readonly at: string; readonly byId: string; readonly byName: string } | null;
}

/** What has been typed of one assessment of a referral. */
export interface Draft extends TypedDraft {
  readonly referralId: string;
  readonly timepoint: Timepoint;
}

/** What has been typed of the correction of an assessment. */
export interface CorrectionDraft extends TypedDraft {
  readonly assessmentId: string;
  /** The version of the assessment that the typing began with: where it is not the present one, the draft is stale. */
  readonly assessmentVersion: number;
}

/** The draft of which nothing was ever saved. */
export function noDraft(referralId: string, timepoint: Timepoint): Draft {
  return { referralId, timepoint, version: 0, state: 'none', fields: {}, saved: null };
}

/** The correction of which nothing was ever saved: it would begin with the present version. */
export function noCorrectionDraft(assessmentId: string, assessmentVersion: number): CorrectionDraft {
  return { assessmentId, assessmentVersion, version: 0, state: 'none', fields: {}, saved: null };
}

/** Characters of all fields of a draft together, names included; the largest assessment has about 6000. */
export const MOST_DRAFT_CHARACTERS = 60_000;

/** Whether a draft is small enough to be kept. */
export function fitsDraft(fields: DraftFields): boolean {
  return JSON.stringify(fields).length <= MOST_DRAFT_CHARACTERS;
}
