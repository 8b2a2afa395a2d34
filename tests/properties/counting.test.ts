import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { financialQuarter, financialYear } from '../../src/domain/calendar/period.js';
import type { Period } from '../../src/domain/calendar/period.js';
import { classify, compareResults } from '../../src/domain/change/change.js';
import { chooseThresholds } from '../../src/domain/change/choose-threshold.js';
import type { ChosenThreshold } from '../../src/domain/change/choose-threshold.js';
import { COHORT_KINDS, cohortOf } from '../../src/domain/cohort/cohorts.js';
import { fraction, multiply, negate } from '../../src/domain/exact/fraction.js';
import type { Fraction } from '../../src/domain/exact/fraction.js';
import { countFigure, membersOf } from '../../src/domain/indicators/count.js';
import { FIGURE_RULES } from '../../src/domain/indicators/figure-rules.js';
import { MEASURES } from '../../src/domain/measures/catalogue.js';
import { factsAsAt } from '../../src/domain/pathway/as-at.js';
import { coursesOf } from '../../src/domain/pathway/course.js';
import { DEFAULT_TEAM_SETTINGS } from '../../src/domain/settings/team-settings.js';
import { buildQuarterlyReport } from '../../src/reports/quarterly/build-quarterly-report.js';
import { quarterFrom } from '../../src/reports/quarterly/quarter.js';
import { renderQuarterlyReportText } from '../../src/reports/quarterly/render-text.js';
import { anyDay, anyStore } from '../support/arbitrary-facts.js';
import { aResult } from '../support/facts.js';
import { reportInputOf } from '../support/report-input.js';
import { figuresIn } from '../support/reported.js';

const anyQuarter: fc.Arbitrary<Period> = fc
  .tuple(fc.constantFrom(2025, 2026), fc.integer({ min: 1, max: 4 }))
  .map(([year, quarter]) => financialQuarter(year, quarter));

const anyValue: fc.Arbitrary<Fraction> = fc
  .tuple(fc.integer({ min: -5000, max: 5000 }), fc.constantFrom(1, 2, 4, 5, 7, 10, 20))
  .map(([numerator, denominator]) => fraction(numerator, denominator));

const anyMeasure = fc.constantFrom(...MEASURES);

describe('change', () => {
  it('is antisymmetric: there and back are opposite, and nothing is 0', () => {
    fc.assert(
      fc.property(anyMeasure, anyValue, anyValue, (measure, a, b) => {
        const thresholds = chooseThresholds(measure, 'copd', DEFAULT_TEAM_SETTINGS);
        const between = (from: Fraction, to: Fraction) => {
          const comparison = compareResults(aResult(measure.id, from), aResult(measure.id, to), thresholds);
          if (comparison.kind !== 'pair') throw new Error(comparison.words);
          return comparison;
        };
        expect(between(b, a).change).toEqual(negate(between(a, b).change));
        expect(between(b, a).improvement).toEqual(negate(between(a, b).improvement));
        expect(between(a, a).change).toEqual(fraction(0));
      }),
    );
  });

  it('does not flip its sign or its class by the unit: metres or centimetres, mean or sum', () => {
    const factors = fc.constantFrom(
      fraction(100),
      fraction(1, 100),
      fraction(5),
      fraction(1, 7),
      fraction(1000),
    );
    fc.assert(
      fc.property(anyMeasure, anyValue, factors, (measure, improvement, factor) => {
        const { improvement: up, deterioration: down } = chooseThresholds(
          measure,
          'copd',
          DEFAULT_TEAM_SETTINGS,
        );
        const scaled = (threshold: ChosenThreshold | null): ChosenThreshold | null =>
          threshold === null ? null : { ...threshold, value: multiply(threshold.value, factor) };
        const inOtherUnit = multiply(improvement, factor);
        expect(Math.sign(inOtherUnit.numerator)).toBe(Math.sign(improvement.numerator));
        expect(classify(inOtherUnit, { improvement: scaled(up), deterioration: scaled(down) })).toBe(
          classify(improvement, { improvement: up, deterioration: down }),
        );
      }),
    );
  });

  it('never counts as improved and worse: what improves one way does not improve the other', () => {
    fc.assert(
      fc.property(anyMeasure, anyValue, (measure, improvement) => {
        const thresholds = chooseThresholds(measure, 'copd', DEFAULT_TEAM_SETTINGS);
        if (classify(improvement, thresholds) === 'improved') {
          expect(classify(negate(improvement), thresholds)).not.toBe('improved');
          expect(improvement.numerator).toBeGreaterThan(0);
        }
        if (classify(improvement, thresholds) === 'worse') expect(improvement.numerator).toBeLessThan(0);
      }),
    );
  });
});

describe('cohorts', () => {
  it('and those outside make up all referrals known at the cut', () => {
    fc.assert(
      fc.property(anyStore, anyQuarter, anyDay, (facts, period, asAt) => {
        const courses = coursesOf(facts, asAt);
        expect(courses.length).toBe(facts.filter((each) => each.receivedOn <= asAt).length);
        for (const kind of COHORT_KINDS) {
          const inside = cohortOf(kind, courses, period).courses;
          const outside = courses.filter((course) => !inside.includes(course));
          expect(inside.length + outside.length).toBe(courses.length);
        }
      }),
    );
  });

  it('of the four quarters make up the cohort of the year, each referral in one of them', () => {
    fc.assert(
      fc.property(anyStore, anyDay, (facts, asAt) => {
        const courses = coursesOf(facts, asAt);
        for (const kind of COHORT_KINDS) {
          const ofQuarters = [1, 2, 3, 4].flatMap(
            (quarter) => cohortOf(kind, courses, financialQuarter(2026, quarter)).courses,
          );
          const ofYear = cohortOf(kind, courses, financialYear(2026)).courses;
          expect(new Set(ofQuarters)).toEqual(new Set(ofYear));
          expect(ofQuarters.length).toBe(ofYear.length);
        }
      }),
    );
  });
});

