// Source: Patel AS and others 2012, Thorax 67:804, doi 10.1136/thoraxjnl-2012-201581, abstract: 15 items, three domains
// (breathlessness and activities, chest symptoms, psychological), 0 to 100, higher is better.
// COMMON PRACTICE: step and check range. Tolerance: none.
import { describe, expect, it } from 'vitest';
import { findQuestionnaire } from '../../src/domain/measures/catalogue.js';
import { scoreQuestionnaire } from '../../src/domain/measures/score-items.js';
import { publishedRange } from '../support/published.js';

const LIMITS = {
  min: 0,
  max: 100,
  step: 0.1,
  usual: [5, 100],
  betterWhen: 'higher',
  status: 'retrieved',
} as const;

describe('K-BILD', () => {
  publishedRange('k-bild-total', LIMITS);
  publishedRange('k-bild-psychological', LIMITS);
  publishedRange('k-bild-breathlessness-and-activities', LIMITS);
  publishedRange('k-bild-chest-symptoms', LIMITS);

  it('takes typed scores only, because the look-up table is not held', () => {
    const questionnaire = findQuestionnaire('kings-brief-ild-questionnaire');
    if (questionnaire === undefined) throw new Error('There is no K-BILD');
    expect(scoreQuestionnaire(questionnaire, [1, 2, 3])).toMatchObject({
      kind: 'refused',
      faults: [{ code: 'typed-scores-only' }],
    });
  });
});
