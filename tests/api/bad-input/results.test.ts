import { refusesAll } from '../../support/bad-input.js';
import type { BadInput, World } from '../../support/bad-input.js';
import { sendChanged } from '../../support/bodies.js';
import { aShuttleWalk, aSixMinuteWalk } from '../../support/entries.js';
import type { Body } from '../../support/entries.js';

type Case = readonly [name: string, changes: Body, pointer: string, code: string];

const endurance = (changes: Body) => ({
  walkTests: [
    { test: 'endurance-shuttle-walk', attempt: 1, timeS: 213, speedLevel: 6, courseLengthM: 10, ...changes },
  ],
});
const shuttle = (changes: Body) => ({ walkTests: [aShuttleWalk(200, 1, changes)] });
const stand = (changes: Body) => ({
  sitToStands: [{ test: 'one-minute-sit-to-stand', repetitions: 18, ...changes }],
});
const cat = (changes: Body) => ({
  questionnaires: [{ questionnaire: 'copd-assessment-test', ...changes }],
});
const CAT_ITEMS = [3, 3, 2, 4, 3, 2, 3, 2];
const questionnaire = (name: string, changes: Body) => ({
  questionnaires: [{ questionnaire: name, ...changes }],
});
const typed = (measure: string, value: number) => ({ typedScores: [{ measure, value }] });
const items = (count: number, value: number) => ({ items: Array.from({ length: count }, () => value) });

const WALKS: readonly Case[] = [
  ['an ISWT of 185 m', shuttle({ distanceM: 185 }), '/walkTests/0/distanceM', 'off-the-grid'],
  ['an ISWT of 1030 m', shuttle({ distanceM: 1030 }), '/walkTests/0/distanceM', 'out-of-range'],
  ['an ISWT of -10 m', shuttle({ distanceM: -10 }), '/walkTests/0/distanceM', 'out-of-range'],
  ['an ISWT of 200.5 m', shuttle({ distanceM: 200.5 }), '/walkTests/0/distanceM', 'off-the-grid'],
  [
    'a distance that disagrees with level and shuttles',
    shuttle({ distanceM: 210, level: 5, shuttles: 2 }),
    '/walkTests/0/distanceM',
    'distance-disagrees',
  ],
  [
    'zero metres that disagree with level and shuttles',
    { ...shuttle({ distanceM: 0, level: 5, shuttles: 2 }), confirmed: ['/walkTests/0/distanceM'] },
    '/walkTests/0/distanceM',
    'distance-disagrees',
  ],
  [
    'more shuttles than the level has',
    shuttle({ distanceM: null, level: 5, shuttles: 8 }),
    '/walkTests/0/shuttles',
    'impossible-shuttles',
  ],
  [
    'a level 13',
    shuttle({ distanceM: null, level: 13, shuttles: 1 }),
    '/walkTests/0/shuttles',
    'impossible-shuttles',
  ],
  [
    'a level without shuttles',
    shuttle({ distanceM: null, level: 5 }),
    '/walkTests/0/shuttles',
    'level-with-shuttles',
  ],
  [
    'shuttles without a level',
    shuttle({ distanceM: 200, shuttles: 2 }),
    '/walkTests/0/level',
    'level-with-shuttles',
  ],
  ['an ISWT with no result', shuttle({ distanceM: null }), '/walkTests/0/distanceM', 'value-or-reason'],
  [
    'a result of a test that was not done',
    shuttle({ notDoneReason: 'not-safe' }),
    '/walkTests/0/notDoneReason',
    'value-and-reason',
  ],
  [
    'zero metres of a test that was not done',
    shuttle({ distanceM: 0, notDoneReason: 'unable' }),
    '/walkTests/0/notDoneReason',
    'value-and-reason',
  ],
  ['an ISWT with a time', shuttle({ timeS: 200 }), '/walkTests/0/timeS', 'not-for-this-test'],
  ['an ISWT on 30 m', shuttle({ courseLengthM: 30 }), '/walkTests/0/courseLengthM', 'out-of-range'],
  ['a walk test that there is not', shuttle({ test: 'six-hour-walk' }), '/walkTests/0/test', 'unknown-test'],
  [
    'a six-minute walk of 1001 m',
    { walkTests: [aSixMinuteWalk(1001)] },
    '/walkTests/0/distanceM',
    'out-of-range',
  ],
  [
    'a six-minute walk with a level',
    { walkTests: [aSixMinuteWalk(400, { level: 5 })] },
    '/walkTests/0/level',
    'not-for-this-test',
  ],
  ['an ESWT of 1201 s', endurance({ timeS: 1201 }), '/walkTests/0/timeS', 'out-of-range'],
  [
    'an ESWT without a speed level',
    endurance({ speedLevel: null }),
    '/walkTests/0/speedLevel',
    'value-or-reason',
  ],
  ['an ESWT at level 17', endurance({ speedLevel: 17 }), '/walkTests/0/speedLevel', 'out-of-range'],
  ['a Borg score of 10.5', shuttle({ endFatigue: 10.5 }), '/walkTests/0/endFatigue', 'out-of-range'],
  [
    'a Borg score of 3.2',
    shuttle({ endBreathlessness: 3.2 }),
    '/walkTests/0/endBreathlessness',
    'out-of-range',
  ],
  ['an SpO2 of 101 %', shuttle({ startSpo2Percent: 101 }), '/walkTests/0/startSpo2Percent', 'out-of-range'],
  ['oxygen of 16 L/min', shuttle({ oxygenLPerMin: 16 }), '/walkTests/0/oxygenLPerMin', 'out-of-range'],
  [
    'a second attempt without a first',
    { walkTests: [aShuttleWalk(200, 2)] },
    '/walkTests/0/attempt',
    'no-first-attempt',
  ],
  [
    'the same attempt twice',
    { walkTests: [aShuttleWalk(200, 1), aShuttleWalk(210, 1)] },
    '/walkTests/1',
    'listed-twice',
  ],
];

