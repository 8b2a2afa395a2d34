import type { Role } from '../domain/account/role.js';

/** Who may call an operation: anybody, everybody who is signed in, or the roles named. */
export type Access = 'anybody' | 'signed-in' | readonly Role[];

const TEAM: readonly Role[] = ['admin', 'clinician', 'lead'];
const CLINICAL: readonly Role[] = ['clinician', 'lead'];
const LEAD: readonly Role[] = ['lead'];
/** Releases: a lead those of the team, a commissioner those made to it. */
const LEAD_AND_COMMISSIONER: readonly Role[] = ['lead', 'commissioner'];

/** The one table that decides, by operation id. An operation that is not in it is open to nobody. */
export const ACCESS = {
  registerPatient: TEAM,
  listPatients: TEAM,
  searchPatients: TEAM,
  getPatient: TEAM,
  correctPatient: TEAM,
  mergePatients: LEAD,
  undoMerge: LEAD,
  listMerges: TEAM,
  registerReferral: TEAM,
  takeInReferralFhir: TEAM,
  listReferrals: TEAM,
  getReferral: TEAM,
  correctReferral: TEAM,
  triageReferral: CLINICAL,
  correctTriage: CLINICAL,
  recordOffer: TEAM,
  correctOffer: TEAM,
  closeReferral: TEAM,
  correctClosure: TEAM,
  markReferralInError: TEAM,
  restoreReferral: TEAM,
  markOfferInError: TEAM,
  restoreOffer: TEAM,
  markSessionInError: TEAM,
  restoreSession: TEAM,
  markAssessmentInError: CLINICAL,
  restoreAssessment: CLINICAL,
  recordAssessment: CLINICAL,
  listAssessments: CLINICAL,
  correctAssessment: CLINICAL,
  getPatientHistory: TEAM,
  getReferralHistory: TEAM,
  getSessionHistory: TEAM,
  getSettingsHistory: LEAD,
  getAssessmentHistory: CLINICAL,
  getAssessment: CLINICAL,
  getSession: TEAM,
  listExpectedPeople: TEAM,
  listDrafts: CLINICAL,
  readDraft: CLINICAL,
  saveDraft: CLINICAL,
  discardDraft: CLINICAL,
  getOutcomes: CLINICAL,
  getLetter: CLINICAL,
  getCourseFhir: CLINICAL,
  listCautions: CLINICAL,
  acknowledgeCaution: CLINICAL,
  recordDiaryWeek: CLINICAL,
  readDiary: CLINICAL,
  readWorkList: TEAM,
  getWorkListCsv: TEAM,
  getRegisterCsv: TEAM,
  holdSession: TEAM,
  correctSession: TEAM,
  listSessions: TEAM,
  recordAttendances: TEAM,
  getQuarterlyReport: LEAD,
  getQuarterlyReportText: LEAD,
  getQuarterlyReportCsv: LEAD,
  getQuarterlyReportSpreadsheet: LEAD,
  getQuarterlyReportPdf: LEAD,
  listFigureMembers: LEAD,
  listEntriesInError: LEAD,
  listFiguresOfReferral: CLINICAL,
  previewRelease: LEAD,
  makeRelease: LEAD,
  withdrawRelease: LEAD,
  listReleases: LEAD_AND_COMMISSIONER,
  getRelease: LEAD_AND_COMMISSIONER,
  getReleaseJson: LEAD_AND_COMMISSIONER,
  getReleaseCsv: LEAD_AND_COMMISSIONER,
  getReleaseSpreadsheet: LEAD_AND_COMMISSIONER,
  getReleasePdf: LEAD_AND_COMMISSIONER,
  getReleaseFhir: LEAD_AND_COMMISSIONER,
  listAuditEvents: LEAD,
  listRecordsDue: LEAD,
  deletePatientRecord: LEAD,
  listAccounts: LEAD,
  inviteAccount: LEAD,
  getAccount: LEAD,
  changeAccount: LEAD,
  renewInvitation: LEAD,
  resetSecondFactor: LEAD,
  signOutAccount: LEAD,
  listTokens: LEAD,
  createToken: LEAD,
  revokeToken: LEAD,
  listImportColumns: LEAD,
  takeImportFile: LEAD,
  listImports: LEAD,
  getImport: LEAD,
  getRefusedRows: LEAD,
  chooseImportColumns: LEAD,
  commitImport: LEAD,
  discardImport: LEAD,
  undoImport: LEAD,
  exportRecordZip: LEAD,
  exportRecordJson: LEAD,
  exportAnalysis: LEAD,
  readSettings: LEAD,
  changeSettings: LEAD,
  listSites: TEAM,
  listCommissioners: TEAM,
  listMeasures: 'signed-in',
  getMeasure: 'signed-in',
  listPredictionEquations: 'signed-in',
  listIndicators: 'signed-in',
  listNorms: 'signed-in',
  listSources: 'signed-in',
  getSafetyChecklist: 'signed-in',
  calculatePrediction: 'signed-in',
  calculateScore: 'signed-in',
  calculateChange: 'signed-in',
  getHealth: 'anybody',
  getOpenApi: 'anybody',
} as const satisfies Readonly<Record<string, Access>>;

