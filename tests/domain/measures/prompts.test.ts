import { describe, expect, it } from 'vitest';
import { fraction } from '../../../src/domain/exact/fraction.js';
import { findQuestionnaire } from '../../../src/domain/measures/catalogue.js';
import { promptsFor } from '../../../src/domain/measures/prompts.js';

const PHQ = 'patient-health-questionnaire-9';
const HADS = 'hospital-anxiety-and-depression-scale';

describe('item 9 of the PHQ-9', () => {
  it.each([
    ['at 0', [0, 0, 0, 0, 0, 0, 0, 0, 0], []],
    ['above 0, whatever the total', [0, 0, 0, 0, 0, 0, 0, 0, 1], ['phq-9-item-9-above-zero']],
    ['unanswered', [0, 0, 0, 0, 0, 0, 0, 0, null], ['phq-9-item-9-unanswered']],
    ['not entered, because only a total was typed', null, ['phq-9-item-9-unanswered']],
  ])('%s', (_, items, expected) => {
    expect(ids(PHQ, items, { 'phq-9': 4 })).toEqual(expected);
  });

  it('comes before the case range', () => {
    expect(ids(PHQ, [3, 3, 3, 3, 0, 0, 0, 0, 2], { 'phq-9': 14 })).toEqual([
      'phq-9-item-9-above-zero',
      'phq-9-case-range',
    ]);
  });

  it('is asked of no other questionnaire', () => {
    expect(ids('generalised-anxiety-disorder-7', null, { 'gad-7': 9 })).toEqual([]);
  });

  it('prompts even where no total could be made', () => {
    expect(ids(PHQ, [null, null, null, null, 0, 0, 0, 0, 2], {})).toEqual(['phq-9-item-9-above-zero']);
  });
});

describe('case ranges', () => {
  it.each([
    ['hads-anxiety', 10, []],
    ['hads-anxiety', 11, ['hads-anxiety-case-range']],
    ['hads-depression', 10, []],
    ['hads-depression', 11, ['hads-depression-case-range']],
  ])('%s of %s', (measureId, score, expected) => {
    expect(ids(HADS, null, { [measureId]: score })).toEqual(expected);
  });

  it('are read exactly: a filled score of 10.5 has not reached 11', () => {
    const questionnaire = findQuestionnaire(HADS);
    if (questionnaire === undefined) throw new Error('There is no HADS');
    expect(promptsFor(questionnaire, null, new Map([['hads-anxiety', fraction(21, 2)]]))).toEqual([]);
  });

  it('carry words, a source and its status', () => {
    const questionnaire = findQuestionnaire(HADS);
    if (questionnaire === undefined) throw new Error('There is no HADS');
    const [prompt] = promptsFor(questionnaire, null, new Map([['hads-anxiety', fraction(15)]]));
    expect(prompt).toMatchObject({
      measureId: 'hads-anxiety',
      text: 'HADS-A is 11 or more, the case range. Follow the local risk procedure and record who was told, and when.',
      citation: { status: 'retrieved' },
    });
  });
});

function ids(
  questionnaireId: string,
  items: readonly (number | null)[] | null,
  scores: Readonly<Record<string, number>>,
): readonly string[] {
  const questionnaire = findQuestionnaire(questionnaireId);
  if (questionnaire === undefined) throw new Error(`There is no questionnaire ${questionnaireId}`);
  const exact = Object.entries(scores).map(([id, score]) => [id, fraction(score)] as const);
  return promptsFor(questionnaire, items, new Map(exact)).map((prompt) => prompt.id);
}
