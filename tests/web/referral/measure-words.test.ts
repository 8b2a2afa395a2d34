import { describe, expect, it } from 'vitest';
import { fraction } from '../../../src/domain/exact/fraction.js';
import { gpLetter } from '../../../src/reports/letters/gp-letter.js';
import { ChangeFigure } from '../../../src/web/referral/change-figure.js';
import { aResult, anAssessment, anMrc } from '../../support/facts.js';
import { letterInput } from '../../support/letter.js';
import { tablesInPage } from '../../support/read-tables.js';

/** Somebody whose CAT was made up for items that were not answered: 64/3 points, then 64/3 less the given change. */
function course(mrc: readonly [number, number], catChange: readonly [number, number] = [-13, 7]) {
  const cat = { conditions: { questionnaire: 'copd-assessment-test' } };
  const [numerator, denominator] = catChange;
  const second = fraction(64 * denominator + 3 * numerator, 3 * denominator);
  return letterInput({
    assessments: [
      anAssessment('baseline', '2026-04-20', [anMrc(mrc[0]), aResult('cat-total', fraction(64, 3), cat)]),
      anAssessment('discharge', '2026-06-15', [anMrc(mrc[1]), aResult('cat-total', second, cat)]),
    ],
  });
}

/** The row of a measure on the page, and what the drawing says of it. */
async function shownOn(input: ReturnType<typeof letterInput>, name: string) {
  const html = await ChangeFigure({ outcomes: input.outcomes });
  const row = tablesInPage(html)[0]?.rows.find(([first = '']) => first.startsWith(name)) ?? [];
  return { row, drawing: /<desc[^>]*>([^<]*)<\/desc>/.exec(html)?.[1] ?? '' };
}

describe('a grade of breathlessness on the page', () => {
  it.each([
    [[4, 3], '\u22121', 'MRC: \u22121\u00a0grade.', 'improved by the MID or more'],
    [[4, 2], '\u22122', 'MRC: \u22122\u00a0grades.', 'improved by the MID or more'],
    [[3, 3], '0', 'MRC: no change.', 'less than the MID either way'],
    [[3, 4], '+1', 'MRC: +1\u00a0grade.', 'worse by the MID or more'],
  ] as const)(
    'of %j is told with its scale and the change as one says it',
    async (grades, change, drawn, words) => {
      const { row, drawing } = await shownOn(course(grades), 'MRC');
      expect(row[0]).toContain('grades 1 to 5, lower is better');
      expect(row[3]).toBe(change);
      expect(row[4]).toContain(words);
      expect(row[5]).toContain('1 grade,');
      expect(drawing).toContain(drawn);
    },
  );
});

describe('a score that was made up for items not answered', () => {
  it('has one decimal on the page and in the letter', async () => {
    const input = course([3, 3]);
    const { row } = await shownOn(input, 'COPD Assessment Test');
    expect(row.slice(1, 4)).toEqual(['21.320 April 2026', '19.515 June 2026', '\u22121.9']);
    const table = gpLetter(input).blocks.find(({ kind }) => kind === 'table');
    const letter = table?.kind === 'table' ? table.rows.find(([name = '']) => name.startsWith('COPD')) : [];
    expect(letter?.slice(1, 4)).toEqual(['21.3 (20 April 2026)', '19.5 (15 June 2026)', '-1.9 points']);
  });

  it('that falls just short of the MID is not shown as if it had reached it', async () => {
    // 2 points less a fiftieth: to one decimal it would read as 2.
    const input = course([3, 3], [-99, 50]);
    const { row } = await shownOn(input, 'COPD Assessment Test');
    expect(row[3]).toBe('\u22121.98');
    expect(row[4]).toContain('less than the MID either way');
  });
});
