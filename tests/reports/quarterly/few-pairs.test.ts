import { describe, expect, it } from 'vitest';
import { buildQuarterlyReport } from '../../../src/reports/quarterly/build-quarterly-report.js';
import { outcomesSection } from '../../../src/reports/quarterly/document/outcomes.js';
import { WORKED_INPUT } from '../../support/worked-quarter.js';

const REPORT = buildQuarterlyReport(WORKED_INPUT);
const PARTS = outcomesSection(REPORT).blocks.flatMap((block) => (block.kind === 'part' ? [block] : []));

describe('the spread of changes', () => {
  it.each(REPORT.outcomes.map((outcome) => [outcome.shortName, outcome] as const))(
    'of %s is drawn from five pairs on, and its table is given whatever they are',
    (_, { measureId, shortName, likeForLike }) => {
      const blocks = PARTS.find(({ id }) => id === measureId)?.blocks ?? [];
      const isDrawn = blocks.some(({ kind }) => kind === 'plot');
      const isSaid = blocks.some(
        (block) => block.kind === 'paragraph' && /^Fewer than 5 pairs/.test(block.text),
      );
      const tables = blocks.flatMap((block) =>
        block.kind === 'table' || block.kind === 'plot' ? [block.table.caption] : [],
      );
      expect(isDrawn).toBe(likeForLike.pairs >= 5);
      expect(isSaid).toBe(likeForLike.pairs > 0 && likeForLike.pairs < 5);
      expect(tables.includes(`${shortName}: pairs by change`)).toBe(likeForLike.pairs > 0);
    },
  );

  it('is seen here from both sides', () => {
    const drawn = REPORT.outcomes.filter(({ likeForLike }) => likeForLike.pairs >= 5);
    expect(drawn.length).toBeGreaterThan(0);
    expect(drawn.length).toBeLessThan(REPORT.outcomes.length);
  });
});
