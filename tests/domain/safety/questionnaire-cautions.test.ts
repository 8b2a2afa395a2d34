import { describe, expect, it } from 'vitest';
import { aQuestionnaire } from '../../support/assessment-entries.js';
import { cautionsFor, inShort } from '../../support/safety-cautions.js';

const PHQ = 'patient-health-questionnaire-9';
const HADS = 'hospital-anxiety-and-depression-scale';

describe('prompts of questionnaires', () => {
  it.each([
    ['item 9 at 0', [1, 1, 0, 0, 0, 0, 0, 0, 0], 2, []],
    ['item 9 above 0', [1, 1, 0, 0, 0, 0, 0, 0, 1], 3, ['phq-9-item-9-above-zero phq-9 !']],
    ['item 9 unanswered', [1, 1, 0, 0, 0, 0, 0, 0, null], 2, ['phq-9-item-9-unanswered phq-9 !']],
    ['a typed total only', null, 4, ['phq-9-item-9-unanswered phq-9 !']],
    ['a total of 9', [3, 3, 3, 0, 0, 0, 0, 0, 0], 9, []],
    ['a total of 10', [3, 3, 3, 1, 0, 0, 0, 0, 0], 10, ['phq-9-case-range phq-9 !']],
  ])('PHQ-9 with %s', (_, items, total, expected) => {
    const questionnaires = [aQuestionnaire({ questionnaire: PHQ, items })];
    expect(inShort(cautionsFor({ questionnaires }, { [`${PHQ}/phq-9`]: total }))).toEqual(expected);
  });

  it('PHQ-9 that was not done raises nothing', () => {
    const questionnaires = [aQuestionnaire({ questionnaire: PHQ, notDoneReason: 'declined' })];
    expect(cautionsFor({ questionnaires })).toEqual([]);
  });

  it.each([
    [10, 10, []],
    [11, 10, ['hads-anxiety-case-range hads-anxiety !']],
    [11, 11, ['hads-anxiety-case-range hads-anxiety !', 'hads-depression-case-range hads-depression !']],
  ])('HADS of %i and %i', (anxiety, depression, expected) => {
    const questionnaires = [aQuestionnaire({ questionnaire: HADS })];
    const scores = { [`${HADS}/hads-anxiety`]: anxiety, [`${HADS}/hads-depression`]: depression };
    expect(inShort(cautionsFor({ questionnaires }, scores))).toEqual(expected);
  });

  it('carry their source and its mark', () => {
    const questionnaires = [aQuestionnaire({ questionnaire: PHQ })];
    const [item9, range] = cautionsFor({ questionnaires }, { [`${PHQ}/phq-9`]: 12 });
    expect([item9?.citation.id, item9?.mark]).toEqual(['phq-9-item-9', 'common practice']);
    expect([range?.citation.id, range?.mark]).toEqual(['kroenke-2001', null]);
  });
});