describe('figures', () => {
  it('each: numerator + not numerator + excluded + open = cohort, and members agree with counts', () => {
    fc.assert(
      fc.property(anyStore, anyQuarter, anyDay, (facts, period, asAt) => {
        const { cohorts, context } = quarterFrom(reportInputOf(facts, period, asAt));
        for (const rule of FIGURE_RULES) {
          const cohort = cohorts[rule.cohort];
          const figure = countFigure(rule, cohort, context);
          const excluded = figure.excluded.reduce((sum, each) => sum + each.count, 0);
          expect([rule.id, figure.denominator + excluded + figure.open]).toEqual([
            rule.id,
            cohort.courses.length,
          ]);
          const kinds = membersOf(rule, cohort, context).map((member) => member.kind);
          expect(kinds.filter((kind) => kind === 'numerator')).toHaveLength(figure.numerator);
          expect(kinds.filter((kind) => kind === 'open')).toHaveLength(figure.open);
          expect(kinds.filter((kind) => kind === 'excluded')).toHaveLength(excluded);
          expect(figure.people.numerator).toBeLessThanOrEqual(figure.numerator);
          expect(figure.people.denominator).toBeLessThanOrEqual(figure.denominator);
          expect(figure.people.denominator).toBeGreaterThanOrEqual(figure.people.numerator);
        }
      }),
      { numRuns: 25 },
    );
  });

  it('have bounds around their percentage, and an interval around it', () => {
    fc.assert(
      fc.property(anyStore, anyQuarter, anyDay, (facts, period, asAt) => {
        for (const figure of figuresIn(buildQuarterlyReport(reportInputOf(facts, period, asAt)))) {
          const { percentage, interval, bounds, open } = figure;
          expect(bounds === null).toBe(open === 0);
          expect(percentage === null).toBe(figure.denominator === 0);
          if (percentage === null || interval === null) continue;
          expect(interval.low).toBeLessThanOrEqual(percentage + 1e-9);
          expect(interval.high).toBeGreaterThanOrEqual(percentage - 1e-9);
          if (bounds === null) continue;
          expect(bounds.worst).toBeLessThanOrEqual(percentage);
          expect(bounds.best).toBeGreaterThanOrEqual(percentage);
        }
      }),
    );
  });
});

describe('the report', () => {
  const anyInput = fc
    .tuple(anyStore, anyQuarter, anyDay)
    .map(([facts, period, asAt]) => reportInputOf(facts, period, asAt));

  it('splits referrals by source, pathway and diagnosis without losing one', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const { received, bySource, byPathway, byDiagnosis } = buildQuarterlyReport(input).referrals;
        for (const rows of [bySource, byPathway, byDiagnosis]) {
          expect(rows.reduce((sum, row) => sum + row.numerator, 0)).toBe(received);
        }
      }),
    );
  });

  it('splits every wait into reached, waiting, left and passed over', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        for (const wait of buildQuarterlyReport(input).waits) {
          const parts = [wait.reached, wait.stillWaiting, wait.left, wait.passedOver];
          const sum = parts.reduce((total, figure) => total + (figure?.numerator ?? 0), 0);
          expect(sum).toBe(wait.reached.denominator);
          expect(wait.daysOfThoseWhoReachedIt.n).toBe(wait.reached.numerator);
        }
      }),
    );
  });

  it('splits pairs into improved, little change and worse, and finds like-for-like pairs among all', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        for (const {
          likeForLike,
          allPairs,
          pairsOverStarters,
          likeForLikePairsOverStarters,
        } of buildQuarterlyReport(input).outcomes) {
          expect(allPairs.pairs).toBe(pairsOverStarters.numerator);
          expect(likeForLike.pairs).toBe(likeForLikePairsOverStarters.numerator);
          expect(likeForLike.pairs).toBeLessThanOrEqual(allPairs.pairs);
          for (const { pairs, midReached, littleChange, worse } of [likeForLike, allPairs]) {
            if (midReached === null || littleChange === null || worse === null) continue;
            expect(midReached.numerator + littleChange.numerator + worse.numerator).toBe(pairs);
            expect(midReached.denominator).toBe(pairs);
          }
        }
      }),
    );
  });

  it('is the same whether later facts are there and cut off, or not there', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const known = input.facts.flatMap((each) => factsAsAt(each, input.asAt) ?? []);
        expect(buildQuarterlyReport({ ...input, facts: known })).toEqual(buildQuarterlyReport(input));
      }),
    );
  });

  it('does not depend on the order of the referrals', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const there = figuresIn(buildQuarterlyReport(input));
        const back = figuresIn(buildQuarterlyReport({ ...input, facts: [...input.facts].reverse() }));
        expect(back).toEqual(there);
      }),
    );
  });

  it('is plain JSON without NaN, and fits on a terminal, whatever the facts', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const report = buildQuarterlyReport(input);
        expect(JSON.parse(JSON.stringify(report))).toEqual(report);
        const text = renderQuarterlyReportText(report);
        expect(text).not.toMatch(/NaN|undefined/);
        expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
      }),
    );
  });
});
