import { describe, expect, it } from 'vitest';
import { changeBars } from '../../src/plots/change-bars.js';
import { controlChart } from '../../src/plots/control-chart.js';
import type { TimePoint } from '../../src/plots/control-chart.js';
import { countBars } from '../../src/plots/count-bars.js';
import { dotPlot } from '../../src/plots/dot-plot.js';
import { besideMarks } from '../../src/plots/beside-marks.js';
import { funnelPlot } from '../../src/plots/funnel-plot.js';
import { incidenceBands } from '../../src/plots/incidence-bands.js';
import { stepBars } from '../../src/plots/step-bars.js';
import { escaped } from '../../src/plots/svg.js';
import type { Plot } from '../../src/plots/svg.js';
import { TONES } from '../../src/plots/tones.js';
import { drawnElements, drawnTexts, numberAt, placeOf } from '../support/drawn.js';

const FRAME = { id: 'p1', title: 'Site <Dune> & "Hall"' };

/** Where a value must lie by the ticks of its axis, which are read from the drawing itself. */
function between(
  value: number,
  [low, atLow]: readonly [number, number],
  [high, atHigh]: readonly [number, number],
): number {
  return atLow + ((value - low) / (high - low)) * (atHigh - atLow);
}

/** As `toBeCloseTo` has it. Drawings are rounded to tenths of a pixel. */
const HALF_A_PIXEL = 0;

describe('the funnel of steps', () => {
  const { svg } = stepBars({
    ...FRAME,
    steps: [
      { label: 'Referred', count: 100, left: 20, open: 10 },
      { label: 'Started', count: 70, left: 0, open: 0 },
    ],
  });

  it('draws bars from zero, and the parts of a step end to end', () => {
    const [stayed, open, left, second] = drawnElements(svg, 'rect');
    const unit = numberAt(stayed, 'width') / 70;
    expect(numberAt(stayed, 'x')).toBe(0);
    expect(numberAt(open, 'x')).toBeCloseTo(70 * unit, HALF_A_PIXEL);
    expect(numberAt(open, 'width')).toBeCloseTo(10 * unit, HALF_A_PIXEL);
    expect(numberAt(left, 'x')).toBeCloseTo(80 * unit, HALF_A_PIXEL);
    expect(numberAt(left, 'width')).toBeCloseTo(20 * unit, HALF_A_PIXEL);
    expect(numberAt(second, 'width')).toBeCloseTo(70 * unit, HALF_A_PIXEL);
  });

  it('says what the parts are', () => {
    expect(svg).toContain('Referred: 100 (10 still at it, 20 left after it); Started: 70.');
  });
});

describe('bars of counts', () => {
  const { svg, alternative } = countBars({
    ...FRAME,
    rows: [
      { label: 'completed', words: '30', value: 30 },
      { label: 'did not complete', words: '15', value: 15 },
      { label: 'still open', words: 'not shown', value: null },
      { label: 'moved away', words: '0', value: 0 },
    ],
  });

  it('draws each from zero at one scale, and nothing for what is not shown or is none', () => {
    const bars = drawnElements(svg, 'rect');
    expect(bars).toHaveLength(2);
    expect(new Set(bars.map((bar) => numberAt(bar, 'x'))).size).toBe(1);
    expect(numberAt(bars[0], 'width')).toBeCloseTo(2 * numberAt(bars[1], 'width'), HALF_A_PIXEL);
  });

  it('names every one, above its bar and in words', () => {
    const [first, second] = drawnElements(svg, 'rect');
    expect(placeOf(svg, 'completed: 30').y).toBeLessThan(numberAt(first, 'y'));
    expect(placeOf(svg, 'did not complete: 15').y).toBeLessThan(numberAt(second, 'y'));
    expect(alternative).toBe('completed: 30; did not complete: 15; still open: not shown; moved away: 0.');
  });
});