/**
 * Whether somebody may call an operation.
 *
 * @param role null for somebody who is not signed in
 * @example mayCall('commissioner', 'getPatient') -> false
 */
export function mayCall(role: Role | null, operationId: string): boolean {
  return isOpenTo(role, ACCESS, operationId);
}

/**
 * Whether somebody may open a page or send its form.
 *
 * @param role null for somebody who is not signed in
 */
export function mayOpen(role: Role | null, pageId: string): boolean {
  return isOpenTo(role, PAGE_ACCESS, pageId);
}

function isOpenTo(role: Role | null, table: Readonly<Record<string, Access>>, id: string): boolean {
  const access = Object.hasOwn(table, id) ? table[id] : undefined;
  if (access === undefined) return false;
  if (access === 'anybody') return true;
  if (role === null) return false;
  return access === 'signed-in' || access.includes(role);
}

/** The same for pages, by page id. A page that is not in it is open to nobody. */
export const PAGE_ACCESS = {
  'page:home': 'anybody',
  'page:releases': LEAD_AND_COMMISSIONER,
  'page:release': LEAD_AND_COMMISSIONER,
  'page:release-draft': LEAD,
  'page:release-withdrawal': LEAD,
  'page:sign-in': 'anybody',
  'page:sign-in-code': 'anybody',
  'page:sign-in-provider': 'anybody',
  'page:invitation': 'anybody',
  'page:sign-out': 'anybody',
  'page:unsent-form': 'signed-in',
  'page:account': 'signed-in',
  'page:passphrase': 'signed-in',
  'page:second-factor': 'signed-in',
  'page:work-list': TEAM,
  'page:assessment': CLINICAL,
  'page:report': LEAD,
  'page:report-chapter': LEAD,
  'page:report-figure': LEAD,
  'page:report-entries-in-error': LEAD,
  'page:report-file': LEAD,
  'page:closing': TEAM,
  'page:letter': CLINICAL,
  'page:own-tokens': 'signed-in',
  'page:sign-out-everywhere': 'signed-in',
  'page:search': TEAM,
  'page:classes': TEAM,
  'page:new-class': TEAM,
  'page:class': TEAM,
  'page:definitions': 'signed-in',
  'page:referral': TEAM,
  'page:figures-of-referral': CLINICAL,
  'page:course-file': CLINICAL,
  'page:import': LEAD,
  'page:export': LEAD,
  'page:team': LEAD,
  'page:accounts': LEAD,
  'page:tokens': LEAD,
  'page:audit-trail': LEAD,
  'page:settings': LEAD,
  'page:register-referral': TEAM,
  'page:triage': CLINICAL,
  'page:offers': TEAM,
  'page:planned-start': TEAM,
  'page:referral-in-error': TEAM,
  'page:assessment-in-error': CLINICAL,
  'page:offer-in-error': TEAM,
  'page:class-in-error': TEAM,
  'page:merge': LEAD,
  'page:cautions': CLINICAL,
  'page:assessment-correction': CLINICAL,
  'page:assessment-history': CLINICAL,
} as const satisfies Readonly<Record<string, Access>>;

export type PageId = keyof typeof PAGE_ACCESS;

/** Operations and pages that count over the team's whole record, or take it out: half a sheet of it would count as whole. */
const READING_FIGURES: ReadonlySet<string> = new Set([
  'getQuarterlyReport',
  'getQuarterlyReportText',
  'getQuarterlyReportCsv',
  'getQuarterlyReportSpreadsheet',
  'getQuarterlyReportPdf',
  'listFigureMembers',
  'listFiguresOfReferral',
  'previewRelease',
  'makeRelease',
  'exportRecordZip',
  'exportRecordJson',
  'exportAnalysis',
  'page:report',
  'page:report-chapter',
  'page:report-figure',
  'page:report-file',
  'page:release-draft',
  'page:figures-of-referral',
  'page:export',
] satisfies readonly (keyof typeof ACCESS | PageId)[]);

/** Whether an operation or a page counts over the whole record of the team, or takes it out. */
export function readsFigures(id: string): boolean {
  return READING_FIGURES.has(id);
}

/** Whether an operation is open to people who are not signed in. */
export function isPublic(operationId: string): boolean {
  return mayCall(null, operationId);
}
