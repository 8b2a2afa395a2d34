import { aReferralBody } from './entries.js';
import { movingClock } from './moving-clock.js';
import type { MovingClock } from './moving-clock.js';
import { walkTheLine } from './one-person.js';
import type { WalkedLine } from './one-person.js';
import { aSmallQuarter, released } from './release-service.js';
import { created, givenMergedRecords, givenPatient, givenSession } from './scenario.js';
import { accountIdOf } from './signed-in.js';
import { startApp } from './start-app.js';
import type { TestApp, TestRole } from './start-app.js';

/** The service with somebody whose whole course is recorded. */
export interface FilledService {
  readonly service: TestApp;
  readonly person: WalkedLine;
  readonly clinicianId: string;
  /** Two records of somebody else that were made one. */
  readonly merged: { readonly survivorId: string; readonly mergeId: string };
  /** Made to the commissioner. */
  readonly releaseNumber: number;
  /** A referral that was just registered, of somebody with a long name, and a class. */
  readonly open: { readonly referralId: string; readonly sessionId: string };
}

/** Long, without a space to break at, and written from right to left. */
export const LONG_NAME = {
  familyName: 'الصخرة-العالية-فوق-البحر-الازرق-البعيد-جدا',
  givenName: 'Wilhelmina-Persephone-Marigold-Evangeline',
};

/** A page that is looked at from all sides: who opens it, and its address. */
export interface PageEntry {
  /** Null for somebody who is not signed in. */
  readonly role: TestRole | null;
  readonly path: string | ((filled: FilledService) => string);
  /** The status of the page; 200 unless it is shown with errors. */
  readonly status?: number;
}

/** Every page, each in the states that look different. A new page gets its line here. */
export const EVERY_PAGE: readonly PageEntry[] = [
  { role: null, path: '/sign-in' },
  { role: null, path: '/sign-in?why=kept&next=%2Faccount' },
  { role: null, path: '/invitation/tdi_not-known', status: 404 },
  { role: 'clinician', path: '/no-such-page', status: 404 },
  { role: 'admin', path: '/team/accounts', status: 403 },
  { role: 'admin', path: '/work-list' },
  { role: 'clinician', path: '/work-list' },
  { role: 'admin', path: '/search' },
  { role: 'admin', path: '/classes' },
  { role: 'clinician', path: ({ person }) => `/referrals/${person.referralId}` },
  { role: 'admin', path: ({ person }) => `/referrals/${person.referralId}` },
  { role: 'clinician', path: ({ person }) => `/referrals/${person.referralId}/history` },
  { role: 'admin', path: ({ person }) => `/referrals/${person.referralId}/entered-in-error` },
  { role: 'clinician', path: ({ person }) => `/assessments/${person.dischargeId}/entered-in-error` },
  { role: 'clinician', path: ({ person }) => `/assessments/${person.dischargeId}/restoration` },
  { role: 'admin', path: '/referrals/new' },
  { role: 'clinician', path: ({ open }) => `/referrals/${open.referralId}` },
  { role: 'admin', path: ({ open }) => `/referrals/${open.referralId}` },
  { role: 'admin', path: ({ open }) => `/referrals/${open.referralId}/history` },
  { role: 'clinician', path: ({ open }) => `/referrals/${open.referralId}/triage` },
  { role: 'admin', path: ({ open }) => `/referrals/${open.referralId}/offers` },
  { role: 'admin', path: ({ person }) => `/referrals/${person.referralId}/offers` },
  { role: 'clinician', path: ({ open }) => `/referrals/${open.referralId}/planned-start` },
  { role: 'clinician', path: ({ open }) => `/referrals/${open.referralId}/assessments/baseline` },
  { role: 'clinician', path: ({ person }) => `/referrals/${person.referralId}/assessments/discharge` },
  {
    role: 'clinician',
    path: ({ person }) =>
      `/referrals/${person.referralId}/assessments/discharge/recorded/${person.dischargeId}`,
  },
  { role: 'clinician', path: ({ person }) => `/assessments/${person.dischargeId}/correction` },
  { role: 'clinician', path: ({ person }) => `/assessments/${person.dischargeId}/history` },
  { role: 'admin', path: ({ open }) => `/referrals/${open.referralId}/closing` },
  { role: 'clinician', path: ({ open }) => `/referrals/${open.referralId}/closing` },
  { role: 'clinician', path: ({ person }) => `/referrals/${person.referralId}/closing` },
  { role: 'clinician', path: ({ person }) => `/referrals/${person.referralId}/letters/gp` },
  { role: 'clinician', path: ({ person }) => `/referrals/${person.referralId}/letters/patient` },
  { role: 'clinician', path: ({ person }) => `/referrals/${person.referralId}/figures` },
  { role: 'admin', path: '/classes/new' },
  { role: 'admin', path: ({ open }) => `/classes/${open.sessionId}` },
  { role: 'admin', path: ({ open }) => `/classes/${open.sessionId}/entered-in-error` },
  { role: 'lead', path: '/imports' },
  { role: 'lead', path: '/report' },
  { role: 'lead', path: '/report?period=2026-27-Q1' },
  { role: 'lead', path: '/report/chapters/breakdowns/funnel.referred?period=2026-27-Q1' },
  { role: 'lead', path: '/report/chapters/trend?period=2026-27-Q1' },
  { role: 'lead', path: '/report/figures/uptake?period=2026-27-Q1' },
  { role: 'lead', path: '/report/entries-in-error?period=2026-27-Q1' },
  { role: 'clinician', path: ({ person }) => `/assessments/${person.baselineId}/cautions` },
  { role: 'lead', path: ({ person }) => `/patients/${person.patientId}/merge` },
  {
    role: 'lead',
    path: ({ person, merged }) => `/patients/${person.patientId}/merge?with=${merged.survivorId}`,
  },
  { role: 'lead', path: ({ merged }) => `/patients/${merged.survivorId}/merges` },
  {
    role: 'lead',
    path: ({ merged }) => `/patients/${merged.survivorId}/merges/${merged.mergeId}/undo`,
  },
  { role: 'lead', path: '/releases' },
  { role: 'lead', path: '/releases/draft' },
  { role: 'commissioner', path: '/releases' },
  { role: 'commissioner', path: ({ releaseNumber }) => `/releases/${releaseNumber}` },
  { role: 'clinician', path: '/account' },
  { role: 'clinician', path: '/account/passphrase' },
  { role: 'clinician', path: '/account/second-factor' },
  { role: 'clinician', path: '/account/tokens/new' },
  { role: 'lead', path: '/team/accounts' },
  { role: 'lead', path: '/team/accounts/new' },
  { role: 'lead', path: ({ clinicianId }) => `/team/accounts/${clinicianId}` },
  { role: 'lead', path: '/team/tokens' },
  { role: 'lead', path: '/team/settings' },
  { role: 'lead', path: '/team/settings/history' },
  { role: 'lead', path: '/team/audit-trail' },
  { role: 'lead', path: '/team/export' },
  { role: 'lead', path: '/team/audit-trail?from-day=31&from-month=6&from-year=2026', status: 422 },
  { role: 'clinician', path: '/definitions/measures' },
  { role: 'clinician', path: '/definitions/measures/incremental-shuttle-walk-distance' },
  { role: 'clinician', path: '/definitions/equations' },
  { role: 'clinician', path: '/definitions/sources' },
  { role: 'clinician', path: '/definitions/indicators' },
];

