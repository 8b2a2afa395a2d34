import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cautionNamed, cautionsAt, inShort } from '../../support/cautions-api.js';
import type { Body } from '../../support/entries.js';
import { givenAssessment, givenReferral } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

const PHQ_9 = 'patient-health-questionnaire-9';
const HADS = 'hospital-anxiety-and-depression-scale';
const GAD_7 = 'generalised-anxiety-disorder-7';

const items = (questionnaire: string, answers: readonly (number | null)[]): Body => ({
  questionnaire,
  items: answers,
});
const typed = (questionnaire: string, scores: Readonly<Record<string, number>>): Body => ({
  questionnaire,
  typedScores: Object.entries(scores).map(([measure, value]) => ({ measure, value })),
});

describe('prompts of questionnaires', () => {
  let service: TestApp;
  beforeAll(async () => {
    service = await startApp();
  });
  afterAll(() => service.close());

  const raisedBy = async (...questionnaires: readonly Body[]) => {
    const changes = { walkTests: [], sitToStands: [], questionnaires };
    const assessmentId = await givenAssessment(service, await givenReferral(service), changes);
    return cautionsAt(service, assessmentId);
  };

  it.each<[string, Body, readonly string[]]>([
    ['item 9 at 1, total 1', items(PHQ_9, [0, 0, 0, 0, 0, 0, 0, 0, 1]), ['phq-9-item-9-above-zero phq-9 !']],
    ['item 9 at 3', items(PHQ_9, [0, 0, 0, 0, 0, 0, 0, 0, 3]), ['phq-9-item-9-above-zero phq-9 !']],
    ['item 9 at 0', items(PHQ_9, [1, 1, 1, 1, 1, 1, 1, 1, 0]), []],
    ['item 9 unanswered', items(PHQ_9, [0, 0, 0, 0, 0, 0, 0, 0, null]), ['phq-9-item-9-unanswered phq-9 !']],
    ['a typed total, even of 0', typed(PHQ_9, { 'phq-9': 0 }), ['phq-9-item-9-unanswered phq-9 !']],
    ['a total of 9', items(PHQ_9, [2, 2, 2, 2, 1, 0, 0, 0, 0]), []],
    ['a total of 10', items(PHQ_9, [2, 2, 2, 2, 2, 0, 0, 0, 0]), ['phq-9-case-range phq-9 !']],
    [
      'both at once',
      items(PHQ_9, [3, 3, 3, 0, 0, 0, 0, 0, 1]),
      ['phq-9-item-9-above-zero phq-9 !', 'phq-9-case-range phq-9 !'],
    ],
  ])('of the PHQ-9: %s', async (_name, questionnaire, raised) => {
    expect(inShort(await raisedBy(questionnaire))).toEqual(raised);
  });

  it.each<[string, Body, readonly string[]]>([
    ['10 and 10', typed(HADS, { 'hads-anxiety': 10, 'hads-depression': 10 }), []],
    [
      '11 and 10',
      typed(HADS, { 'hads-anxiety': 11, 'hads-depression': 10 }),
      ['hads-anxiety-case-range hads-anxiety !'],
    ],
    [
      '10 and 11',
      typed(HADS, { 'hads-anxiety': 10, 'hads-depression': 11 }),
      ['hads-depression-case-range hads-depression !'],
    ],
    [
      '21 and 21',
      typed(HADS, { 'hads-anxiety': 21, 'hads-depression': 21 }),
      ['hads-anxiety-case-range hads-anxiety !', 'hads-depression-case-range hads-depression !'],
    ],
    [
      // Odd items 2+2+2+1+2+1+1 = 11; even items all 0.
      'items that add up to 11 and 0',
      items(HADS, [2, 0, 2, 0, 2, 0, 1, 0, 2, 0, 1, 0, 1, 0]),
      ['hads-anxiety-case-range hads-anxiety !'],
    ],
  ])('of the HADS: anxiety and depression %s', async (_name, questionnaire, raised) => {
    expect(inShort(await raisedBy(questionnaire))).toEqual(raised);
  });

  it('of the GAD-7 begin at 10', async () => {
    expect(inShort(await raisedBy(typed(GAD_7, { 'gad-7': 9 })))).toEqual([]);
    expect(inShort(await raisedBy(typed(GAD_7, { 'gad-7': 10 })))).toEqual(['gad-7-case-range gad-7 !']);
  });

  it('ask for the local risk procedure, with their source, and tell no item wording', async () => {
    const caution = cautionNamed(
      await raisedBy(items(PHQ_9, [0, 0, 0, 0, 0, 0, 0, 0, 1])),
      'phq-9-item-9-above-zero',
    );
    expect(caution).toMatchObject({
      text: 'Item 9 of the PHQ-9 is above 0, whatever the total. Follow the local risk procedure and record who was told, and when.',
      source: { id: 'phq-9-item-9', mark: 'common practice' },
      by: 'registered-clinician',
    });
  });

  it('are raised by nothing that was not done', async () => {
    expect(inShort(await raisedBy({ questionnaire: PHQ_9, notDoneReason: 'declined' }))).toEqual([]);
  });

  it('of several questionnaires stand beside each other', async () => {
    const raised = await raisedBy(
      typed(HADS, { 'hads-anxiety': 12, 'hads-depression': 3 }),
      typed(PHQ_9, { 'phq-9': 12 }),
    );
    expect([...inShort(raised)].sort()).toEqual([
      'hads-anxiety-case-range hads-anxiety !',
      'phq-9-case-range phq-9 !',
      'phq-9-item-9-unanswered phq-9 !',
    ]);
  });
});
