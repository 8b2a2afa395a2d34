import { pairLossOf, PAIR_LOSS_REASONS, PAIR_LOSS_WORDS } from '../../domain/change/pair-loss.js';
import type { PairLossReason } from '../../domain/change/pair-loss.js';
import { entriesInErrorWords } from '../../domain/history/entered-in-error.js';
import type { EntriesInError } from '../../domain/history/entered-in-error.js';
import type { Figure } from '../../domain/indicators/figure.js';
import {
  COMPLETENESS_FIGURES,
  CONFIRMED_VALUES_FIGURE,
  TIMELINESS_FIGURES,
} from '../../domain/indicators/record-quality-figures.js';
import { SEVERAL_ASSESSMENTS_FIGURES } from '../../domain/indicators/several-assessments-figures.js';
import { otherScaleOf } from '../../domain/measures/mrc-scales.js';
import { PAIR_FIGURE_IDS } from '../../domain/indicators/pair-figures.js';
import type { FigureCounter } from './figure-counter.js';
import type { MeasureOutcomes } from './report-model.js';
import type { Quarter } from './quarter.js';
import type { ConvertedPairs, DataQuality, PairsLost } from './section-models.js';

const MOST_TO_MEND = 5;

/** Completeness, lost pairs, late entry, confirmed values, entries in error, and what to mend first. */
export function dataQualitySection(
  quarter: Quarter,
  outcomes: readonly MeasureOutcomes[],
  { count }: FigureCounter,
  entriesInError: EntriesInError,
): DataQuality {
  const completeness = COMPLETENESS_FIGURES.map(count);
  const inTime = TIMELINESS_FIGURES.map(count);
  const pairsLost = pairsLostOf(quarter, outcomes);
  return {
    completeness,
    pairsLost,
    gradesConverted: outcomes.flatMap(convertedOf),
    entry: [...inTime, ...SEVERAL_ASSESSMENTS_FIGURES.map(count)],
    confirmedValues: count(CONFIRMED_VALUES_FIGURE),
    entriesInError: { ...entriesInError, words: entriesInErrorWords(entriesInError) },
    mendFirst: mendFirst(completeness, inTime, pairsLost),
  };
}

/** Of every measure, in one pass over those who started. */
function pairsLostOf(
  { cohorts, context }: Quarter,
  outcomes: readonly MeasureOutcomes[],
): readonly PairsLost[] {
  const counted = outcomes.map((outcome) => ({ outcome, counts: new Map<PairLossReason, number>() }));
  for (const course of cohorts.discharge.courses) {
    if (course.isRegisteredInError || course.startedOn === null) continue;
    const changes = context.changesOf(course);
    for (const { outcome, counts } of counted) {
      const reason = pairLossOf(course, changes.get(outcome.measureId));
      if (reason !== null) counts.set(reason, (counts.get(reason) ?? 0) + 1);
    }
  }
  return counted.map(({ outcome, counts }) => lostOf(outcome, counts));
}

function lostOf(
  { measureId, shortName, likeForLikePairsOverStarters }: MeasureOutcomes,
  counts: ReadonlyMap<PairLossReason, number>,
): PairsLost {
  return {
    measureId,
    shortName,
    figureId: likeForLikePairsOverStarters.id,
    starters: likeForLikePairsOverStarters.denominator,
    pairs: likeForLikePairsOverStarters.numerator,
    lost: PAIR_LOSS_REASONS.flatMap((reason) => {
      const referrals = counts.get(reason);
      return referrals === undefined
        ? []
        : [
            {
              reason,
              words: PAIR_LOSS_WORDS[reason],
              figureId: PAIR_FIGURE_IDS.lost(measureId, reason),
              referrals,
            },
          ];
    }),
  };
}

/** Nothing of a measure whose results are on no other scale. */
function convertedOf({
  measureId,
  shortName,
  differences,
  allPairs,
}: MeasureOutcomes): readonly ConvertedPairs[] {
  if (otherScaleOf(measureId) === null) return [];
  const pairs = differences.find(({ condition }) => condition === 'scale')?.pairs ?? 0;
  const figureId = PAIR_FIGURE_IDS.differsBy(measureId, 'scale');
  return [{ measureId, shortName, figureId, pairs, ofPairs: allPairs.pairs }];
}

/** What is missing of most referrals, each with the figure that opens to them. */
function mendFirst(
  completeness: readonly Figure[],
  entry: readonly Figure[],
  lost: readonly PairsLost[],
): DataQuality['mendFirst'] {
  const lacking = (figures: readonly Figure[], what: string): DataQuality['mendFirst'] =>
    figures.map(({ id, title, numerator, denominator }) => ({
      figureId: id,
      members: 'not-numerator' as const,
      words: `${title}: ${what} for ${denominator - numerator} of ${denominator}`,
      referrals: denominator - numerator,
    }));
  const pairs = lost.flatMap(({ shortName, starters, lost: reasons }) =>
    reasons
      .filter(({ reason }) => reason === 'not-at-discharge-assessment' || reason === 'not-like-for-like')
      .map(({ figureId, words, referrals }) => ({
        figureId,
        members: 'numerator' as const,
        words: `${shortName}: ${words}, ${referrals} of ${starters} who started`,
        referrals,
      })),
  );
  return [...lacking(completeness, 'not recorded'), ...lacking(entry, 'not so'), ...pairs]
    .filter(({ referrals }) => referrals > 0)
    .sort((a, b) => b.referrals - a.referrals)
    .slice(0, MOST_TO_MEND);
}
