import { aPatient, aReferralBody, aShuttleWalk } from './entries.js';
import type { Body } from './entries.js';
import type { MovingClock } from './moving-clock.js';
import { asRecord, textAt } from './response.js';
import { created } from './scenario.js';
import type { TestApp } from './start-app.js';

/** What was made on the way, and the stage of the referral after each step. */
export interface WalkedLine {
  readonly patientId: string;
  readonly referralId: string;
  readonly baselineId: string;
  readonly dischargeId: string;
  readonly stages: readonly (readonly [step: string, stage: string])[];
}

/** CRQ items 1 to 20: dyspnoea 1-5; fatigue 8, 11, 15, 17; emotional function 6, 9, 12, 14, 16, 18, 20; mastery 7, 10, 13, 19. */
const CRQ_AT_BASELINE = [3, 2, 3, 3, 2, 4, 5, 4, 4, 5, 3, 5, 4, 3, 3, 4, 4, 4, 4, 5];
const CRQ_AT_DISCHARGE = [3, 3, 3, 4, 3, 5, 4, 4, 4, 5, 3, 5, 3, 4, 4, 4, 4, 4, 4, 6];
/** HADS items 1 to 14: anxiety is odd, depression even; item 11 is unanswered at discharge. */
const HADS_AT_BASELINE = [2, 1, 2, 1, 1, 1, 2, 1, 2, 2, 1, 1, 2, 1];
const HADS_AT_DISCHARGE = [1, 1, 2, 1, 1, 1, 2, 1, 1, 1, null, 1, 2, 1];

function baseline(siteId: string): Body {
  return {
    timepoint: 'baseline',
    assessedOn: '2026-04-20',
    siteId,
    heightCm: 160,
    weightKg: 68.5,
    safetyScreen: 'no-concern',
    walkTests: [aShuttleWalk(180, 1), aShuttleWalk(200, 2)],
    sitToStands: [{ test: 'one-minute-sit-to-stand', repetitions: 18 }],
    questionnaires: [
      { questionnaire: 'copd-assessment-test', items: [3, 3, 2, 4, 3, 2, 3, 2] },
      { questionnaire: 'hospital-anxiety-and-depression-scale', items: HADS_AT_BASELINE },
      {
        questionnaire: 'chronic-respiratory-questionnaire',
        form: 'self-reported',
        items: CRQ_AT_BASELINE,
      },
    ],
  };
}

/** The better walk is given as level and shuttles: 3 + 4 + 5 + 6 = 18 shuttles of levels 1 to 4, and 7 of level 5: 250 m. */
function discharge(siteId: string): Body {
  return {
    timepoint: 'discharge',
    assessedOn: '2026-06-22',
    siteId,
    weightKg: 67.2,
    safetyScreen: 'no-concern',
    walkTests: [
      aShuttleWalk(0, 2, { distanceM: null, level: 5, shuttles: 7 }),
      aShuttleWalk(240, 1, { walkingAid: 'none' }),
    ],
    sitToStands: [{ test: 'one-minute-sit-to-stand', repetitions: 21 }],
    questionnaires: [
      { questionnaire: 'copd-assessment-test', items: [3, 3, 2, 3, 3, 2, 2, 2] },
      { questionnaire: 'hospital-anxiety-and-depression-scale', items: HADS_AT_DISCHARGE },
      {
        questionnaire: 'chronic-respiratory-questionnaire',
        form: 'self-reported',
        items: CRQ_AT_DISCHARGE,
      },
    ],
  };
}

/**
 * Follows one woman from registration to closure, each step by the person who takes it and on its day.
 *
 * Four sessions are planned over four weeks; three of the four are attended, and two more at home without supervision.
 */
export async function walkTheLine(service: TestApp, clock: MovingClock): Promise<WalkedLine> {
  const { siteId } = service;
  const stages: (readonly [string, string])[] = [];
  let referralId = '';
  const after = async (step: string): Promise<void> => {
    const response = await service.as('admin').get(`/api/v1/referrals/${referralId}`);
    stages.push([step, textAt(asRecord(response.body), 'stage')]);
  };
  const at = (path: string): string => `/api/v1/referrals/${referralId}/${path}`;

  const holdSession = async (heldOn: string, isSupervised: boolean, outcome: string): Promise<void> => {
    clock.moveTo(heldOn);
    const mode = isSupervised ? 'centre' : 'home';
    const session = await created(
      service,
      '/api/v1/sessions',
      { siteId, heldOn, mode, isSupervised },
      'admin',
    );
    const register = await service
      .as('admin')
      .put(`/api/v1/sessions/${session}/attendances`, { attendances: [{ referralId, outcome }] });
    if (register.status !== 200) throw new Error(register.text);
  };

  clock.moveTo('2026-04-02');
  const patientId = await created(service, '/api/v1/patients', aPatient(), 'admin');
  const referral = aReferralBody(patientId, siteId, { plannedSessions: 4, plannedWeeks: 4 });
  referralId = await created(service, '/api/v1/referrals', referral, 'admin');
  await after('registered');
  clock.moveTo('2026-04-03');
  await created(service, at('triage'), { decision: 'accepted', decidedOn: '2026-04-03' }, 'clinician');
  await after('triaged');
  clock.moveTo('2026-04-07');
  const offer = { kind: 'assessment', offeredOn: '2026-04-07', appointmentOn: '2026-04-20' };
  await created(service, at('offers'), { ...offer, response: 'accepted' }, 'admin');
  await after('offered an assessment');
  clock.moveTo('2026-04-20');
  const baselineId = await created(service, at('assessments'), baseline(siteId), 'clinician');
  await after('assessed');
  await holdSession('2026-04-27', false, 'attended');
  await after('trained at home');
  await holdSession('2026-05-04', true, 'attended');
  await after('first supervised session');
  await holdSession('2026-05-07', true, 'did-not-attend');
  await holdSession('2026-05-09', false, 'attended');
  clock.moveTo('2026-05-11');
  await created(service, at('offers'), { kind: 'programme', offeredOn: '2026-05-11', response: 'accepted' });
  await diaryWeek(service, at('diary-weeks'), '2026-05-04', 3);
  await holdSession('2026-05-11', true, 'attended');
  await after('third supervised session');
  await holdSession('2026-05-14', true, 'attended');
  await after('last planned session');
  clock.moveTo('2026-05-18');
  await diaryWeek(service, at('diary-weeks'), '2026-05-11', 2);
  clock.moveTo('2026-06-22');
  const dischargeId = await created(service, at('assessments'), discharge(siteId), 'clinician');
  await after('assessed at discharge');
  clock.moveTo('2026-06-24');
  const closure = { closedOn: '2026-06-24', reason: 'completed', exercisePlanGivenOn: '2026-06-22' };
  await created(service, at('closure'), closure, 'clinician');
  await after('closed');
  return { patientId, referralId, baselineId, dischargeId, stages };
}

async function diaryWeek(
  service: TestApp,
  path: string,
  weekStartingOn: string,
  reported: number,
): Promise<void> {
  const body = { weekStartingOn, sessionsReported: reported };
  const response = await service.as('clinician').post(path, body);
  if (response.status !== 201) throw new Error(response.text);
}
