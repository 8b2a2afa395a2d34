import { mayOpen } from '../../auth/access.js';
import type { PageId } from '../../auth/access.js';
import type { ShownStage } from '../../domain/pathway/stage.js';
import type { ClosureReason } from '../../domain/referral/closed-sets.js';
import type { TeamMember } from '../../usecases/context.js';

/** A step of a referral and the page on which it is taken. */
export interface ReferralStep {
  readonly words: string;
  readonly address: string;
  /** It is what the stage asks for; of several the first. */
  readonly isNext: boolean;
}

/** What the steps of a referral depend on. */
export interface ReferralAtStage {
  readonly id: string;
  readonly stage: ShownStage;
  readonly isTriaged: boolean;
  /** A baseline assessment stands in the record. */
  readonly isAssessed: boolean;
  readonly isStartPlanned: boolean;
  readonly closedFor: ClosureReason | null;
}

interface Step {
  readonly pageId: PageId;
  readonly words: string;
  /** Below the address of the referral. */
  readonly path: string;
}

const TRIAGE: Step = { pageId: 'page:triage', words: 'Triage', path: 'triage' };
const BOOK: Step = { pageId: 'page:offers', words: 'Book', path: 'offers' };
const START: Step = { pageId: 'page:planned-start', words: 'Plan the start', path: 'planned-start' };
const BASELINE = assessment('baseline', 'baseline');
const DISCHARGE = assessment('discharge', 'discharge');
const FOLLOW_UP = assessment('follow-up', 'follow-up');
const CLOSE: Step = { pageId: 'page:closing', words: 'Close', path: 'closing' };
const CLOSED: Step = { pageId: 'page:closing', words: 'How it was closed', path: 'closing' };
const GP_LETTER: Step = {
  pageId: 'page:letter',
  words: 'Letter to the general practice',
  path: 'letters/gp',
};
const OWN_LETTER: Step = { pageId: 'page:letter', words: 'Letter to the person', path: 'letters/patient' };

const LETTERS = [GP_LETTER, OWN_LETTER];

/** What may be done at a stage, what the stage asks for first. */
const STEPS: Readonly<Record<ShownStage, readonly Step[]>> = {
  'awaiting-triage': [TRIAGE, BOOK, BASELINE, CLOSE],
  'awaiting-assessment': [BOOK, BASELINE, TRIAGE, START, CLOSE],
  'awaiting-start': [START, BOOK, BASELINE, TRIAGE, CLOSE],
  'in-programme': [DISCHARGE, BASELINE, TRIAGE, START, BOOK, CLOSE],
  'awaiting-discharge-assessment': [DISCHARGE, BASELINE, TRIAGE, BOOK, CLOSE, ...LETTERS],
  'awaiting-closure': [CLOSE, DISCHARGE, FOLLOW_UP, ...LETTERS],
  closed: [CLOSED, FOLLOW_UP, ...LETTERS],
  'entered-in-error': [],
};

/** Stages whose next step is taken on a page of the referral itself; a class is registered elsewhere. */
const HAS_NEXT: ReadonlySet<ShownStage> = new Set<ShownStage>([
  'awaiting-triage',
  'awaiting-assessment',
  'awaiting-start',
  'awaiting-discharge-assessment',
  'awaiting-closure',
]);

/**
 * The steps that a role may take for a referral, the next one of its stage first.
 *
 * @param referral what is known of it: a step that was taken and cannot be taken again is left out
 * @example one that awaits triage, for a clinician -> Triage, Book, Enter the baseline assessment, Close
 */
export function stepsOf(role: TeamMember['role'], referral: ReferralAtStage): readonly ReferralStep[] {
  const { id, stage } = referral;
  const steps = STEPS[stage].filter((step) => mayOpen(role, step.pageId) && !isTaken(step, referral));
  return steps.map((step) => {
    const isPlanned = step === START && referral.isStartPlanned;
    return {
      words: isPlanned ? 'Change the planned start' : step.words,
      address: `/referrals/${id}/${step.path}`,
      // Once the start is planned, what is next is the class itself.
      isNext: HAS_NEXT.has(stage) && step === STEPS[stage][0] && !isPlanned,
    };
  });
}

/** Taken, or not to be taken: nobody writes to a person who died, nor about a referral that never was. */
function isTaken(step: Step, { isTriaged, isAssessed, closedFor }: ReferralAtStage): boolean {
  switch (step) {
    case TRIAGE:
      return isTriaged;
    case BASELINE:
      return isAssessed;
    case GP_LETTER:
      return closedFor === 'registered-in-error';
    case OWN_LETTER:
      return closedFor === 'registered-in-error' || closedFor === 'died';
    default:
      return false;
  }
}

function assessment(timepoint: 'baseline' | 'discharge' | 'follow-up', name: string): Step {
  const words = `Enter the ${name} assessment`;
  return { pageId: 'page:assessment', words, path: `assessments/${timepoint}` };
}
