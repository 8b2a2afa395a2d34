import type { CourseDraft, Sourced } from '../../domain/imports/course-draft.js';
import type { ImportedPart } from '../../domain/imports/import-record.js';
import type { CourseFault } from '../../domain/imports/judgement.js';
import type { Mapping } from '../../domain/imports/mapping.js';
import type { Refusal } from '../../domain/refusal/refusal.js';
import type { Executor } from '../../storage/connection.js';
import { undoneUnless, withinTransaction } from '../../storage/within-transaction.js';
import type { Context, TeamMember } from '../context.js';
import { assessmentStep, closureStep, sessionsStep, triageStep } from './course-steps.js';
import type { Step, StepResult } from './course-steps.js';
import { findOrRegister } from './find-or-register.js';
import { faultsAtColumns } from './faults-at-columns.js';

/** What became of a course of a sheet: brought in, in the record already, or refused with nothing of it written. */
export type AppliedCourse = {
  /** Whose course it is; null where it did not come to that. */
  readonly patientId: string | null;
} & (
  | { readonly kind: 'new' | 'added' | 'already'; readonly parts: readonly ImportedPart[] }
  | { readonly kind: 'refused'; readonly faults: readonly CourseFault[]; readonly isUnusual: boolean }
);

/** How a sheet is brought in. */
export interface ApplyOptions {
  readonly mapping: Mapping;
  /** Values outside the usual range are taken as checked. */
  readonly confirmsUnusual: boolean;
}

/**
 * Brings a course of a sheet into the record by the same use cases as any other entry, the whole of it or nothing.
 *
 * What is in the record already and says the same is passed over; what says something else is never overwritten, but refused.
 */
export async function applyCourse(
  context: Context,
  actor: TeamMember,
  trx: Executor,
  course: CourseDraft,
  options: ApplyOptions,
): Promise<AppliedCourse> {
  const within: Context = { ...context, db: withinTransaction(trx) };
  return undoneUnless(
    trx,
    () => applyParts(within, actor, trx, course, options),
    (applied) => applied.kind !== 'refused',
  );
}

async function applyParts(
  context: Context,
  actor: TeamMember,
  trx: Executor,
  course: CourseDraft,
  options: ApplyOptions,
): Promise<AppliedCourse> {
  const found = await findOrRegister(context, actor, trx, course);
  const { patientId } = found;
  const refuse = (part: Sourced<object> | null, refusal: Refusal): AppliedCourse => {
    const { faults, isUnusual } = faultsAtColumns(refusal, part, options.mapping);
    return { kind: 'refused', patientId, faults, isUnusual };
  };
  if (found.kind === 'refused') return refuse(found.part, found.refusal);
  const { referralId } = found;
  const rowNumber = course.rowNumbers[0] ?? 0;
  const parts: ImportedPart[] = found.registered.map((each) => ({ ...each, rowNumber }));
  for (const step of stepsOf(course, options)) {
    const result: StepResult = await step.run(context, actor, trx, referralId);
    if (result.kind === 'refused') return refuse(step.part, result.refusal);
    if (result.kind === 'written') parts.push({ kind: step.kind, subjectId: result.subjectId, rowNumber });
  }
  if (parts.length === 0) return { kind: 'already', patientId, parts };
  return {
    kind: found.registered.some(({ kind }) => kind === 'referral') ? 'new' : 'added',
    patientId,
    parts,
  };
}

/** In the order of the pathway, so that each rule finds what came before. */
function stepsOf(course: CourseDraft, { confirmsUnusual }: ApplyOptions): readonly Step[] {
  return [
    ...(course.triage === null ? [] : [triageStep(course.triage)]),
    ...course.assessments
      .filter(({ part }) => part.timepoint !== 'follow-up')
      .map((assessment) => assessmentStep(assessment, confirmsUnusual)),
    ...(course.sessions === null ? [] : [sessionsStep(course.sessions)]),
    ...(course.closure === null ? [] : [closureStep(course.closure)]),
    ...course.assessments
      .filter(({ part }) => part.timepoint === 'follow-up')
      .map((assessment) => assessmentStep(assessment, confirmsUnusual)),
  ];
}