const STANDS: readonly Case[] = [
  ['81 repetitions', stand({ repetitions: 81 }), '/sitToStands/0/repetitions', 'out-of-range'],
  ['half a repetition', stand({ repetitions: 18.5 }), '/sitToStands/0/repetitions', 'off-the-grid'],
  ['a time for a minute', stand({ timeS: 60 }), '/sitToStands/0/timeS', 'not-for-this-test'],
  ['a stand with no result', stand({ repetitions: null }), '/sitToStands/0/repetitions', 'value-or-reason'],
  [
    'a stand with result and reason',
    stand({ notDoneReason: 'unable' }),
    '/sitToStands/0/notDoneReason',
    'value-and-reason',
  ],
  ['a stand that there is not', stand({ test: 'squat' }), '/sitToStands/0/test', 'unknown-test'],
  [
    'the same stand twice',
    { sitToStands: [stand({}), stand({})].flatMap((each) => each.sitToStands) },
    '/sitToStands/1',
    'listed-twice',
  ],
];

const QUESTIONNAIRES: readonly Case[] = [
  ['seven items of eight', cat(items(7, 3)), '/questionnaires/0/items', 'wrong-item-count'],
  ['nine items of eight', cat(items(9, 3)), '/questionnaires/0/items', 'wrong-item-count'],
  [
    'an item of 6',
    cat({ items: [...CAT_ITEMS.slice(0, 7), 6] }),
    '/questionnaires/0/items/7',
    'item-out-of-range',
  ],
  [
    'an item of 2.5',
    cat({ items: [2.5, ...CAT_ITEMS.slice(1)] }),
    '/questionnaires/0/items/0',
    'item-out-of-range',
  ],
  [
    'a typed total that disagrees with the items',
    cat({ items: CAT_ITEMS, ...typed('cat-total', 21) }),
    '/questionnaires/0/typedScores/0/value',
    'items-disagree',
  ],
  ['a total of 41', cat(typed('cat-total', 41)), '/questionnaires/0/typedScores/0/value', 'out-of-range'],
  ['a total of 20.5', cat(typed('cat-total', 20.5)), '/questionnaires/0/typedScores/0/value', 'off-the-grid'],
  [
    'a score of another questionnaire',
    cat(typed('phq-9', 5)),
    '/questionnaires/0/typedScores/0/measure',
    'unknown-measure',
  ],
  [
    'a score twice',
    cat({ typedScores: [typed('cat-total', 5), typed('cat-total', 5)].flatMap((each) => each.typedScores) }),
    '/questionnaires/0/typedScores/1/measure',
    'unknown-measure',
  ],
  ['a questionnaire with nothing in it', cat({}), '/questionnaires/0', 'value-or-reason'],
  [
    'a questionnaire of which nothing was answered',
    cat({ items: CAT_ITEMS.map(() => null) }),
    '/questionnaires/0',
    'value-or-reason',
  ],
  [
    'scores of a questionnaire that was not done',
    cat({ items: CAT_ITEMS, notDoneReason: 'language' }),
    '/questionnaires/0/notDoneReason',
    'value-and-reason',
  ],
  [
    'a form of a questionnaire that has one form',
    cat({ items: CAT_ITEMS, form: 'long' }),
    '/questionnaires/0/form',
    'unknown-form',
  ],
  [
    'a form that there is not, of a questionnaire that was not done',
    cat({ form: 'a note that does not belong here', notDoneReason: 'language' }),
    '/questionnaires/0/form',
    'unknown-form',
  ],
  [
    'a questionnaire that there is not',
    questionnaire('mood-ring', typed('mood', 1)),
    '/questionnaires/0/questionnaire',
    'unknown-questionnaire',
  ],
  [
    'CRQ items without the form',
    questionnaire('chronic-respiratory-questionnaire', items(20, 4)),
    '/questionnaires/0/form',
    'unknown-form',
  ],
  [
    'a CRQ total that disagrees with its domains',
    questionnaire('chronic-respiratory-questionnaire', {
      form: 'self-reported',
      typedScores: [
        { measure: 'crq-dyspnoea', value: 4 },
        { measure: 'crq-fatigue', value: 4 },
        { measure: 'crq-emotional-function', value: 4 },
        { measure: 'crq-mastery', value: 4 },
        { measure: 'crq-total', value: 4.05 },
      ],
    }),
    '/questionnaires/0/typedScores/4/value',
    'domains-disagree',
  ],
  [
    'an index of a value set that is not named',
    questionnaire('eq-5d-5l', typed('eq-5d-5l-index', 0.8)),
    '/questionnaires/0/typedScores/0/value',
    'form-missing',
  ],
  [
    'a modified grade of 0 as an MRC grade',
    questionnaire('mrc-dyspnoea', items(1, 0)),
    '/questionnaires/0/items/0',
    'item-out-of-range',
  ],
  [
    'the same questionnaire twice',
    {
      questionnaires: [cat({ items: CAT_ITEMS }), cat({ items: CAT_ITEMS })].flatMap((e) => e.questionnaires),
    },
    '/questionnaires/1',
    'listed-twice',
  ],
];

