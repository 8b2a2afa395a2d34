import { changeBars } from '../../src/plots/change-bars.js';
import { changeStrips } from '../../src/plots/change-strips.js';
import { controlChart } from '../../src/plots/control-chart.js';
import { countBars } from '../../src/plots/count-bars.js';
import { dotPlot } from '../../src/plots/dot-plot.js';
import { funnelPlot } from '../../src/plots/funnel-plot.js';
import { incidenceBands } from '../../src/plots/incidence-bands.js';
import { stepBars } from '../../src/plots/step-bars.js';
import type { Plot, PlotFrame } from '../../src/plots/svg.js';

const SITES = [
  'Dune Hall',
  'Old Beacon Rooms',
  'Saltmarsh Centre',
  'Community Hall at the Long Causeway',
  'Harbour',
  'Lighthouse Leisure Centre',
  'Creek',
  'Mill',
];

const frame = (id: string): PlotFrame => ({ id: `hard-${id}`, title: id });

/** Every kind of drawing with what is hardest to find room for: long names, large numbers, close lines, sites alike. */
export const HARD_PLOTS: readonly Plot[] = [
  stepBars({
    ...frame('steps'),
    steps: [
      { label: 'Referred', count: 1066, left: 16, open: 1 },
      { label: 'Accepted at triage and offered a first appointment', count: 1049, left: 122, open: 133 },
      { label: 'Started (first supervised session attended)', count: 680, left: 205, open: 107 },
    ],
  }),
  countBars({
    ...frame('counts'),
    rows: [{ label: 'of these, completed by the reading of the team', words: 'not shown', value: null }],
  }),
  dotPlot({
    ...frame('groups'),
    rows: [
      {
        label: 'Ethnic group: mixed or multiple ethnic groups, any other background',
        words: '62.1 % (50.1 to 72.9), n = 1066',
        value: 62.1,
        interval: { low: 50.1, high: 72.9 },
      },
      { label: 'Sex: female', words: '5.0 % (1.2 to 12.4), n = 26', value: 5, interval: null, target: 70 },
    ],
    lines: [{ at: 3.2, label: 'all 3.2 %' }],
    domain: [0, 100],
    axis: '% of those who started',
  }),
  dotPlot({
    ...frame('measures'),
    rows: [
      {
        label: 'CRQ emotional function',
        words: '\u22120.15 (\u22120.34 to 0.04) mean item score, n = 128',
        value: 9,
        interval: { low: 2, high: 14 },
      },
    ],
    lines: [
      { at: 0, label: 'no change' },
      { at: 1, label: 'MID' },
    ],
    domain: [0, 2],
    axis: 'mean improvement in MIDs; better to the right',
  }),
  ...[35, 70].map((mid) =>
    changeBars({
      ...frame(`changes-${mid}`),
      classes: [
        { from: 0, to: 10, count: 3 },
        { from: 10, to: 20, count: 117 },
        { from: 70, to: 80, count: 1 },
      ],
      betterWhen: 'higher',
      mid: { at: mid, label: `MID ${mid} mean item score` },
      axis: 'change, mean item score',
    }),
  ),
  controlChart({
    ...frame('quarters'),
    points: Array.from({ length: 12 }, (_, index) => ({
      label: `quarter ${index}`,
      mark: `Q${((index + 1) % 4) + 1}`,
      group: `20${23 + Math.floor((index + 1) / 4)}-${24 + Math.floor((index + 1) / 4)}`,
      value: 40 + index,
      lower: 20,
      upper: 80,
      isSignal: index === 4,
      isProvisional: index === 11,
    })),
    centre: { at: 50, label: 'all quarters together 52.4 %; limits dashed, the lower cut off at 0' },
    axis: '%',
    domain: [0, 100],
    places: 1,
    note: 'Q1 is April to June, Q2 July to September, Q3 October to December, Q4 January to March',
    signals: [],
  }),
  funnelPlot({
    ...frame('sites'),
    groups: SITES.map((label, index) => ({
      label,
      count: 20 + index * 13,
      percent: 58 + ((index * 7) % 6),
      words: '',
      isBeyond: index === 5,
    })),
    centre: { at: 60, label: 'all sites 60.0 %' },
    limits: [],
    axis: 'referrals counted at the site',
  }),
  incidenceBands({
    ...frame('waiting'),
    points: [{ day: 180, reached: 63, left: 36.5 }],
    marks: [{ day: 180, percent: 63, low: 50, high: 75 }],
    ticks: [0, 30, 60, 90, 120, 180],
    words: { reached: 'started', waiting: 'waiting', left: 'left' },
    days: 'days from receipt of the referral',
  }),
  changeStrips({
    ...frame('strips'),
    strips: [
      { label: 'CRQ emotional function', words: '\u22120.57 mean item score', timesMid: -1.2 },
      { label: 'ISWD', words: '+100 m', timesMid: 14 },
    ],
  }),
];
