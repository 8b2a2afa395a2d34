import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { financialQuarter } from '../../src/domain/calendar/period.js';
import { narrowed } from '../../src/domain/cohort/narrowing.js';
import type { Narrowing } from '../../src/domain/cohort/narrowing.js';
import type { Figure } from '../../src/domain/indicators/figure.js';
import { DELIVERY_MODES, DIAGNOSES, PATHWAYS } from '../../src/domain/referral/closed-sets.js';
import { QuarterlyReportShown } from '../../src/http/reports/quarterly-schema.js';
import { buildQuarterlyReport } from '../../src/reports/quarterly/build-quarterly-report.js';
import type { QuarterlyReportInput } from '../../src/reports/quarterly/build-quarterly-report.js';
import { countedEarlier } from '../../src/reports/quarterly/comparisons-section.js';
import { openFigure } from '../../src/reports/quarterly/open-figure.js';
import { quarterOfTrend } from '../../src/reports/quarterly/quarter-of-trend.js';
import { anyDay, anyStore, SITES } from '../support/arbitrary-facts.js';
import { reportInputOf } from '../support/report-input.js';
import { figuresIn } from '../support/reported.js';

const anyQuarter = fc
  .tuple(fc.constantFrom(2025, 2026), fc.integer({ min: 1, max: 4 }))
  .map(([year, quarter]) => financialQuarter(year, quarter));

const anyInput: fc.Arbitrary<QuarterlyReportInput> = fc
  .tuple(anyStore, anyQuarter, anyDay)
  .map(([facts, period, asAt]) => reportInputOf(facts, period, asAt));

/** A condition or none, each of its own field. */
const anyNarrowing: fc.Arbitrary<Narrowing> = fc.record(
  {
    siteId: fc.constantFrom(...SITES.map(({ id }) => id)),
    diagnosis: fc.constantFrom(...DIAGNOSES),
    pathway: fc.constantFrom(...PATHWAYS),
    mode: fc.constantFrom(...DELIVERY_MODES),
    firstReferralsOnly: fc.boolean(),
  },
  { requiredKeys: [] },
);

const total = (figures: readonly Figure[], part: 'numerator' | 'denominator' | 'open'): number =>
  figures.reduce((sum, figure) => sum + figure[part], 0);

describe('a figure and its groups', () => {
  it('add up: every referral is in one group of every dimension', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        for (const { whole, dimensions } of buildQuarterlyReport(input).breakdowns) {
          for (const { dimension, rows } of dimensions) {
            const groups = rows.map(({ figure }) => figure);
            for (const part of ['numerator', 'denominator', 'open'] as const) {
              expect([whole.id, dimension, part, total(groups, part)]).toEqual([
                whole.id,
                dimension,
                part,
                whole[part],
              ]);
            }
          }
        }
      }),
    );
  });

  it('open to the same people: members of a group are members of the whole, and count there alike', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const [breakdown] = buildQuarterlyReport(input).breakdowns.slice(2);
        const whole = new Map(
          openFigure(input, breakdown?.figureId ?? '')?.members.map((member) => [member.referralId, member]),
        );
        for (const { rows } of breakdown?.dimensions ?? []) {
          for (const { figure } of rows) {
            const opened = openFigure(input, figure.id);
            expect(opened?.figure).toEqual(figure);
            const inGroup = opened?.members.filter(({ exclusion }) => exclusion !== 'another-group') ?? [];
            for (const member of inGroup) expect(member).toEqual(whole.get(member.referralId));
          }
        }
      }),
      { numRuns: 25 },
    );
  });
});

describe('a figure that is opened', () => {
  it('shows each referral once: in the numerator, not in it, open, or left out', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const ids = [...new Set(figuresIn(buildQuarterlyReport(input)).map(({ id }) => id))];
        for (const id of ids.filter((_, index) => index % 15 === 0)) {
          const opened = openFigure(input, id);
          const members = opened?.members.map(({ referralId }) => referralId) ?? [];
          expect(new Set(members).size).toBe(members.length);
          const kinds = opened?.members.map(({ kind }) => kind) ?? [];
          const numerator = kinds.filter((kind) => kind === 'numerator').length;
          const not = kinds.filter((kind) => kind === 'not-numerator').length;
          expect([id, numerator, numerator + not]).toEqual([
            id,
            opened?.figure.numerator,
            opened?.figure.denominator,
          ]);
          for (const { kind, exclusion } of opened?.members ?? []) {
            expect(exclusion !== null).toBe(kind === 'excluded');
          }
        }
      }),
      { numRuns: 20 },
    );
  });
});

