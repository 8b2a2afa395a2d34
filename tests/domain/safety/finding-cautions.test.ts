import { describe, expect, it } from 'vitest';
import { aWalk } from '../../support/assessment-entries.js';
import { cautionsFor, inShort, textOf } from '../../support/safety-cautions.js';

/** Two walks on the usual course, so that the walk itself raises nothing. */
const WALKS = [aWalk({ distanceM: 200 }), aWalk({ attempt: 2, distanceM: 220 })];
const NOT_DONE = [aWalk({ notDoneReason: 'not-safe' })];

describe('a contraindication or sign that was found', () => {
  it('must be acknowledged, whether or not a walk was done', () => {
    const screen = { safetyScreen: 'concern', safetyFindings: ['electrolyte-abnormality'] } as const;
    expect(inShort(cautionsFor({ ...screen, walkTests: [] }))).toEqual(['found-electrolyte-abnormality !']);
    expect(inShort(cautionsFor({ ...screen, walkTests: NOT_DONE }))).toEqual([
      'found-electrolyte-abnormality !',
    ]);
  });

  it.each([
    ['unstable-angina', 'absolute contraindication'],
    ['moderate-valve-stenosis', 'relative contraindication'],
    ['stop-staggering', 'sign to stop a walk test'],
    ['community-nausea', 'one community programme'],
  ])('%s is called by its kind', (id, words) => {
    const cautions = cautionsFor({ safetyScreen: 'concern', safetyFindings: [id] });
    expect(textOf(cautions, `found-${id}`)).toContain(words);
  });

  it('cites its source with its mark', () => {
    const [angina, cramps] = cautionsFor({
      safetyScreen: 'concern',
      safetyFindings: ['unstable-angina', 'stop-leg-cramps'],
    });
    expect([angina?.citation.id, angina?.mark]).toEqual(['holland-2014-table-4', null]);
    expect([cramps?.citation.id, cramps?.mark]).toEqual(['ats-2002-stop-signs', 'quoted in another paper']);
  });
});

describe('a walk that was done despite an absolute contraindication', () => {
  it('must be acknowledged, and names the walk and what was found', () => {
    const cautions = cautionsFor({
      safetyScreen: 'concern',
      safetyFindings: ['unstable-angina', 'leg-thrombosis', 'electrolyte-abnormality'],
      walkTests: WALKS,
    });
    expect(inShort(cautions)).toEqual([
      'found-unstable-angina !',
      'found-leg-thrombosis !',
      'found-electrolyte-abnormality !',
      'walked-despite-absolute-contraindication !',
    ]);
    const text = textOf(cautions, 'walked-despite-absolute-contraindication');
    expect(text).toMatch(/^ISWT recorded as done/);
    expect(text).toContain('Unstable angina; Thrombosis in a leg.');
    expect(text).not.toContain('electrolytes');
  });

  it('is a walk of zero metres too', () => {
    const cautions = cautionsFor({
      safetyScreen: 'concern',
      safetyFindings: ['unstable-angina'],
      walkTests: [aWalk({ distanceM: 0 })],
    });
    expect(inShort(cautions)).toContain('walked-despite-absolute-contraindication !');
  });

  it.each([
    ['on room air', [0, 0], true],
    ['once on room air', [2, 0], true],
    ['with nothing recorded', [null, null], true],
    ['with oxygen', [2, 2], false],
  ])('a low SpO2 at rest, walked %s: %s', (_, flows, isSaid) => {
    const walkTests = WALKS.map((walk, index) => ({ ...walk, oxygenLPerMin: flows[index] ?? null }));
    const ids = cautionsFor({
      safetyScreen: 'no-concern',
      safetyFindings: ['resting-saturation-at-or-below-85'],
      walkTests,
    }).map((caution) => caution.id);
    expect(ids.includes('walked-despite-absolute-contraindication')).toBe(isSaid);
  });

  it('is not lifted by oxygen for any other contraindication', () => {
    const walkTests = WALKS.map((walk) => ({ ...walk, oxygenLPerMin: 2 }));
    const cautions = cautionsFor({
      safetyScreen: 'concern',
      safetyFindings: ['uncontrolled-asthma'],
      walkTests,
    });
    expect(inShort(cautions)).toContain('walked-despite-absolute-contraindication !');
  });
});

describe('the safety screen', () => {
  it.each([
    ['no concern, nothing found, walked', 'no-concern', [], WALKS, []],
    ['not recorded, walked', 'not-recorded', [], WALKS, ['safety-screen-not-recorded']],
    ['not recorded, no walk', 'not-recorded', [], [], []],
    ['not recorded, walk not done', 'not-recorded', [], NOT_DONE, []],
    ['concern, walked', 'concern', [], WALKS, ['walked-despite-concern !']],
    ['concern, no walk', 'concern', [], [], []],
    ['concern, walk not done', 'concern', [], NOT_DONE, []],
    [
      'concern with a relative contraindication, walked',
      'concern',
      ['orthopaedic-impairment'],
      WALKS,
      ['found-orthopaedic-impairment !', 'walked-despite-concern !'],
    ],
    [
      'no concern, yet a contraindication was found',
      'no-concern',
      ['orthopaedic-impairment'],
      [],
      ['found-orthopaedic-impairment !', 'safety-screen-disagrees'],
    ],
    [
      'no concern, and a sign appeared during the walk',
      'no-concern',
      ['stop-leg-cramps'],
      WALKS,
      ['found-stop-leg-cramps !'],
    ],
  ] as const)('%s', (_, safetyScreen, safetyFindings, walkTests, expected) => {
    expect(inShort(cautionsFor({ safetyScreen, safetyFindings, walkTests }))).toEqual(expected);
  });
});