/** Starts the service with the record of one person. */
export async function startFilled(): Promise<FilledService> {
  const clock = movingClock('2026-04-01');
  const service = await startApp(clock);
  const person = await walkTheLine(service, clock);
  const merged = await givenMergedRecords(service);
  const releaseNumber = await releaseOfMany(service, clock);
  const open = await somebodyOfLongName(service);
  const clinicianId = await accountIdOf(service, 'clinician');
  return { service, person, clinicianId, merged, releaseNumber, open };
}

async function somebodyOfLongName(service: TestApp): Promise<FilledService['open']> {
  const patientId = await givenPatient(service, LONG_NAME);
  const body = aReferralBody(patientId, service.siteId);
  const referralId = await created(service, '/api/v1/referrals', body);
  return { referralId, sessionId: await givenSession(service) };
}

/** A quarter of another year than the rest, with much shown in it and some hidden. */
async function releaseOfMany(service: TestApp, clock: MovingClock): Promise<number> {
  const today = clock.today();
  clock.moveTo('2027-06-30');
  await aSmallQuarter(service, 2027);
  clock.moveTo('2027-08-01');
  const number = await released(service, { period: '2027-28-Q1', asAt: '2027-08-01' });
  clock.moveTo(today);
  return number;
}

/** The address of a page. */
export function addressOf({ path }: PageEntry, filled: FilledService): string {
  return typeof path === 'string' ? path : path(filled);
}

/** A name for a page in lists and of pictures. @example 'lead team-settings' */
export function nameOf({ role, path }: PageEntry): string {
  const text = typeof path === 'string' ? path : path(NAMED);
  return `${role ?? 'nobody'} ${text.replaceAll(/[^a-z0-9]+/gi, '-').replaceAll(/^-|-$/g, '')}`;
}

const NAMED = {
  person: { patientId: 'one', referralId: 'one', baselineId: 'one', dischargeId: 'one' },
  clinicianId: 'one',
  merged: { survivorId: 'two', mergeId: 'one' },
  releaseNumber: 1,
  open: { referralId: 'open', sessionId: 'one' },
} as FilledService;