describe('dots with intervals', () => {
  const { svg, alternative } = dotPlot({
    ...FRAME,
    rows: [
      { label: 'A', words: '60 % (40 to 80), n = 20', value: 60, interval: { low: 40, high: 80 } },
      { label: 'B', words: 'n = 0', value: null, interval: null },
    ],
    lines: [{ at: 50, label: 'all 50 %' }],
    domain: [0, 100],
    axis: '%',
  });

  it('puts the dot and both ends of its interval where the axis says', () => {
    const zero = [0, placeOf(svg, '0').x] as const;
    const hundred = [100, placeOf(svg, '100').x] as const;
    const [dot, ...more] = drawnElements(svg, 'circle');
    expect(more).toEqual([]);
    expect(numberAt(dot, 'cx')).toBeCloseTo(between(60, zero, hundred), HALF_A_PIXEL);
    const bar = drawnElements(svg, 'line').find((line) => Number(line['y1']) === numberAt(dot, 'cy'));
    expect(numberAt(bar, 'x1')).toBeCloseTo(between(40, zero, hundred), HALF_A_PIXEL);
    expect(numberAt(bar, 'x2')).toBeCloseTo(between(80, zero, hundred), HALF_A_PIXEL);
  });

  it('leads a line down to the axis, but for the words that it would cross', () => {
    const pathThrough = (at: number): string => {
      const drawn = dotPlot({
        ...FRAME,
        rows: [
          { label: 'A', words: '60 % (40 to 80), n = 20', value: 60, interval: { low: 40, high: 80 } },
          { label: 'B', words: 'n = 0', value: null, interval: null },
        ],
        lines: [{ at, label: 'all' }],
        domain: [0, 100],
        axis: '%',
      });
      return String(drawnElements(drawn.svg, 'path')[0]?.['d']);
    };
    // The rows begin at 24 and 59, each with its words in the first 18 px; the axis is at 100.
    expect(pathThrough(50)).toMatch(/^M[\d.]+ 16V100$/);
    expect(pathThrough(80)).toMatch(/^M[\d.]+ 16V26M[\d.]+ 42V100$/);
  });

  it('names a row without a value all the same', () => {
    expect(alternative).toBe('A: 60 % (40 to 80), n = 20; B: n = 0. Marked: all 50 %.');
  });

  it('widens for an interval beyond what it must cover', () => {
    const wide = dotPlot({
      ...FRAME,
      rows: [{ label: 'A', words: '', value: 1, interval: { low: -3, high: 5 } }],
      lines: [],
      domain: [0, 1],
      axis: 'MID',
    });
    for (const line of drawnElements(wide.svg, 'line')) {
      expect(numberAt(line, 'x1')).toBeGreaterThanOrEqual(0);
      expect(numberAt(line, 'x2')).toBeLessThanOrEqual(340);
    }
  });
});

describe('dots held to a target', () => {
  it('mark it on the row at its place by the axis, which it widens', () => {
    const { svg } = dotPlot({
      ...FRAME,
      rows: [
        { label: 'A', words: '60 %, target 85 %', value: 60, interval: { low: 40, high: 80 }, target: 85 },
      ],
      lines: [],
      domain: [0, 50],
      axis: '%',
    });
    const zero = placeOf(svg, '0').x;
    const unit = (numberAt(drawnElements(svg, 'circle')[0], 'cx') - zero) / 60;
    const upright = drawnElements(svg, 'line').filter((line) => line['x1'] === line['x2']);
    const [mark, ...others] = upright.filter((line) => numberAt(line, 'y2') - numberAt(line, 'y1') === 18);
    expect(others).toEqual([]);
    expect(numberAt(mark, 'x1')).toBeCloseTo(zero + 85 * unit, HALF_A_PIXEL);
  });
});

