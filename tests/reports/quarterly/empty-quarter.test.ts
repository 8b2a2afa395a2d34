import { describe, expect, it } from 'vitest';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';
import { buildQuarterlyReport } from '../../../src/reports/quarterly/build-quarterly-report.js';
import { renderQuarterlyReportText } from '../../../src/reports/quarterly/render-text.js';
import { aReferral, closed } from '../../support/facts.js';
import { figuresIn } from '../../support/reported.js';
import { WORKED_INPUT } from '../../support/worked-quarter.js';

const empty = buildQuarterlyReport({ ...WORKED_INPUT, facts: [] });

describe('the report of a quarter in which nothing happened', () => {
  it('survives the way through JSON unchanged: nulls, never NaN or undefined', () => {
    expect(JSON.parse(JSON.stringify(empty))).toEqual(empty);
  });

  it('has every section, with counts of 0', () => {
    expect(empty.referrals).toMatchObject({ received: 0, people: 0, bySource: [] });
    expect(empty.completion.map((row) => row.cells.length)).toEqual([3, 3, 3, 3]);
    expect(empty.waits).toHaveLength(4);
    expect([empty.outcomes, empty.percentPredicted]).toEqual([[], []]);
    expect(figuresIn(empty).length).toBeGreaterThan(40);
    for (const figure of figuresIn(empty)) {
      expect(figure).toMatchObject({
        numerator: 0,
        denominator: 0,
        open: 0,
        excluded: [],
        percentage: null,
        interval: null,
        bounds: null,
      });
    }
  });

  it('holds no indicator against its target', () => {
    const targeted = empty.indicators.filter((row) => row.target !== null);
    expect(targeted.map((row) => [row.isReached, row.isBeyondChance])).toEqual([
      [null, null],
      [null, null],
    ]);
  });

  it('is final once the quarter is over, and provisional before', () => {
    expect(empty.provisional.isProvisional).toBe(false);
    const early = buildQuarterlyReport({ ...WORKED_INPUT, facts: [], asAt: plainDate('2026-06-29') });
    expect(early.provisional).toEqual({ isProvisional: true, isPeriodOver: false, notes: [] });
  });

  it('can be written as text', () => {
    const text = renderQuarterlyReportText(empty);
    expect(text).not.toMatch(/NaN|undefined|null/);
    expect(text).toContain('Nothing was measured.');
  });

  it('is the same for facts that belong to other quarters', () => {
    const elsewhere = aReferral({
      receivedOn: plainDate('2025-01-10'),
      closure: closed('2025-02-01', 'declined'),
    });
    expect(buildQuarterlyReport({ ...WORKED_INPUT, facts: [elsewhere] })).toEqual(empty);
  });

  it('shows whoever waits at the cut, whenever they were received', () => {
    const longAgo = aReferral({ referralId: 'R99', receivedOn: plainDate('2025-01-10') });
    const { waiting, ...rest } = buildQuarterlyReport({ ...WORKED_INPUT, facts: [longAgo] });
    // From 10 January 2025 to 20 September 2026: 365 days to 10 January 2026, then 21 + 28 + 31 + 30 + 31 + 30 + 31 + 31 + 20.
    expect(waiting.now.longest).toEqual([
      { referralId: 'R99', receivedOn: '2025-01-10', days: 618, stage: 'awaiting-triage' },
    ]);
    expect({ ...rest, waiting: empty.waiting }).toEqual(empty);
  });
});
