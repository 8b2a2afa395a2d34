// Source: Afzal S and others 2018, Arch Phys Med Rehabil, doi 10.1016/j.apmr.2018.07.426; abstract READ: an audit of the
// recommendation to stop a walk below 80 %; 549 people, 672 tests, 60 people below 80 %, none with an adverse event.
import { describe, expect, it } from 'vitest';
import { STOP_BELOW_SPO2_PERCENT } from '../../src/domain/safety/desaturation.js';
import { publishedSafetyItem } from '../support/published-safety.js';

describe('Afzal S and others 2018', () => {
  publishedSafetyItem('stop-saturation-below-80', {
    list: 'stop-rules',
    strength: null,
    canBeFound: false,
    citationId: 'afzal-2018',
    status: 'retrieved',
    doi: '10.1016/j.apmr.2018.07.426',
    says: ['below 80 %', '549 people', '672 tests', '60 fell'],
  });

  it('is the level at which a walk raises the stop rule', () => {
    expect(STOP_BELOW_SPO2_PERCENT).toBe(80);
  });
});