describe('the spread of changes', () => {
  const classes = [
    { from: -4, to: -2, count: 4 },
    { from: -2, to: 0, count: 2 },
    { from: 0, to: 2, count: 1 },
  ];
  const drawnFor = (betterWhen: 'higher' | 'lower', at: number): string =>
    changeBars({ ...FRAME, classes, betterWhen, mid: { at, label: 'MID' }, axis: 'points' }).svg;

  it('has improvement on the right whichever way the measure runs', () => {
    const lower = drawnFor('lower', -2);
    expect(placeOf(lower, 'MID').x).toBeGreaterThan(placeOf(lower, 'no change').x);
    const higher = drawnFor('higher', 2);
    expect(placeOf(higher, 'MID').x).toBeGreaterThan(placeOf(higher, 'no change').x);
    expect(numberAt(drawnElements(lower, 'rect')[0], 'x')).toBeGreaterThan(
      numberAt(drawnElements(lower, 'rect')[2], 'x'),
    );
  });

  it('says which end is in a class, and names no change away from the threshold', () => {
    expect(drawnFor('lower', -2)).toContain('above \u22124 up to \u22122: 4');
    expect(drawnFor('higher', 2)).toContain('\u22124 to below \u22122: 4');
    const svg = drawnFor('lower', -2);
    expect(svg).toMatch(/text-anchor="end"[^>]*>no change</);
  });

  it('draws bars from zero, as high as they are many', () => {
    const [four, two, one] = drawnElements(drawnFor('lower', -2), 'rect').map((bar) =>
      numberAt(bar, 'height'),
    );
    expect(four).toBeCloseTo(2 * (two ?? NaN), HALF_A_PIXEL);
    expect(two).toBeCloseTo(2 * (one ?? NaN), HALF_A_PIXEL);
  });

  it('draws the line of the MID where the axis has it', () => {
    const svg = drawnFor('lower', -3);
    const dashed = drawnElements(svg, 'line').find((line) => line['stroke-dasharray'] === '6 4');
    const minusFour = drawnTexts(svg).find(({ text }) => text === '\u22124')?.x ?? NaN;
    const minusTwo = drawnTexts(svg).find(({ text }) => text === '\u22122')?.x ?? NaN;
    expect(numberAt(dashed, 'x1')).toBeCloseTo((minusFour + minusTwo) / 2, HALF_A_PIXEL);
  });
});

describe('the bands of waiting', () => {
  const model = {
    ...FRAME,
    points: [
      { day: 30, reached: 20, left: 10 },
      { day: 90, reached: 60, left: 30 },
    ],
    marks: [{ day: 90, percent: 60, low: 50, high: 70 }],
    ticks: [0, 30, 90, 180],
    words: { reached: 'started', waiting: 'waiting', left: 'left' },
    days: 'days from receipt',
  };
  const { svg } = incidenceBands(model);

  it('marks an estimate with its interval where the axes say', () => {
    const [dot] = drawnElements(svg, 'circle');
    const fromText = (text: string): number => placeOf(svg, text).y - 4;
    expect(numberAt(dot, 'cx')).toBeCloseTo(placeOf(svg, '90').x, HALF_A_PIXEL);
    expect(numberAt(dot, 'cy')).toBeCloseTo(
      between(60, [25, fromText('25')], [100, fromText('100')]),
      HALF_A_PIXEL,
    );
    const bar = drawnElements(svg, 'line').find(
      (line) => line['x1'] === line['x2'] && line['x1'] === dot?.['cx'] && line['y1'] !== '264',
    );
    expect(numberAt(bar, 'y1') - numberAt(bar, 'y2')).toBeCloseTo(
      (20 / 75) * (fromText('25') - fromText('100')),
      HALF_A_PIXEL,
    );
  });

  it('says at its right edge what had become of everybody, each line apart from the next', () => {
    const ys = ['started 60.0 %', 'waiting 10.0 %', 'left 30.0 %'].map((text) => placeOf(svg, text).y);
    expect([...ys].sort((a, b) => b - a)).toEqual(ys);
    const crowded = incidenceBands({ ...model, points: [{ day: 30, reached: 1, left: 98 }] }).svg;
    const apart = ['started 1.0 %', 'waiting 1.0 %', 'left 98.0 %'].map((text) => placeOf(crowded, text).y);
    expect((apart[0] ?? 0) - (apart[1] ?? 0)).toBeGreaterThan(15.9);
    expect((apart[1] ?? 0) - (apart[2] ?? 0)).toBeGreaterThan(15.9);
  });
});

