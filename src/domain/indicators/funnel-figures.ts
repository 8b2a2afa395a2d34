import { COHORT_WORDS } from '../cohort/cohorts.js';
import {
  DROP_OUT_REASONS,
  dropOutWords,
  FUNNEL_STEP_WORDS,
  FUNNEL_STEPS,
  funnelPlace,
  hasReached,
} from '../pathway/funnel.js';
import type { DropOutReason, FunnelStep } from '../pathway/funnel.js';
import type { FigureRule } from './indicator.js';
import { counts, countsNot, leftOut, stillOpen } from './judge.js';
import { OWN_RULE } from './sources.js';

/** One step of the funnel, and what became of those who came no further. */
export interface FunnelFigures {
  readonly step: FunnelStep;
  /** Those who reached it, of all referred. */
  readonly reached: FigureRule;
  /** Those who left here, of all who reached it; null for the last step, from which nobody drops out. */
  readonly left: FigureRule | null;
  readonly leftBecause: readonly { readonly reason: DropOutReason; readonly rule: FigureRule }[];
}

/** The funnel of the referral cohort. */
export const FUNNEL_FIGURES: readonly FunnelFigures[] = FUNNEL_STEPS.map((step) => ({
  step,
  reached: reachedRule(step),
  left: step === 'completed' ? null : leftRule(step, null),
  leftBecause:
    step === 'completed' ? [] : DROP_OUT_REASONS.map((reason) => ({ reason, rule: leftRule(step, reason) })),
}));

function reachedRule(step: FunnelStep): FigureRule {
  return {
    id: `funnel.${step}`,
    ruleId: 'funnel-step@1',
    title: FUNNEL_STEP_WORDS[step],
    cohort: 'referral',
    numerator: 'Came at least as far as this step; the furthest fact recorded decides',
    denominator: `${COHORT_WORDS.referral}; open while the person may still come so far`,
    exclusions: null,
    source: OWN_RULE,
    judge: (course, { settings }) => {
      const place = funnelPlace(course, settings.completionReading);
      const furthest = `furthest step: ${FUNNEL_STEP_WORDS[place.step]}`;
      if (hasReached(place, step)) return counts(`Reached; ${furthest}`);
      if (place.left === null) return stillOpen(`Not yet; ${furthest}`);
      return countsNot(`${dropOutWords(place.left)}; ${furthest}`);
    },
  };
}

/** @param reason null for those who left for whatever reason */
function leftRule(step: FunnelStep, reason: DropOutReason | null): FigureRule {
  return {
    id: reason === null ? `funnel.left-after-${step}` : `funnel.left-after-${step}.${reason}`,
    ruleId: reason === null ? 'funnel-left@1' : 'funnel-left-because@1',
    title: reason === null ? 'Left after this step' : dropOutWords(reason),
    cohort: 'referral',
    numerator:
      reason === null
        ? 'Left after this step and before the next'
        : 'Left after this step and before the next for this reason: of closure, else of triage',
    denominator: 'Referrals received in the period that reached this step; open while still at it',
    exclusions: 'Did not come so far',
    source: OWN_RULE,
    judge: (course, { settings }) => {
      const place = funnelPlace(course, settings.completionReading);
      if (!hasReached(place, step)) return leftOut('step-not-reached', 'Did not come so far');
      if (place.step !== step) return countsNot('Came further');
      if (place.left === null) return stillOpen('Still at this step');
      const words = dropOutWords(place.left);
      return reason === null || place.left === reason ? counts(words) : countsNot(words);
    },
  };
}
