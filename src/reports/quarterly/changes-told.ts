import { periodWords } from '../../domain/calendar/period-words.js';
import { STARTED_WITHIN_90_DAYS_LESS_CHOSEN_DELAY } from '../../domain/indicators/definitions/started-within-90-days-less-chosen-delay.js';
import { shareOf } from './narrative.js';
import type { PeriodComparison, ShareComparison, TrendSection } from './over-time-models.js';
import type { NarrativeSentence } from './section-models.js';
import { rounded } from './text-numbers.js';

/** It says of a wait what another figure says without pauses: the same change is told once. */
const SECOND_FIGURE = STARTED_WITHIN_90_DAYS_LESS_CHOSEN_DELAY.id;

/**
 * Sentences on what changed by more than chance: differences whose interval leaves out 0, and signals of charts that rest on
 * the report's own quarter. Empty where nothing did.
 */
export function changesTold(
  comparisons: readonly PeriodComparison[] | null,
  trend: TrendSection | null,
): readonly NarrativeSentence[] {
  return [...differencesTold(comparisons ?? []), ...(trend === null ? [] : signalsTold(trend))];
}

/**
 * The surest first, each with how many were compared: of many comparisons some are beyond chance by chance, and a sentence
 * that is picked from them must say so.
 */
function differencesTold(comparisons: readonly PeriodComparison[]): readonly NarrativeSentence[] {
  const compared = comparisons.flatMap(({ words, period, shares }) =>
    shares
      .filter(({ figureId, claim }) => claim !== 'too-few' && figureId !== SECOND_FIGURE)
      .map((share) => ({ than: `${words}, ${periodWords(period)},`, share })),
  );
  const beyond = compared.filter(({ share }) => share.claim === 'beyond-chance');
  const among = amongCompared(beyond.length, compared.length);
  return [...beyond]
    .sort((a, b) => sureness(b.share) - sureness(a.share))
    .map(({ than, share }) => ({
      text: `${differenceTold(than, share)}; ${among}.`,
      figureIds: [share.figureId],
    }));
}

/** How far a difference lies from none, in widths of its interval. */
function sureness({ difference }: ShareComparison): number {
  if (difference === null) return 0;
  const { points, interval } = difference;
  return Math.abs(points) / (interval.high - interval.low);
}

function amongCompared(beyond: number, compared: number): string {
  const found = beyond === 1 ? 'the only one so' : `one of ${beyond} so`;
  return `${found} of ${compared} compared, where chance alone makes about 1 in 20`;
}

function differenceTold(than: string, { title, now, then, difference }: ShareComparison): string {
  const points = difference === null ? '' : `: a difference of ${inPoints(difference)}`;
  return `${title}: ${shareOf(now)}; ${than} ${shareOf(then)}${points}, more than chance`;
}

function inPoints({
  points,
  interval,
}: {
  readonly points: number;
  readonly interval: { readonly low: number; readonly high: number };
}): string {
  return `${rounded(points, 0)} points (${rounded(interval.low, 0)} to ${rounded(interval.high, 0)})`;
}

function signalsTold({ charts, quarters }: TrendSection): readonly NarrativeSentence[] {
  const last = quarters.at(-1)?.period;
  if (last === undefined) return [];
  return charts.flatMap(({ title, figureId, signals }) => {
    const signal = signals.find((each) => each.quarters.includes(last.label));
    if (signal === undefined) return [];
    const text = `${title}, over ${quarters.length} quarters: ${signal.words}, ${signal.direction === 'up' ? 'upwards' : 'downwards'}, up to ${periodWords(last)}.`;
    return [{ text, figureIds: [figureId] }];
  });
}
