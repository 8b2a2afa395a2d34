import { describe, expect, it } from 'vitest';
import { changeStrips } from '../../src/plots/change-strips.js';
import { drawnElements, drawnTexts, numberAt, placeOf } from '../support/drawn.js';

const HALF_A_PIXEL = 0;
const { svg, alternative, widthPx, heightPx } = changeStrips({
  id: 's1',
  title: 'Change of each measure',
  strips: [
    { label: 'ISWD', words: '+100 m', timesMid: 2.1 },
    { label: 'CRQ emotional function', words: '\u22120.57 per item', timesMid: -1.2 },
    { label: 'MRC', words: 'no change here', timesMid: 0 },
  ],
});
const dots = drawnElements(svg, 'circle');

describe('the strips of one person', () => {
  it('put each dot where the axis says, improvement to the right, and widen the axis for a step back', () => {
    const [zero, two] = [placeOf(svg, '0').x, placeOf(svg, '2').x];
    const at = (multiple: number) => zero + ((two - zero) / 2) * multiple;
    expect(dots.map((dot) => numberAt(dot, 'cx'))).toEqual([
      expect.closeTo(at(2.1), HALF_A_PIXEL),
      expect.closeTo(at(-1.2), HALF_A_PIXEL),
      expect.closeTo(at(0), HALF_A_PIXEL),
    ]);
    expect(at(-1.2)).toBeGreaterThan(0);
  });

  it('mark no change and the MID on the line of every dot', () => {
    const upright = drawnElements(svg, 'line').filter((line) => line['x1'] === line['x2']);
    for (const dot of dots) {
      const y = numberAt(dot, 'cy');
      const marks = upright.filter((line) => numberAt(line, 'y1') < y && numberAt(line, 'y2') > y);
      expect(marks.map((line) => numberAt(line, 'x1'))).toEqual([
        expect.closeTo(placeOf(svg, '0').x, HALF_A_PIXEL),
        expect.closeTo(placeOf(svg, '1').x, HALF_A_PIXEL),
      ]);
    }
  });

  it('set the name of a measure nearer to its own dot than to that of the measure above', () => {
    const names = ['ISWD', 'CRQ emotional function', 'MRC'].map((name) => placeOf(svg, name).y);
    names.forEach((y, index) => {
      const own = numberAt(dots[index], 'cy') - y;
      expect(own).toBeGreaterThan(0);
      if (index > 0) expect(own).toBeLessThan(y - numberAt(dots[index - 1], 'cy'));
    });
  });

  it('fit a phone at their own size, with no text beyond the drawing', () => {
    expect(widthPx).toBeLessThanOrEqual(355);
    expect(svg).toContain(`viewBox="0 0 ${widthPx} ${heightPx}"`);
    for (const { x, y } of drawnTexts(svg)) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(widthPx);
      expect(y).toBeLessThanOrEqual(heightPx);
    }
  });

  it.each([2, 7, 14, 40])(
    'keep the name of no change in the drawing when a change is %s MIDs',
    (timesMid) => {
      const far = changeStrips({
        id: 's2',
        title: 'Far',
        strips: [{ label: 'CAT', words: 'far', timesMid }],
      });
      const name = placeOf(far.svg, 'no change');
      // Nine letters of 13 px, each at most half as wide as it is high, and set to end here.
      expect(name.x).toBeGreaterThan(9 * 6.5);
      expect(placeOf(far.svg, 'MID').x).toBeGreaterThan(name.x);
    },
  );

  it('have a title, their numbers in words, and no style of their own', () => {
    expect(alternative).toBe(
      'ISWD: +100 m; CRQ emotional function: \u22120.57 per item; MRC: no change here. Marked: no change. Marked: MID.',
    );
    expect(svg).toMatch(/^<svg [^>]*role="img" aria-labelledby="s1-title" aria-describedby="s1-desc"/);
    expect(svg).not.toMatch(/style=|<style|<script/);
  });
});
