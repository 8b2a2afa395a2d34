import type { Assessment, AssessmentEntry } from '../../domain/assessment/assessment.js';
import { runningFigures } from '../../domain/assessment/running-figures.js';
import type { RunningFigures } from '../../domain/assessment/running-figures.js';
import type { Draft } from '../../domain/draft/draft.js';
import type { Fraction } from '../../domain/exact/fraction.js';
import type { Patient } from '../../domain/patient/patient.js';
import type { Referral } from '../../domain/referral/referral.js';
import type { Timepoint } from '../../domain/referral/closed-sets.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Fault, Outcome } from '../../domain/refusal/refusal.js';
import { assessmentsOfReferral } from '../../storage/assessments/assessments.js';
import { findPatient } from '../../storage/patients/patients.js';
import { findReferral } from '../../storage/referrals/referrals.js';
import { currentSettings } from '../../storage/settings/settings.js';
import { recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { draftOf } from '../drafts/end-draft.js';
import type { DraftPlace } from '../drafts/keep-draft.js';
import { baselineValues, checkEntry } from './store-version.js';

/** What stands around an assessment that is typed: whose it is, and what was measured before. */
export interface EntrySheet {
  readonly timepoint: Timepoint;
  readonly patient: Patient;
  readonly referral: Referral;
  /** The current assessments of the referral, earliest first. */
  readonly assessments: readonly Assessment[];
  /** Baseline value by measure id; empty where the baseline itself is typed. */
  readonly baseline: ReadonlyMap<string, Fraction>;
  readonly draft: Draft;
}

/** Opens the sheet of an assessment, with the draft of it if somebody has begun; the trail is told. */
export async function openEntrySheet(
  context: Context,
  actor: TeamMember,
  place: DraftPlace,
): Promise<Outcome<EntrySheet>> {
  const sheet = await loadEntrySheet(context, actor, place);
  if (sheet === null) return refused({ code: 'not-found', what: 'referral' });
  await recordRead(context, actor, {
    action: 'assessment-sheet-read',
    patientId: sheet.patient.id,
    referralId: place.referralId,
    details: { timepoint: place.timepoint },
  });
  return done(sheet);
}

/** The same without telling the trail, for whoever tells it of more. */
export async function loadEntrySheet(
  { db }: Pick<Context, 'db'>,
  actor: TeamMember,
  { referralId, timepoint }: DraftPlace,
): Promise<EntrySheet | null> {
  const referral = await findReferral(db, actor.teamId, referralId);
  const patient = referral === null ? null : await findPatient(db, actor.teamId, referral.patientId);
  if (referral === null || patient === null) return null;
  const assessments = await assessmentsOfReferral(db, referralId);
  const baseline = timepoint === 'baseline' ? new Map<string, Fraction>() : baselineValues(assessments);
  const draft = await draftOf(db, referralId, timepoint);
  return { timepoint, patient, referral, assessments, baseline, draft };
}

/** What is known of an entry before it is recorded. */
export interface EntryPreview extends RunningFigures {
  readonly faults: readonly Fault[];
  /** Unusual values that must be confirmed. */
  readonly queries: readonly Fault[];
}

/** Checks an entry as it stands and works out its figures; nothing is stored. */
export async function previewEntry(
  context: Context,
  actor: TeamMember,
  sheet: EntrySheet,
  entry: AssessmentEntry,
): Promise<EntryPreview> {
  const { patient, referral, assessments, baseline } = sheet;
  const course = {
    bornOn: patient.bornOn,
    receivedOn: referral.receivedOn,
    closedOn: referral.closure?.closedOn ?? null,
  };
  const checked = await checkEntry(context, actor, context.db, { entry, course, others: assessments });
  const found = checked.kind === 'refused' && 'faults' in checked.refusal ? checked.refusal.faults : [];
  const { settings } = await currentSettings(context.db, actor.teamId);
  const figures = runningFigures(entry, {
    sexAtBirth: patient.sexAtBirth,
    bornOn: patient.bornOn,
    diagnosis: referral.diagnosis,
    knownHeightCm: latest(assessments, entry, 'heightCm'),
    knownWeightKg: latest(assessments, entry, 'weightKg'),
    settings,
    baseline,
  });
  return {
    ...figures,
    faults: found.filter(({ code }) => code !== 'please-check'),
    queries: found.filter(({ code }) => code === 'please-check'),
  };
}

/** The latest that an earlier assessment has: few teams measure height twice in eight weeks. */
function latest(
  assessments: readonly Assessment[],
  { assessedOn }: AssessmentEntry,
  field: 'heightCm' | 'weightKg',
): number | null {
  const known = assessments.filter(({ entry }) => entry.assessedOn <= assessedOn && entry[field] !== null);
  return known.at(-1)?.entry[field] ?? null;
}
