import { periodWords } from '../../domain/calendar/period-words.js';
import { STARTED_WITHIN_90_DAYS_LESS_CHOSEN_DELAY } from '../../domain/indicators/definitions/started-within-90-days-less-chosen-delay.js';
import { placesFor } from '../../domain/measures/shown-value.js';
import type { Interval } from '../../domain/statistics/interval.js';
import { shareOf } from './narrative.js';
import type {
  Claim,
  MeanComparison,
  PeriodComparison,
  ShareComparison,
  TrendSection,
} from './over-time-models.js';
import type { NarrativeSentence } from './section-models.js';
import { range, rounded } from './text-numbers.js';

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

/** One figure or mean that was compared: what may be said of it, and how sure it is. */
interface Compared {
  readonly claim: Claim;
  /** How far the difference lies from none, in widths of its interval. */
  readonly sureness: number;
  readonly figureId: string;
  readonly text: string;
}

/**
 * The surest first, each with how many were compared: of many comparisons some are beyond chance by chance, and a sentence
 * that is picked from them must say so.
 */
function differencesTold(comparisons: readonly PeriodComparison[]): readonly NarrativeSentence[] {
  const compared = comparisons.flatMap(comparedWith).filter(({ claim }) => claim !== 'too-few');
  const beyond = compared.filter(({ claim }) => claim === 'beyond-chance');
  const found = beyond.length === 1 ? 'the only one such' : `one of ${beyond.length} such`;
  const among = `${found} among ${compared.length} compared, where chance alone makes about 1 in 20`;
  return [...beyond]
    .sort((a, b) => b.sureness - a.sureness)
    .map(({ text, figureId }) => ({ text: `${text}, more than chance; ${among}.`, figureIds: [figureId] }));
}

function comparedWith({ words, period, shares, means }: PeriodComparison): readonly Compared[] {
  const than = `${words}, ${periodWords(period)},`;
  return [
    ...shares
      .filter(({ figureId }) => figureId !== SECOND_FIGURE)
      .map((share) => ({
        claim: share.claim,
        sureness:
          share.difference === null ? 0 : widthsFromNone(share.difference.points, share.difference.interval),
        figureId: share.figureId,
        text: shareTold(than, share),
      })),
    ...means.map((mean) => ({
      claim: mean.claim,
      sureness:
        mean.difference === null ? 0 : widthsFromNone(mean.difference.value, mean.difference.interval),
      figureId: mean.figureId,
      text: meanTold(than, mean),
    })),
  ];
}

function widthsFromNone(difference: number, { low, high }: Interval): number {
  return Math.abs(difference) / (high - low);
}

function shareTold(than: string, { title, now, then, difference }: ShareComparison): string {
  const points = difference === null ? '' : `: a difference of ${inPoints(difference)}`;
  return `${title}: ${shareOf(now)}; ${than} ${shareOf(then)}${points}`;
}

function meanTold(than: string, { shortName, unit, now, then, difference }: MeanComparison): string {
  const places = placesFor(unit);
  const size = (value: number | null): string => rounded(value, places);
  const apart =
    difference === null
      ? ''
      : `: a difference of ${size(difference.value)} (${range(difference.interval, places)})`;
  return `${shortName}, mean change in ${unit}: ${size(now.mean)} (${now.n} pairs); ${than} ${size(then.mean)} (${then.n} pairs)${apart}`;
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
