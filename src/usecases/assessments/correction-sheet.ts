import type { Assessment } from '../../domain/assessment/assessment.js';
import type { CorrectionDraft } from '../../domain/draft/draft.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { findAssessment } from '../../storage/assessments/assessments.js';
import { recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { correctionDraftOf } from '../drafts/correction-drafts.js';
import { loadEntrySheet } from './entry-sheet.js';
import type { EntrySheet } from './entry-sheet.js';

/** An assessment of the record that is corrected, with what has been typed of the correction. */
export interface CorrectionSheet {
  readonly assessment: Assessment;
  /** What it is judged on: the sheet of its referral without itself. */
  readonly sheet: EntrySheet;
  readonly draft: CorrectionDraft;
}

/** Opens the sheet on which an assessment is corrected, with the draft if somebody has begun; the trail is told. */
export async function openCorrectionSheet(
  context: Context,
  actor: TeamMember,
  assessmentId: string,
): Promise<Outcome<CorrectionSheet>> {
  const loaded = await loadCorrectionSheet(context, actor, assessmentId);
  if (loaded.kind === 'refused') return loaded;
  const { patient, referral, timepoint } = loaded.value.sheet;
  await recordRead(context, actor, {
    action: 'assessment-sheet-read',
    patientId: patient.id,
    referralId: referral.id,
    subjectId: assessmentId,
    details: { timepoint },
  });
  return loaded;
}

/** The same without telling the trail, for whoever tells it of more. */
export async function loadCorrectionSheet(
  context: Pick<Context, 'db'>,
  actor: TeamMember,
  assessmentId: string,
): Promise<Outcome<CorrectionSheet>> {
  const assessment = await findAssessment(context.db, actor.teamId, assessmentId);
  if (assessment === null) return refused({ code: 'not-found', what: 'assessment' });
  if (assessment.enteredInError !== null) return refused({ code: 'entered-in-error', what: 'assessment' });
  const { referralId, entry } = assessment;
  const sheet = await loadEntrySheet(context, actor, { referralId, timepoint: entry.timepoint });
  if (sheet === null) return refused({ code: 'not-found', what: 'assessment' });
  const assessments = sheet.assessments.filter(({ id }) => id !== assessment.id);
  const draft = await correctionDraftOf(context.db, assessment);
  return done({ assessment, sheet: { ...sheet, assessments }, draft });
}