const PERSON: readonly Case[] = [
  ['a height of 1.6 cm', { heightCm: 1.6 }, '/heightCm', 'out-of-range'],
  ['a height of 119.5 cm', { heightCm: 119.5 }, '/heightCm', 'out-of-range'],
  ['a height of 220.5 cm', { heightCm: 220.5 }, '/heightCm', 'out-of-range'],
  ['a height of 160.3 cm', { heightCm: 160.3 }, '/heightCm', 'out-of-range'],
  ['a weight of 24.9 kg', { weightKg: 24.9 }, '/weightKg', 'out-of-range'],
  ['a weight of 300.1 kg', { weightKg: 300.1 }, '/weightKg', 'out-of-range'],
  ['a weight of 68.55 kg', { weightKg: 68.55 }, '/weightKg', 'out-of-range'],
  ['a weight of 1e-7 kg', { weightKg: 1e-7 }, '/weightKg', 'out-of-range'],
  ['an FEV1 of 7.01 L', { spirometry: { fev1L: 7.01 } }, '/spirometry/fev1L', 'out-of-range'],
  ['an SpO2 of 49 %', { resting: { spo2Percent: 49 } }, '/resting/spo2Percent', 'out-of-range'],
  ['a heart rate of 29', { resting: { heartRateBpm: 29 } }, '/resting/heartRateBpm', 'out-of-range'],
  [
    'pressures that are exchanged',
    { resting: { systolicMmHg: 90, diastolicMmHg: 95 } },
    '/resting/systolicMmHg',
    'pressures-reversed',
  ],
];

refusesAll([
  ...[...WALKS, ...STANDS, ...QUESTIONNAIRES, ...PERSON].flatMap(([name, changes, pointer, code]) =>
    ['recordAssessment', 'correctAssessment'].map((operationId): BadInput => ({
      name: `${name} (${operationId})`,
      status: 422,
      type: 'rules-broken',
      pointers: [pointer],
      codes: [code],
      send: (world: World) => sendChanged(world, operationId, changes),
    })),
  ),
  {
    name: 'everything that is wrong, named at once',
    status: 422,
    type: 'rules-broken',
    pointers: [
      '/heightCm',
      '/walkTests/0/distanceM',
      '/sitToStands/0/repetitions',
      '/questionnaires/0/items',
    ],
    send: (world) =>
      sendChanged(world, 'recordAssessment', {
        heightCm: 1.6,
        walkTests: [aShuttleWalk(185, 1)],
        ...stand({ repetitions: 81 }),
        ...cat(items(7, 3)),
      }),
  },
]);
