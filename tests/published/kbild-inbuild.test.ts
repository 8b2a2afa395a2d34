// Source: K-BILD in the INBUILD trial, abstract (authors and journal not seen).
// A change of -2 or more counts as stable.
// Tolerance: none; figures are compared exactly as printed or remembered.
import { describe } from 'vitest';
import { publishedThreshold } from '../support/published.js';

describe('K-BILD in the INBUILD trial, abstract (authors and journal not seen)', () => {
  publishedThreshold('k-bild-pf-ild-worse', {
    measure: 'k-bild-total',
    purpose: 'deterioration',
    value: 2,
    interval: null,
    n: 663,
    diagnoses: ['other-interstitial-lung-disease'],
    isDefault: false,
    status: 'retrieved',
    doi: null,
  });
});
