/** Valid request bodies; a test states only what matters to it. */

export type Body = Record<string, unknown>;

/** NHS numbers of the test range with a right check digit. */
export const TEST_NHS_NUMBERS = [
  '9990000018',
  '9990000026',
  '9990000034',
  '9990000042',
  '9990000050',
] as const;

export function aPatient(changes: Body = {}): Body {
  return {
    nhsNumber: TEST_NHS_NUMBERS[0],
    familyName: 'Sandwort',
    givenName: 'Mavis',
    bornOn: '1954-03-09',
    sexAtBirth: 'female',
    ...changes,
  };
}

export function aReferralBody(patientId: string, siteId: string, changes: Body = {}): Body {
  return {
    patientId,
    siteId,
    receivedOn: '2026-04-02',
    source: 'general-practice',
    diagnosis: 'copd',
    pathway: 'stable',
    ...changes,
  };
}

export function aShuttleWalk(distanceM: number, attempt: 1 | 2, changes: Body = {}): Body {
  return {
    test: 'incremental-shuttle-walk',
    attempt,
    distanceM,
    courseLengthM: 10,
    walkingAid: 'none',
    oxygenLPerMin: 0,
    ...changes,
  };
}

export function anAssessment(siteId: string, changes: Body = {}): Body {
  return {
    timepoint: 'baseline',
    assessedOn: '2026-04-20',
    siteId,
    heightCm: 160,
    weightKg: 68.5,
    safetyScreen: 'no-concern',
    walkTests: [aShuttleWalk(180, 1), aShuttleWalk(200, 2)],
    sitToStands: [{ test: 'one-minute-sit-to-stand', repetitions: 18 }],
    questionnaires: [{ questionnaire: 'copd-assessment-test', items: [3, 3, 2, 4, 3, 2, 3, 2] }],
    ...changes,
  };
}

export function aSession(siteId: string, changes: Body = {}): Body {
  return { siteId, heldOn: '2026-05-05', mode: 'centre', isSupervised: true, ...changes };
}

export function aSixMinuteWalk(distanceM: number, changes: Body = {}): Body {
  return {
    test: 'six-minute-walk',
    attempt: 1,
    distanceM,
    courseLengthM: 30,
    walkingAid: 'none',
    oxygenLPerMin: 0,
    ...changes,
  };
}
