import { describe, expect, it } from 'vitest';
import { toNumber } from '../../../src/domain/exact/fraction.js';
import {
  findMeasure,
  findPhysicalTest,
  findQuestionnaire,
  findSitToStandTest,
  findThreshold,
  findWalkTest,
  MEASURES,
} from '../../../src/domain/measures/catalogue.js';

describe('the catalogue of measures', () => {
  it('finds every kind by id', () => {
    expect(findMeasure('cat-total')?.shortName).toBe('CAT');
    expect(findWalkTest('six-minute-walk')?.shortName).toBe('6MWT');
    expect(findSitToStandTest('one-minute-sit-to-stand')?.records).toBe('repetitions');
    expect(findQuestionnaire('eq-5d-5l')?.items).toHaveLength(5);
    expect(findPhysicalTest('handgrip-strength')?.measures).toHaveLength(1);
    expect(findThreshold('iswd-singh-2008')?.population).toBe('COPD, after 7 weeks of rehabilitation');
  });

  it('finds nothing by an unknown id', () => {
    expect([
      findMeasure('no-such'),
      findWalkTest('no-such'),
      findSitToStandTest('no-such'),
      findQuestionnaire('no-such'),
      findPhysicalTest('no-such'),
      findThreshold('no-such'),
      findMeasure('constructor'),
    ]).toEqual(Array.from({ length: 7 }, () => undefined));
  });

  // The team's defaults as this product documents them; every figure is checked against its source in tests/published.
  it('judges improvement by the documented defaults', () => {
    const defaults = MEASURES.flatMap((measure) => {
      const chosen = measure.thresholds.find((threshold) => threshold.isDefault)?.value ?? null;
      return chosen === null ? [] : [[measure.id, toNumber(chosen)] as const];
    });
    expect(Object.fromEntries(defaults)).toEqual({
      'six-minute-walk-distance': 30,
      'incremental-shuttle-walk-distance': 47.5,
      'endurance-shuttle-walk-time': 174,
      'two-minute-walk-distance': 5.5,
      'one-minute-sit-to-stand': 3,
      'thirty-second-sit-to-stand': 2,
      'five-repetition-sit-to-stand': 1.7,
      'cat-total': 2,
      'crq-dyspnoea': 0.5,
      'crq-fatigue': 0.5,
      'crq-emotional-function': 0.5,
      'crq-mastery': 0.5,
      'crq-total': 0.5,
      'sgrq-symptoms': 4,
      'sgrq-activity': 4,
      'sgrq-impacts': 4,
      'sgrq-total': 4,
      'hads-anxiety': 1.5,
      'hads-depression': 1.5,
      'phq-9': 5,
      'gad-7': 4,
      'eq-5d-5l-index': 0.051,
      'eq-vas': 6.9,
      'mrc-dyspnoea': 1,
      'mmrc-dyspnoea': 1,
      'linq-total': 1,
      'k-bild-total': 4.7,
      'four-metre-gait-speed': 0.11,
      'short-physical-performance-battery': 1,
      'handgrip-strength': 5,
      'quadriceps-strength': 3.3,
    });
  });
});