describe('the chart over time', () => {
  const point = (label: string, value: number | null, more: Partial<TimePoint> = {}): TimePoint => ({
    label,
    mark: label.slice(-2),
    group: label.slice(0, -3),
    value,
    lower: 20,
    upper: 80,
    isSignal: false,
    isProvisional: false,
    ...more,
  });
  const { svg, alternative } = controlChart({
    ...FRAME,
    points: [
      point('2025-26-Q3', 50),
      point('2025-26-Q4', null),
      point('2026-27-Q1', 90, { isSignal: true }),
      point('2026-27-Q2', 50, { isProvisional: true }),
    ],
    centre: { at: 50, label: 'mean 50 %' },
    axis: '%',
    domain: [0, 100],
    places: 0,
    note: 'Q1 is April to June',
    signals: ['2026-27-Q1: a point outside its limits'],
  });

  it('draws a signal as another shape, a provisional point hollow, and nothing for a period without a value', () => {
    const circles = drawnElements(svg, 'circle');
    expect(circles.map(({ class: look }) => look)).toEqual([
      'fill-kelp stroke-kelp',
      'fill-paper stroke-kelp',
    ]);
    expect(drawnElements(svg, 'path').filter(({ d }) => /l7 7l-7 7l-7-7z$/.test(d ?? ''))).toHaveLength(1);
    expect(alternative).toBe(
      '2025-26-Q3: 50; 2025-26-Q4: no value; 2026-27-Q1: 90; 2026-27-Q2: 50 (provisional). mean 50 %. 2026-27-Q1: a point outside its limits.',
    );
  });

  it('has time from left to right, and equal values at one height', () => {
    const [first, last] = drawnElements(svg, 'circle');
    expect(numberAt(first, 'cx')).toBeLessThan(numberAt(last, 'cx'));
    expect(numberAt(first, 'cy')).toBe(numberAt(last, 'cy'));
    const centre = drawnElements(svg, 'line').find((line) => line['class'] === 'stroke-ink');
    expect(numberAt(centre, 'y1')).toBe(numberAt(first, 'cy'));
  });
});

describe('the axis of the chart over time', () => {
  it('names each quarter below its point and each year once, below the middle of its quarters', () => {
    const { svg } = controlChart({
      ...FRAME,
      points: ['2025-26-Q4', '2026-27-Q1', '2026-27-Q2'].map((label) => ({
        label,
        mark: label.slice(-2),
        group: label.slice(0, -3),
        ...{ value: 1, lower: null, upper: null, isSignal: false, isProvisional: false },
      })),
      centre: null,
      axis: 'days',
      domain: [0, 2],
      places: 0,
      note: 'Q1 is April to June',
      signals: [],
    });
    const dots = drawnElements(svg, 'circle').map((dot) => numberAt(dot, 'cx'));
    expect(['Q4', 'Q1', 'Q2'].map((mark) => placeOf(svg, mark).x)).toEqual(dots);
    expect(placeOf(svg, '2025-26').x).toBe(dots[0]);
    expect(placeOf(svg, '2026-27').x).toBeCloseTo(((dots[1] ?? 0) + (dots[2] ?? 0)) / 2, HALF_A_PIXEL);
    expect(placeOf(svg, 'Q1 is April to June').y).toBeGreaterThan(placeOf(svg, '2026-27').y);
  });
});

