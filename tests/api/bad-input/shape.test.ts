import { refusesAll, sendRaw } from '../../support/bad-input.js';
import type { BadInput, World } from '../../support/bad-input.js';
import { sendChanged } from '../../support/bodies.js';
import type { Body } from '../../support/entries.js';
import { aPatient, aShuttleWalk } from '../../support/entries.js';

/** What has the wrong shape, at whatever depth: a pointer leads to the very field. */
refusesAll([
  ...wrong('registerPatient', [
    ['a family name that is a number', { familyName: 7 }, '/familyName', 'invalid-type'],
    ['a family name that is a list', { familyName: ['Sandwort'] }, '/familyName', 'invalid-type'],
    ['a family name that is missing', { familyName: undefined }, '/familyName', 'invalid-type'],
    ['a family name that is null', { familyName: null }, '/familyName', 'invalid-type'],
    ['a family name that is blank', { familyName: ' \t ' }, '/familyName', 'too-small'],
    ['a family name of 101 letters', { familyName: 'x'.repeat(101) }, '/familyName', 'too-big'],
    ['a name with NUL', { familyName: 'Sand\u0000wort' }, '/familyName', 'invalid-format'],
    ['a name with a line break', { familyName: 'Sand\nwort' }, '/familyName', 'invalid-format'],
    ['a name with an escape sequence', { givenName: 'Mavis\u001b[31m' }, '/givenName', 'invalid-format'],
    ['a name with a C1 control', { givenName: 'Mavis\u009b' }, '/givenName', 'invalid-format'],
    ['a name with half a surrogate pair', { givenName: 'Mavis\ud800' }, '/givenName', 'invalid-format'],
    ['a sex that is none of the list', { sexAtBirth: 'F' }, '/sexAtBirth', 'invalid-value'],
    ['a sex that is a word of the language', { sexAtBirth: 'toString' }, '/sexAtBirth', 'invalid-value'],
    ['an ethnic category in lower case', { ethnicCategory: 'a' }, '/ethnicCategory', 'invalid-value'],
    ['an ethnic category as a number', { ethnicCategory: 99 }, '/ethnicCategory', 'invalid-value'],
    ['a quintile as text', { deprivationQuintile: '3' }, '/deprivationQuintile', 'invalid-type'],
    ['a quintile of 0', { deprivationQuintile: 0 }, '/deprivationQuintile', 'too-small'],
    ['a quintile of 6', { deprivationQuintile: 6 }, '/deprivationQuintile', 'too-big'],
    ['a quintile of 2.5', { deprivationQuintile: 2.5 }, '/deprivationQuintile', 'invalid-type'],
    ['a practice code with a blank', { gpPracticeCode: 'Y 99999' }, '/gpPracticeCode', 'invalid-format'],
    ['an NHS number as a number', { nhsNumber: 9_990_000_018 }, '/nhsNumber', 'invalid-type'],
  ]),
  ...wrong('registerReferral', [
    ['a patient that is no id', { patientId: 'the one of yesterday' }, '/patientId', 'invalid-format'],
    ['a site that is no id', { siteId: '1' }, '/siteId', 'invalid-format'],
    ['a diagnosis that is none of the list', { diagnosis: 'COPD' }, '/diagnosis', 'invalid-value'],
    ['a modified grade of 0', { mrcGrade: 0 }, '/mrcGrade', 'too-small'],
    ['a grade of 6', { mrcGrade: 6 }, '/mrcGrade', 'too-big'],
    ['61 planned sessions', { plannedSessions: 61 }, '/plannedSessions', 'too-big'],
    ['no planned session', { plannedSessions: 0 }, '/plannedSessions', 'too-small'],
    ['53 planned weeks', { plannedWeeks: 53 }, '/plannedWeeks', 'too-big'],
    ['other conditions with NUL', { otherConditions: 'x\u0000y' }, '/otherConditions', 'invalid-format'],
    ['a stage, which is derived', { stage: 'closed' }, '/stage', 'unrecognized-keys'],
    ['a version', { version: 2 }, '/version', 'unrecognized-keys'],
  ]),
  ...wrong('correctReferral', [
    [
      'an unknown field among the changes',
      { changes: { stage: 'closed' } },
      '/changes/stage',
      'unrecognized-keys',
    ],
    [
      'the patient among the changes',
      { changes: { patientId: 'x' } },
      '/changes/patientId',
      'unrecognized-keys',
    ],
    ['a correction without a reason', { reason: undefined }, '/reason', 'invalid-type'],
    ['a blank reason', { reason: '  ' }, '/reason', 'too-small'],
  ]),
  ...wrong('recordAttendances', [
    [
      'an outcome that is none of the list',
      { attendances: [{ referralId: someId(), outcome: 'came late' }] },
      '/attendances/0/outcome',
      'invalid-value',
    ],
    ['a register that is no list', { attendances: {} }, '/attendances', 'invalid-type'],
    [
      'an unknown field in an entry',
      { attendances: [{ referralId: someId(), outcome: 'attended', note: '' }] },
      '/attendances/0/note',
      'unrecognized-keys',
    ],
    [
      'a register of 201 entries',
      { attendances: Array.from({ length: 201 }, () => ({ referralId: someId(), outcome: 'attended' })) },
      '/attendances',
      'too-big',
    ],
  ]),
  ...wrong('holdSession', [
    ['a supervised session as text', { isSupervised: 'yes' }, '/isSupervised', 'invalid-type'],
    ['a supervised session as a number', { isSupervised: 1 }, '/isSupervised', 'invalid-type'],
    ['a hybrid session', { mode: 'hybrid' }, '/mode', 'invalid-value'],
  ]),
  ...wrong('recordAssessment', [
    ['a weight as text', { weightKg: '68.5' }, '/weightKg', 'invalid-type'],
    ['a weight of 1e308', { weightKg: 1e308 }, '/weightKg', 'too-big'],
    ['a weight of -1e308', { weightKg: -1e308 }, '/weightKg', 'too-small'],
    ['a height as true', { heightCm: true }, '/heightCm', 'invalid-type'],
    ['walks that are no list', { walkTests: { 0: aShuttleWalk(200, 1) } }, '/walkTests', 'invalid-type'],
    [
      'an unknown field in a walk',
      { walkTests: [aShuttleWalk(200, 1, { 'metres/walked': 1 })] },
      '/walkTests/0/metres~1walked',
      'unrecognized-keys',
    ],
    [
      'a distance as text',
      { walkTests: [aShuttleWalk(200, 1), aShuttleWalk(210, 2, { distanceM: '210' })] },
      '/walkTests/1/distanceM',
      'invalid-type',
    ],
    [
      'a third attempt',
      { walkTests: [aShuttleWalk(200, 1, { attempt: 3 })] },
      '/walkTests/0/attempt',
      'invalid-union',
    ],
    [
      'a walking aid that is none of the list',
      { walkTests: [aShuttleWalk(200, 1, { walkingAid: 'dog' })] },
      '/walkTests/0/walkingAid',
      'invalid-value',
    ],
    [
      'items as texts',
      { questionnaires: [{ questionnaire: 'copd-assessment-test', items: ['3', 3, 2, 4, 3, 2, 3, 2] }] },
      '/questionnaires/0/items/0',
      'invalid-type',
    ],
    [
      'scores, which are computed',
      { scores: [{ measure: 'cat-total', value: 10 }] },
      '/scores',
      'unrecognized-keys',
    ],
    [
      'an unknown field in resting values',
      { resting: { spo2Percent: 94, temperatureC: 37 } },
      '/resting/temperatureC',
      'unrecognized-keys',
    ],
  ]),
  {
    name: 'a number that is too large to be one (1e400)',
    status: 400,
    type: 'malformed-request',
    pointers: ['/deprivationQuintile'],
    send: (world) =>
      sendRaw(world, {
        method: 'post',
        path: '/api/v1/patients',
        type: 'application/json',
        text: JSON.stringify(aPatient({ deprivationQuintile: 0 })).replace(
          '"deprivationQuintile":0',
          '"deprivationQuintile":1e400',
        ),
      }),
  },
  ...['patients', 'referrals'].flatMap((list): readonly BadInput[] => [
    {
      name: `an id of ${list} that is no UUID`,
      status: 400,
      type: 'malformed-request',
      pointers: [list === 'patients' ? 'patientId' : 'referralId'],
      send: ({ app }) => app.as('lead').get(`/api/v1/${list}/1%20or%201=1`),
    },
  ]),
]);

type Case = readonly [name: string, changes: Body, pointer: string, code: string];

function wrong(operationId: string, cases: readonly Case[]): readonly BadInput[] {
  return cases.map(([name, changes, pointer, code]) => ({
    name,
    status: 400,
    type: 'malformed-request',
    pointers: [pointer],
    codes: [code],
    send: (world: World) => sendChanged(world, operationId, changes),
  }));
}

function someId(): string {
  return '00000000-0000-4000-8000-000000000000';
}