describe('filters', () => {
  it('commute, and two are as good as both at once', () => {
    fc.assert(
      fc.property(anyStore, anyNarrowing, anyNarrowing, (facts, a, b) => {
        const both = narrowed(narrowed(facts, a), b);
        expect(narrowed(narrowed(facts, b), a)).toEqual(both);
        const fields = Object.keys(a).filter((field) => field in b);
        if (fields.length === 0) expect(narrowed(facts, { ...a, ...b })).toEqual(both);
        expect(narrowed(both, a)).toEqual(both);
      }),
    );
  });

  it('make the report of those referrals alone', () => {
    fc.assert(
      fc.property(anyInput, anyNarrowing, (input, narrowing) => {
        const facts = narrowed(input.facts, narrowing);
        const alone = figuresIn(buildQuarterlyReport({ ...input, facts }));
        expect(figuresIn(buildQuarterlyReport({ ...input, narrowing }))).toEqual(alone);
      }),
    );
  });
});

describe('sections', () => {
  it('lose nobody in the funnel: who reached a step came further, left, or is still there', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const { funnel } = buildQuarterlyReport(input);
        funnel.forEach(({ reached, left, leftBecause }, index) => {
          if (left === null) return;
          const next = funnel[index + 1]?.reached.numerator ?? 0;
          expect(left.denominator + left.open).toBe(reached.numerator);
          expect(next + left.numerator + left.open).toBe(reached.numerator);
          expect(total(leftBecause, 'numerator')).toBe(left.numerator);
        });
      }),
    );
  });

  it('share out everybody who waits: started, left for a reason, and waiting make 100 %', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        for (const { days } of buildQuarterlyReport(input).waiting.clocks) {
          for (const { started, leftBy, stillWaitingPercent } of days) {
            if (started === null || stillWaitingPercent === null) continue;
            const left = leftBy.reduce((sum, { percent }) => sum + (percent ?? 0), 0);
            expect(started.percent + left + stillWaitingPercent).toBeCloseTo(100, 9);
          }
        }
      }),
    );
  });

  it('tell what became of every starter of a measure', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        for (const { starters, pairs, lost } of buildQuarterlyReport(input).dataQuality.pairsLost) {
          expect(lost.reduce((sum, { referrals }) => sum + referrals, pairs)).toBe(starters);
        }
      }),
    );
  });

  it('tell the period in three to six sentences, each of one figure at least or of none that could be judged', () => {
    fc.assert(
      fc.property(anyInput, fc.boolean(), (input, isEmpty) => {
        const { narrative } = buildQuarterlyReport(isEmpty ? { ...input, facts: [] } : input);
        expect(narrative.length).toBeGreaterThanOrEqual(3);
        expect(narrative.length).toBeLessThanOrEqual(6);
        for (const { text, figureIds } of narrative) {
          expect(text).toMatch(/^[A-Z0-9].*[.]$/);
          if (figureIds.length === 0) expect(text).toContain('can be held against a target yet');
        }
      }),
    );
  });

  it('are what the schema says, of an empty quarter as of any other, with comparisons and trend', () => {
    fc.assert(
      fc.property(anyInput, anyStore, (input, earlier) => {
        const { period, asAt } = input;
        const seen = { period, asAt, facts: earlier };
        const report = buildQuarterlyReport({
          ...input,
          compareWith: [countedEarlier(input, { than: 'former-period', ...seen })],
          trendOver: Array.from({ length: 12 }, () => quarterOfTrend(input, seen)),
        });
        expect(QuarterlyReportShown.parse(report)).toEqual(report);
        const empty = buildQuarterlyReport({ ...input, facts: [] });
        expect(QuarterlyReportShown.parse(empty)).toEqual(empty);
        for (const { numerator, denominator, percentage } of figuresIn(empty)) {
          expect([numerator, denominator, percentage]).toEqual([0, 0, null]);
        }
      }),
      { numRuns: 20 },
    );
  });
});
