import { describe, expect, it } from 'vitest';
import { compareResults } from '../../../src/domain/change/change.js';
import { chooseThresholds } from '../../../src/domain/change/choose-threshold.js';
import type { ChosenThresholds } from '../../../src/domain/change/choose-threshold.js';
import { fraction } from '../../../src/domain/exact/fraction.js';
import { findMeasure } from '../../../src/domain/measures/catalogue.js';
import type { Diagnosis } from '../../../src/domain/referral/closed-sets.js';
import type { TeamSettings } from '../../../src/domain/settings/team-settings.js';
import { aResult } from '../../support/facts.js';

const none = { thresholds: {}, thresholdsByDiagnosis: {} };

function chosenFor(
  measureId: string,
  diagnosis: Diagnosis,
  settings: Pick<TeamSettings, 'thresholds' | 'thresholdsByDiagnosis'> = none,
): ChosenThresholds {
  const measure = findMeasure(measureId);
  if (measure === undefined) throw new Error(`There is no measure ${measureId}.`);
  return chooseThresholds(measure, diagnosis, settings);
}

const walk = 'six-minute-walk-distance';

describe('the threshold for improvement', () => {
  it('is the default of the catalogue where the team has chosen nothing', () => {
    expect(chosenFor(walk, 'copd').improvement).toMatchObject({
      thresholdId: '6mwd-holland-2014',
      value: fraction(30),
      chosenBy: 'catalogue default',
    });
  });

  it("is the team's choice for the measure before the default", () => {
    const settings = { ...none, thresholds: { [walk]: '6mwd-daynes-2025' } };
    expect(chosenFor(walk, 'copd', settings).improvement).toMatchObject({
      thresholdId: '6mwd-daynes-2025',
      chosenBy: 'team',
    });
  });

  it("is the team's choice for the diagnosis before that, and for that diagnosis only", () => {
    const settings = {
      thresholds: { [walk]: '6mwd-daynes-2025' },
      thresholdsByDiagnosis: { [`${walk}/idiopathic-pulmonary-fibrosis`]: '6mwd-swigris-2010' },
    };
    expect(chosenFor(walk, 'idiopathic-pulmonary-fibrosis', settings).improvement).toMatchObject({
      thresholdId: '6mwd-swigris-2010',
      chosenBy: 'team, for this diagnosis',
      populationNote: null,
    });
    expect(chosenFor(walk, 'copd', settings).improvement?.thresholdId).toBe('6mwd-daynes-2025');
  });

  it.each([
    ['a range only', '6mwd-dubois-2011'],
    ['for getting worse', '6mwd-polkey-2013'],
    ['of another measure', 'cat-kon-2014'],
    ['unknown', 'nobody-1999'],
  ])('passes over a choice that is %s', (_what, id) => {
    const settings = { ...none, thresholds: { [walk]: id } };
    expect(chosenFor(walk, 'copd', settings).improvement?.thresholdId).toBe('6mwd-holland-2014');
  });

  it('does not exist where no source gives one', () => {
    expect(chosenFor('bckq-total', 'copd').improvement).toBeNull();
  });

  it('carries its source and the mark of how little is known', () => {
    expect(chosenFor(walk, 'copd').improvement?.mark).toBe('from memory, check before use');
    expect(chosenFor('cat-total', 'copd').improvement?.mark).toBe('quoted in another paper');
    expect(chosenFor('incremental-shuttle-walk-distance', 'copd').improvement?.mark).toBeNull();
  });

  it('says so where it was found in people with another disease', () => {
    expect(chosenFor('cat-total', 'bronchiectasis').improvement?.populationNote).toBe(
      'Threshold found in COPD, used for bronchiectasis: not reaching it is no proof of no benefit',
    );
    expect(chosenFor('cat-total', 'copd').improvement?.populationNote).toBeNull();
    // A mixed population stands for everybody.
    expect(chosenFor(walk, 'bronchiectasis').improvement?.populationNote).toBeNull();
    expect(chosenFor('cat-total', 'not-known').improvement?.populationNote).toContain('diagnosis not known');
  });
});

describe('the threshold for getting worse', () => {
  it('is its own where one was published for this diagnosis', () => {
    expect(chosenFor(walk, 'copd').deterioration?.thresholdId).toBe('6mwd-polkey-2013');
    expect(chosenFor('k-bild-total', 'other-interstitial-lung-disease').deterioration?.thresholdId).toBe(
      'k-bild-pf-ild-worse',
    );
  });

  it('is the improvement value turned round for everybody else', () => {
    expect(chosenFor(walk, 'bronchiectasis').deterioration).toBeNull();
    expect(chosenFor('cat-total', 'copd').deterioration).toBeNull();
  });

  it('judges by its own value: K-BILD falls by 2 are worse in fibrosing disease, gains of 2 no improvement', () => {
    const thresholds = chosenFor('k-bild-total', 'other-interstitial-lung-disease');
    const classOf = (discharge: number): string => {
      const comparison = compareResults(
        aResult('k-bild-total', 50),
        aResult('k-bild-total', discharge),
        thresholds,
      );
      return comparison.kind === 'pair' ? comparison.class : comparison.kind;
    };
    expect([classOf(48), classOf(52)]).toEqual(['worse', 'little-change']);
  });
});
