import {
  funnelLimits,
  LEAST_SITES_FOR_FUNNEL,
  placeInFunnel,
} from '../../domain/statistics/funnel-limits.js';
import type { Figure } from '../../domain/indicators/figure.js';
import type { FunnelLimits } from '../../domain/statistics/funnel-limits.js';
import type { Interval } from '../../domain/statistics/interval.js';
import type { CountedBreakdown } from './breakdown-section.js';
import { LEAST_TO_CLAIM } from './earlier-quarter.js';
import type { SiteComparison } from './section-models.js';

/**
 * Sites side by side, in the order of their names. From five sites on the limits of a funnel about the pooled percentage
 * show which differ from it by more than chance, where they have enough people to say so; below, intervals only. Nothing is
 * ranked.
 */
export function sitesSection(counted: readonly CountedBreakdown[]): readonly SiteComparison[] {
  return counted.flatMap(({ whole, dimensions }): readonly SiteComparison[] => {
    const sites = dimensions.find(({ dimension }) => dimension.id === 'site')?.groups ?? [];
    // With everybody in the numerator, or nobody, the funnel is a line.
    const isSpread = whole.numerator > 0 && whole.numerator < whole.denominator;
    if (sites.length < 2 || !isSpread) return [];
    const withPeople = sites.filter(({ figure }) => figure.denominator > 0);
    const kind = withPeople.length >= LEAST_SITES_FOR_FUNNEL ? 'funnel' : 'intervals';
    const target = whole.numerator / whole.denominator;
    return [
      {
        figureId: whole.id,
        title: whole.title,
        kind,
        whole,
        sites: sites.map(({ group, figure }) => {
          const { denominator } = figure;
          const limits = kind === 'funnel' && denominator > 0 ? funnelLimits(target, denominator) : null;
          return {
            siteId: group.id,
            name: group.words,
            figure,
            limits: limits === null ? null : inPercent(limits),
            place: limits === null ? null : placeOf(figure, limits),
          };
        }),
      },
    ];
  });
}

/** Of a few people the limits are wide and say little: nothing is claimed, as of groups and periods. */
function placeOf(
  { numerator, denominator }: Figure,
  limits: FunnelLimits,
): SiteComparison['sites'][number]['place'] {
  return denominator < LEAST_TO_CLAIM ? 'too-few' : placeInFunnel(numerator, limits);
}

function inPercent({ inner, outer }: FunnelLimits): { inner: Interval; outer: Interval } {
  const percent = ({ low, high }: Interval): Interval => ({ low: 100 * low, high: 100 * high });
  return { inner: percent(inner), outer: percent(outer) };
}
