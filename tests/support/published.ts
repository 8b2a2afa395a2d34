import { expect, it } from 'vitest';
import type { EvidenceStatus } from '../../src/domain/evidence/citation.js';
import { decimal, toNumber } from '../../src/domain/exact/fraction.js';
import type { Fraction } from '../../src/domain/exact/fraction.js';
import { findMeasure, findQuestionnaire, MEASURES } from '../../src/domain/measures/catalogue.js';
import { smallestChangeReaching } from '../../src/domain/measures/grid.js';
import { scoreQuestionnaire } from '../../src/domain/measures/score-items.js';
import type { Diagnosis } from '../../src/domain/referral/closed-sets.js';

/*
 * Checks of the catalogue against what a source prints. Each names the checked entry as its first argument, a plain
 * string, so that tests/domain/measures/catalogue-complete.test.ts can see which entries have no check.
 */

interface PublishedThreshold {
  readonly measure: string;
  readonly purpose: 'improvement' | 'deterioration';
  /** As printed; null where the source gives a range only. */
  readonly value: number | null;
  readonly interval: readonly [low: number, high: number] | null;
  readonly n: number | null;
  readonly diagnoses: readonly Diagnosis[];
  readonly isDefault: boolean;
  readonly status: EvidenceStatus;
  readonly doi: string | null;
}

/** A threshold is held as the source gives it: exactly. */
export function publishedThreshold(id: string, printed: PublishedThreshold): void {
  it(`holds ${id} as printed: ${printed.value ?? 'a range only'}`, () => {
    const measure = MEASURES.find((each) => each.thresholds.some((threshold) => threshold.id === id));
    const threshold = measure?.thresholds.find((each) => each.id === id);
    expect({
      measure: measure?.id,
      purpose: threshold?.purpose,
      value: threshold?.value,
      interval: threshold?.interval,
      n: threshold?.n,
      diagnoses: threshold?.diagnoses,
      isDefault: threshold?.isDefault,
      status: threshold?.citation.status,
      doi: threshold?.citation.doi,
    }).toEqual({
      ...printed,
      value: printed.value === null ? null : decimal(printed.value),
      interval:
        printed.interval === null
          ? null
          : { low: decimal(printed.interval[0]), high: decimal(printed.interval[1]) },
    });
  });
}

interface PublishedRange {
  readonly min: number;
  readonly max: number;
  readonly step: number | Fraction;
  readonly usual: readonly [min: number, max: number] | null;
  readonly betterWhen: 'higher' | 'lower';
  readonly status: EvidenceStatus;
}

/** Limits, step, check range and direction of a measure. Check ranges are common practice throughout. */
export function publishedRange(measureId: string, printed: PublishedRange): void {
  it(`takes ${measureId} from ${printed.min} to ${printed.max}, ${printed.betterWhen} is better`, () => {
    const measure = findMeasure(measureId);
    expect({
      min: measure?.range.min,
      max: measure?.range.max,
      step: measure?.range.step,
      checkRange: measure?.checkRange,
      betterWhen: measure?.betterWhen,
      status: measure?.range.citation.status,
    }).toEqual({
      min: decimal(printed.min),
      max: decimal(printed.max),
      step: typeof printed.step === 'number' ? decimal(printed.step) : printed.step,
      checkRange:
        printed.usual === null ? null : { min: decimal(printed.usual[0]), max: decimal(printed.usual[1]) },
      betterWhen: printed.betterWhen,
      status: printed.status,
    });
  });
}

/** Severity bands of a measure, row by row. */
export function publishedBands(
  bandSetId: string,
  printed: {
    readonly measure: string;
    readonly isDefault: boolean;
    readonly status: EvidenceStatus;
    readonly rows: readonly (readonly [from: number, to: number, label: string])[];
  },
): void {
  it(`holds the bands ${bandSetId} as printed`, () => {
    const bandSet = findMeasure(printed.measure)?.bands.find((each) => each.id === bandSetId);
    expect(bandSet?.bands.map(({ from, to, label }) => [from, to, label])).toEqual(printed.rows);
    expect([bandSet?.isDefault, bandSet?.citation.status]).toEqual([printed.isDefault, printed.status]);
  });
}

/**
 * A scoring or missing-item rule, by a case worked by hand.
 *
 * @param expected value by measure id, as a number or an exact fraction; null where there must be no score
 */
export function publishedScores(
  questionnaireId: string,
  rule: string,
  items: readonly (number | null)[],
  expected: Readonly<Record<string, number | Fraction | null>>,
): void {
  it(`${rule}`, () => {
    const questionnaire = findQuestionnaire(questionnaireId);
    if (questionnaire === undefined) throw new Error(`There is no questionnaire ${questionnaireId}`);
    const scored = scoreQuestionnaire(questionnaire, items);
    if (scored.kind === 'refused') throw new Error(scored.faults.map((fault) => fault.message).join(' '));
    const found = new Map(scored.scores.map((score) => [score.measureId, score]));
    for (const [measureId, value] of Object.entries(expected)) {
      const score = found.get(measureId);
      const actual = score?.kind === 'scored' ? score.value : null;
      const wanted = typeof value === 'number' ? decimal(value) : value;
      expect([measureId, actual], `${measureId}: ${actual === null ? 'no score' : toNumber(actual)}`).toEqual(
        [measureId, wanted],
      );
    }
  });
}

/** The smallest change that reaches a threshold on the steps of its measure; null where there is none. */
export function smallestChange(measureId: string, thresholdId: string): Fraction | null {
  const measure = findMeasure(measureId);
  const threshold = measure?.thresholds.find((each) => each.id === thresholdId);
  if (measure === undefined || threshold === undefined) throw new Error(`There is no ${thresholdId}`);
  return smallestChangeReaching(measure, threshold).change;
}