describe('the funnel of sites', () => {
  const { svg } = funnelPlot({
    ...FRAME,
    groups: [
      { label: 'Dune', count: 50, percent: 60, words: '60 %', isBeyond: false },
      { label: 'Marsh', count: 100, percent: 20, words: '20 %', isBeyond: true },
    ],
    centre: { at: 50, label: 'all 50 %' },
    limits: [
      { count: 10, inner: { low: 20, high: 80 }, outer: { low: 10, high: 90 } },
      { count: 100, inner: { low: 40, high: 60 }, outer: { low: 35, high: 65 } },
    ],
    axis: 'referrals',
  });

  it('puts a site at its number and its percentage, and marks by shape who lies beyond', () => {
    const [dot] = drawnElements(svg, 'circle');
    const [beyond, ...more] = drawnElements(svg, 'rect').filter((rect) => 'transform' in rect);
    expect(more).toEqual([]);
    const twenty = [20, placeOf(svg, '20').x] as const;
    const eighty = [80, placeOf(svg, '80').x] as const;
    expect(numberAt(dot, 'cx')).toBeCloseTo(between(50, twenty, eighty), HALF_A_PIXEL);
    expect(numberAt(beyond, 'x') + 5).toBeCloseTo(between(100, twenty, eighty), HALF_A_PIXEL);
    const middle = drawnElements(svg, 'line').find((line) => line['class'] === 'stroke-ink');
    expect(numberAt(dot, 'cy')).toBeLessThan(numberAt(middle, 'y1'));
    expect(numberAt(beyond, 'y') + 5).toBeGreaterThan(numberAt(middle, 'y1'));
  });

  it('writes no name across another, across a mark, or out of the drawing, however near the sites are', () => {
    const crowded = funnelPlot({
      ...FRAME,
      groups: [
        { label: 'Gorse Hall in Samphire', count: 8, percent: 80, words: '', isBeyond: false },
        { label: 'Old Beacon Rooms', count: 10, percent: 76, words: '', isBeyond: false },
        { label: 'Saltmarsh Centre', count: 10, percent: 81, words: '', isBeyond: true },
        { label: 'Lagoon House', count: 11, percent: 79, words: '', isBeyond: false },
        { label: 'Pebble Hall', count: 100, percent: 100, words: '', isBeyond: false },
        { label: 'Shingle Rooms', count: 100, percent: 98, words: '', isBeyond: false },
      ],
      centre: { at: 80, label: 'all 80 %' },
      limits: [],
      axis: 'referrals',
    });
    const grounds = drawnElements(crowded.svg, 'rect').filter((rect) => !('transform' in rect));
    const marks = drawnElements(crowded.svg, 'circle');
    expect([grounds.length, marks.length]).toEqual([6, 5]);
    const boxes = grounds.map((ground) => {
      const [left, top] = [numberAt(ground, 'x'), numberAt(ground, 'y')];
      return {
        left,
        top,
        right: left + numberAt(ground, 'width'),
        bottom: top + numberAt(ground, 'height'),
      };
    });
    boxes.forEach((box, index) => {
      expect(box.left).toBeGreaterThan(0);
      expect(box.right).toBeLessThanOrEqual(crowded.widthPx);
      const near = (other: typeof box): boolean =>
        box.left < other.right && other.left < box.right && box.top < other.bottom && other.top < box.bottom;
      expect(boxes.filter((other, at) => at !== index && near(other))).toEqual([]);
      const covered = marks.filter((mark) => {
        const [x, y] = [numberAt(mark, 'cx'), numberAt(mark, 'cy')];
        return x > box.left && x < box.right && y > box.top && y < box.bottom;
      });
      expect(covered).toEqual([]);
    });
  });
});

describe('names beside their marks', () => {
  const within = { left: 40, right: 340, top: 40, bottom: 316 };

  it('find room above and below where there are many, however wide they are', () => {
    const marks = Array.from({ length: 12 }, (_, index) => ({
      text: `Community Hall number ${index} at the Long Causeway`,
      x: 60 + index * 20,
      y: 150 + (index % 3) * 4,
    }));
    const rooms = besideMarks(marks, within).map(({ room }) => room);
    rooms.forEach((room, index) => {
      expect(room.left).toBeGreaterThanOrEqual(within.left);
      expect(room.right).toBeLessThanOrEqual(within.right);
      const inTheWay = [
        ...rooms.slice(index + 1),
        ...marks.map(({ x, y }) => ({ left: x, right: x, top: y, bottom: y })),
      ].filter(
        (other) =>
          room.left < other.right &&
          other.left < room.right &&
          room.top < other.bottom &&
          other.top < room.bottom,
      );
      expect(inTheWay).toEqual([]);
    });
  });

  it('stand on the level of their marks where there is room', () => {
    const [near, far] = besideMarks(
      [
        { text: 'Dune', x: 100, y: 100 },
        { text: 'Marsh', x: 335, y: 200 },
      ],
      within,
    );
    expect(near?.middle).toBe(100);
    expect(near?.room.left).toBeGreaterThan(100);
    expect(far?.middle).toBe(200);
    expect(far?.room.right).toBeLessThan(335);
  });
});

