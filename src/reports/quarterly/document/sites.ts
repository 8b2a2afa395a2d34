import type { Block, Section, Strip } from '../../../documents/document-model.js';
import { funnelLimits } from '../../../domain/statistics/funnel-limits.js';
import { dotPlot } from '../../../plots/dot-plot.js';
import { funnelPlot } from '../../../plots/funnel-plot.js';
import type { Plot } from '../../../plots/svg.js';
import { LEAST_TO_CLAIM } from '../earlier-quarter.js';
import type { QuarterlyReport } from '../report-model.js';
import type { SiteComparison } from '../section-models.js';
import { percentOf } from '../text-numbers.js';
import { figureTable, figureWords, interval, text } from './cells.js';
import { orNone } from './marks.js';

const LIMIT_POINTS = 40;

/** Sites side by side: within the limits of a funnel where there are enough of them, with intervals only elsewhere. */
export function sitesSection({ sites }: QuarterlyReport): Section {
  return {
    id: 'sites',
    title: 'Sites side by side',
    sheetName: 'Sites',
    blocks: [
      {
        kind: 'paragraph',
        text: 'From five sites on, limits show which differ from all sites together by more than chance; below that, intervals only. Nothing is claimed of a site where fewer than 30 are counted, and nothing is ranked.',
      },
      ...(sites.length === 0
        ? [{ kind: 'paragraph' as const, text: 'There are no two sites to compare in the period.' }]
        : sites.map(siteBlock)),
    ],
  };
}

function siteBlock(comparison: SiteComparison): Block {
  const title = `${comparison.title}, by site`;
  const isFunnel = comparison.kind === 'funnel';
  return {
    kind: 'plot',
    title,
    plot: isFunnel ? funnelOf(comparison, title) : dotsOf(comparison, title),
    ...(isFunnel ? {} : { strip: stripOf(comparison) }),
    table: figureTable(
      title,
      [
        ...comparison.sites.map(({ name, figure, limits, place }) => ({
          figure,
          label: name,
          after: isFunnel
            ? [
                orNone(figure.denominator, interval(limits?.inner ?? null, 1)),
                orNone(figure.denominator, interval(limits?.outer ?? null, 1)),
                text(PLACE_WORDS[place ?? 'none']),
              ]
            : [],
        })),
        {
          figure: comparison.whole,
          label: 'All sites',
          after: isFunnel ? [interval(null, 1), interval(null, 1), text('')] : [],
        },
      ],
      {
        first: 'Site',
        after: isFunnel
          ? [
              { head: '95 % limits', kind: 'interval' },
              { head: '99.8 % limits', kind: 'interval' },
              { head: 'Place', kind: 'text' },
            ]
          : [],
      },
    ),
  };
}

const PLACE_WORDS = {
  within: 'within chance',
  'beyond-inner': 'beyond the 95 % limits',
  'beyond-outer': 'beyond the 99.8 % limits',
  'too-few': `too few to say (fewer than ${LEAST_TO_CLAIM})`,
  none: 'nobody counted',
} as const;

function plotId({ figureId }: SiteComparison): string {
  return `plot-sites-${figureId.replaceAll('.', '-')}`;
}

function allWords({ whole }: SiteComparison): string {
  return `all sites ${percentOf(whole.numerator, whole.denominator)}`;
}

function dotsOf(comparison: SiteComparison, title: string): Plot {
  return dotPlot({
    id: plotId(comparison),
    title,
    rows: comparison.sites.map(({ name, figure }) => ({
      label: name,
      words: figureWords(figure),
      value: figure.percentage,
      interval: figure.interval,
    })),
    ...axisOf(comparison),
  });
}

function axisOf(comparison: SiteComparison): Omit<Strip, 'rows'> {
  const { percentage } = comparison.whole;
  return {
    lines: percentage === null ? [] : [{ at: percentage, label: allWords(comparison) }],
    domain: [0, 100],
    axis: '%',
  };
}

function stripOf(comparison: SiteComparison): Strip {
  const figures = [...comparison.sites.map(({ figure }) => figure), comparison.whole];
  return {
    ...axisOf(comparison),
    rows: figures.map(({ percentage, interval: ends }) => ({ value: percentage, interval: ends })),
  };
}

function funnelOf(comparison: SiteComparison, title: string): Plot {
  const { sites, whole } = comparison;
  const largest = Math.max(1, ...sites.map(({ figure }) => figure.denominator));
  const target = whole.numerator / whole.denominator;
  const step = Math.max(1, Math.ceil(largest / LIMIT_POINTS));
  const counts = [
    ...Array.from({ length: Math.floor(largest / step) }, (_, index) => 1 + index * step),
    largest,
  ].filter((count, index, all) => index === 0 || count > (all[index - 1] ?? 0));
  return funnelPlot({
    id: plotId(comparison),
    title,
    groups: sites.flatMap(({ name, figure, place }) =>
      figure.percentage === null
        ? []
        : [
            {
              label: name,
              count: figure.denominator,
              percent: figure.percentage,
              words: `${figureWords(figure)}, ${PLACE_WORDS[place ?? 'none']}`,
              isBeyond: place === 'beyond-inner' || place === 'beyond-outer',
            },
          ],
    ),
    centre: { at: 100 * target, label: allWords(comparison) },
    limits: counts.map((count) => {
      const { inner, outer } = funnelLimits(target, count);
      return { count, inner: inPercent(inner), outer: inPercent(outer) };
    }),
    axis: 'referrals counted at the site',
  });
}

function inPercent({ low, high }: { readonly low: number; readonly high: number }): {
  low: number;
  high: number;
} {
  return { low: 100 * low, high: 100 * high };
}
