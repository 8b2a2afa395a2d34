import { britishDate } from '../../domain/calendar/british-date.js';
import { exclusionBeforeStart } from '../../domain/cohort/exclusions.js';
import type { Figure } from '../../domain/indicators/figure.js';
import { COMPETING_REASONS } from '../../domain/pathway/leaving.js';
import type { IndicatorRow, QuarterlyReport } from './report-model.js';
import type { NarrativeSentence } from './section-models.js';
import { percentOf, rounded } from './text-numbers.js';

/** What the sentences are made from. */
export type Told = Pick<
  QuarterlyReport,
  'asAt' | 'cohorts' | 'uptake' | 'indicators' | 'outcomes' | 'dataQuality' | 'provisional'
>;

const MOST_SENTENCES = 6;
const MOST_OF_A_KIND = 2;
const COMPETING_BEFORE_START: readonly string[] = COMPETING_REASONS.map(exclusionBeforeStart);

/**
 * Three to six plain sentences for the top of a report: what came of the referrals, what is below its target by more than
 * chance, what cannot be said because data are missing, and whether figures may still move.
 *
 * @param changes sentences on what differs from earlier periods by more than chance, where those were counted
 * @returns the most important first; each names the figures that it rests on
 */
export function narrativeOf(
  report: Told,
  changes: readonly NarrativeSentence[] = [],
): readonly NarrativeSentence[] {
  const first = [whatCame(report), ...belowTarget(report), ...changes.slice(0, MOST_OF_A_KIND)];
  const last = [...notKnown(report), ...mayMove(report)];
  return [...first.slice(0, MOST_SENTENCES - last.length), ...last];
}

function whatCame({ asAt, cohorts, uptake: { started } }: Told): NarrativeSentence {
  const { referrals } = cohorts.referral;
  if (referrals === 0) {
    return { text: 'No referral was received in the period.', figureIds: [started.id] };
  }
  const had =
    started.denominator === 0
      ? 'nobody had started'
      : `${shareOf(started)} of those whose wait is over had started`;
  const waiting = started.open === 0 ? [] : [`${started.open} ${are(started.open)} waiting`];
  const leftAside = started.excluded
    .filter(({ id }) => COMPETING_BEFORE_START.includes(id))
    .reduce((sum, { count }) => sum + count, 0);
  const gone = leftAside === 0 ? [] : [`${leftAside} died, moved away or were transferred before a start`];
  const text = [
    `${counted(referrals, 'referral')} ${were(referrals)} received`,
    `by ${britishDate(asAt)} ${had}`,
    ...[[...waiting, ...gone].join(', and ')].filter((each) => each !== ''),
  ].join('; ');
  return { text: `${text}.`, figureIds: [started.id] };
}

/**
 * Below a target by more than chance, however the open ones end; then what stands below it so far and lets no more be said.
 */
function belowTarget({ indicators }: Told): readonly NarrativeSentence[] {
  const judged = indicators.filter(({ isReached }) => isReached !== null);
  const notReached = judged.filter(({ isReached }) => isReached === false);
  const below = notReached.filter(({ isBeyondChance }) => isBeyondChance === true);
  const undecided = notReached.filter(({ isBeyondChance }) => isBeyondChance === null);
  if (below.length + undecided.length > 0) {
    return [...below, ...undecided].slice(0, MOST_OF_A_KIND).map((row) => ({
      text: belowTargetTold(row),
      figureIds: [row.figure.id],
    }));
  }
  if (judged.length === 0) {
    return [{ text: 'No figure of the period can be held against a target yet.', figureIds: [] }];
  }
  const figureIds = judged.map(({ figure }) => figure.id);
  return [{ text: 'No figure lies below its target by more than chance.', figureIds }];
}

function belowTargetTold({ figure, target, isBeyondChance }: IndicatorRow): string {
  const { open } = figure;
  const standing = `${figure.title}: ${shareOf(figure)}`;
  const below = `below the target of ${rounded(target?.percent ?? null, 0)} %`;
  if (isBeyondChance === true) {
    const whatever = open === 0 ? '' : `, however the ${open} still open ${open === 1 ? 'ends' : 'end'}`;
    return `${standing}, ${below} by more than chance${whatever}.`;
  }
  const why = open === 0 ? 'of so few' : `with ${open} still open`;
  return `${standing} so far, ${below}; ${why}, no more can be said.`;
}

/** Where too few were measured again for the share who improved to say much. */
function notKnown({ outcomes, dataQuality }: Told): readonly NarrativeSentence[] {
  const few = outcomes
    .filter(({ responders }) => responders !== null && responders.eligible > 0)
    .filter(({ responders }) => responders?.fewMeasured === true)
    .sort((a, b) => (b.responders?.eligible ?? 0) - (a.responders?.eligible ?? 0));
  const [worst] = few;
  if (worst?.responders !== null && worst?.responders !== undefined) {
    const { measured, eligible, worst: low, best: high } = worst.responders;
    const more = few.length - 1;
    const others =
      more === 0 ? '' : ` The same holds for ${more} other ${more === 1 ? 'measure' : 'measures'}.`;
    const text =
      `${worst.shortName}: ${measured} of ${eligible} with a baseline were measured again like for like, so the share who ` +
      `reached the threshold lies between ${rounded(low, 0)} and ${rounded(high, 0)} %, and no more can be said.${others}`;
    return [{ text, figureIds: [worst.likeForLike.midReached?.id ?? worst.pairsOverStarters.id] }];
  }
  const [mend] = dataQuality.mendFirst;
  if (mend === undefined) return [];
  return [{ text: `Most often missing in the record: ${mend.words}.`, figureIds: [mend.figureId] }];
}

function mayMove({ provisional, cohorts }: Told): readonly NarrativeSentence[] {
  const figureIds = [cohorts.referral.notClosed.id];
  if (!provisional.isProvisional) {
    return [{ text: 'Every referral received, started or discharged in the period is closed.', figureIds }];
  }
  const notes = [...(provisional.isPeriodOver ? [] : ['the period is not over']), ...provisional.notes];
  return [{ text: `The figures may still move: ${notes.join('; ')}.`, figureIds }];
}

/** @example shareOf(10 of 11) -> '90.9 % (10 of 11)' */
export function shareOf({ numerator, denominator }: Pick<Figure, 'numerator' | 'denominator'>): string {
  return denominator === 0
    ? '0 of 0'
    : `${percentOf(numerator, denominator)} (${numerator} of ${denominator})`;
}

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

function were(count: number): string {
  return count === 1 ? 'was' : 'were';
}

function are(count: number): string {
  return count === 1 ? 'is' : 'are';
}
