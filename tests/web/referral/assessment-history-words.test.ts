import { expect, it } from 'vitest';
import { assessmentHistoryWords } from '../../../src/web/referral/assessment-history-words.js';

const SITE = '01a2183c-f333-7460-94ca-962303c36fcd';
const words = assessmentHistoryWords(new Map([[SITE, 'Dune Hall']]));
const told = (field: string, value: unknown) => `${words.field(field)}: ${words.value(field, value)}`;

it.each([
  ['timepoint', 'baseline', 'Assessment: baseline assessment'],
  ['siteId', SITE, 'Site: Dune Hall'],
  ['heightCm', 160.5, 'Height: 160.5\u00a0cm'],
  ['spirometry.fev1FvcPercent', 41, 'FEV1 of FVC: 41\u00a0%'],
  ['safetyScreen', 'no-concern', 'Safety checklist: looked at: no concern'],
  ['walkTests.incremental-shuttle-walk.1.oxygenLPerMin', 0, 'ISWT, first walk: oxygen: 0\u00a0L/min'],
  ['walkTests.six-minute-walk.2.stopReason', 'leg-fatigue', '6MWT, second walk: why it ended: tired legs'],
  ['sitToStands.one-minute-sit-to-stand.handsUsed', false, '1-min STS: hands used: no'],
  ['questionnaires.copd-assessment-test.items', [3, null, 2], 'CAT: items in printed order: 3, none, 2'],
  ['questionnaires.copd-assessment-test.notDoneReason', 'no-time', 'CAT: not done because: no time'],
  [
    'questionnaires.chronic-respiratory-questionnaire.typedScores.crq-mastery',
    4.25,
    'Chronic Respiratory Questionnaire, mastery, added up by hand: 4.25',
  ],
  ['physicalTests.handgrip-strength.conditions.side', 'left', 'Handgrip: side: left'],
  ['scores.cat-total', 64 / 3, 'COPD Assessment Test total: 21.3'],
  ['confirmed', ['/heightCm', '/walkTests/0/distanceM'], 'Unusual values that were confirmed: 2'],
] as const)('tells %s in words', (field, value, expected) => {
  expect(told(field, value)).toBe(expected);
});

it('tells what was found on the safety checklist in the words of the checklist', () => {
  const said = words.value('safetyFindings', ['not-an-item']);
  expect(said).toBe('not-an-item');
  expect(words.value('safetyFindings', ['unstable-angina'])).not.toContain('unstable-angina');
});

it.each(['walkTests.six-minute-walk.1.test', 'enteredInError.markedBy', 'enteredInError.markedAt'])(
  'leaves out %s, which is said elsewhere',
  (field) => {
    expect(words.isTold(field)).toBe(false);
  },
);