const PLOTS: readonly (readonly [string, Plot])[] = [
  ['stepBars', stepBars({ ...FRAME, steps: [{ label: '<b>', count: 1, left: 0, open: 0 }] })],
  ['countBars', countBars({ ...FRAME, rows: [{ label: '<b>', words: '<i>', value: 1 }] })],
  ['empty countBars', countBars({ ...FRAME, rows: [] })],
  ['empty stepBars', stepBars({ ...FRAME, steps: [] })],
  [
    'dotPlot',
    dotPlot({
      ...FRAME,
      rows: [{ label: '<b>', words: '"&"', value: 1, interval: null }],
      lines: [{ at: 0, label: '<i>' }],
      domain: [0, 1],
      axis: '<u>',
    }),
  ],
  ['empty dotPlot', dotPlot({ ...FRAME, rows: [], lines: [], domain: [0, 100], axis: '%' })],
  ['changeBars', changeBars({ ...FRAME, classes: [], betterWhen: 'lower', mid: null, axis: '<u>' })],
  [
    'controlChart',
    controlChart({
      ...FRAME,
      points: [],
      centre: null,
      axis: '<u>',
      domain: null,
      places: 0,
      note: '',
      signals: [],
    }),
  ],
  [
    'funnelPlot',
    funnelPlot({ ...FRAME, groups: [], centre: { at: 0, label: '<i>' }, limits: [], axis: '<u>' }),
  ],
  [
    'incidenceBands',
    incidenceBands({
      ...FRAME,
      points: [],
      marks: [],
      ticks: [0, 180],
      words: { reached: '<b>', waiting: '<b>', left: '<b>' },
      days: '<u>',
    }),
  ],
];

describe.each(PLOTS)('%s', (_, { svg }) => {
  it('escapes whatever it is given, and is well formed where there is nothing', () => {
    expect(svg).toContain('<title id="p1-title">Site &lt;Dune&gt; &amp; &quot;Hall&quot;</title>');
    expect(svg).not.toMatch(/<[biu]>/);
    expect(svg).not.toMatch(/NaN|Infinity|undefined|null/);
    const opened = svg.match(/<[a-z]+(?: [\w:-]+="[^"<]*")*>/g)?.length;
    expect(svg.match(/<\/[a-z]+>/g)?.length).toBe(opened);
  });

  it('has a title, its numbers in words, and no style of its own', () => {
    expect(svg).toMatch(/^<svg [^>]*role="img" aria-labelledby="p1-title" aria-describedby="p1-desc"/);
    expect(svg).toContain('<desc id="p1-desc">');
    expect(svg).not.toMatch(/style=|<style|<script/);
  });
});

describe('the colours', () => {
  it.each([
    ['ink', 4.5],
    ['slate', 4.5],
    ['line', 3],
    ['kelp', 4.5],
    ['rust', 4.5],
    ['amber', 4.5],
    ['plum', 4.5],
  ] as const)('%s stands out from paper by %s', (tone, least) => {
    expect(contrast(TONES[tone], TONES.paper)).toBeGreaterThanOrEqual(least);
  });
});

describe('escaped', () => {
  it('turns what would be markup into text', () => {
    expect(escaped('a < b & "c" > d')).toBe('a &lt; b &amp; &quot;c&quot; &gt; d');
  });
});

/** By the formula of WCAG 2.2. */
function contrast(one: string, other: string): number {
  const [darker = 0, lighter = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (lighter + 0.05) / (darker + 0.05);
}

function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const share = parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
