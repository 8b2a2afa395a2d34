import { expect, it } from 'vitest';
import type { Figure } from '../../../src/domain/indicators/figure.js';
import { buildQuarterlyReport } from '../../../src/reports/quarterly/build-quarterly-report.js';
import { quarterlyDocument } from '../../../src/reports/quarterly/document/build-document.js';
import { tablesIn } from '../../support/counts-in-document.js';
import { WORKED_INPUT } from '../../support/worked-quarter.js';

const REPORT = buildQuarterlyReport(WORKED_INPUT);

/** What the table says of a group of so many of 100, whose difference to the rest is 12 points (5 to 20). */
function claimOf(n: number, sign: 1 | -1): string | undefined {
  const [breakdown] = REPORT.breakdowns;
  if (breakdown === undefined) throw new Error('There is no breakdown.');
  const counted = (denominator: number): Figure => ({
    ...breakdown.whole,
    numerator: Math.floor(denominator / 2),
    denominator,
  });
  const interval = sign > 0 ? { low: 5, high: 20 } : { low: -20, high: -5 };
  const row = {
    group: 'one',
    words: 'one',
    figure: counted(n),
    differenceToRest: { points: 12 * sign, interval },
  };
  const dimensions = [{ dimension: 'group', title: 'Group', rows: [row] }];
  const breakdowns = [{ ...breakdown, whole: counted(100), dimensions }];
  const table = tablesIn(quarterlyDocument({ ...REPORT, breakdowns })).find(({ caption }) =>
    caption.includes(', by group'),
  );
  const place = table?.columns.findIndex(({ head }) => head === 'More than chance') ?? -1;
  return table?.rows[0]?.[place]?.text;
}

it.each([
  [29, 1, 'too few to say (fewer than 30)'],
  [30, 1, 'higher than the rest by 5.0 points or more'],
  [70, -1, 'lower than the rest by 5.0 points or more'],
  [71, -1, 'too few to say (fewer than 30)'],
] as const)('of a group of %d of 100 a breakdown says (%d): %s', (n, sign, words) => {
  expect(claimOf(n, sign)).toBe(words);
});
