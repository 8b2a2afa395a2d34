import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { standingCautions } from '../../domain/safety/standing-cautions.js';
import type { StandingCaution } from '../../domain/safety/standing-cautions.js';
import { versionsOfAssessment } from '../../storage/assessments/assessments.js';
import type { Executor } from '../../storage/connection.js';
import { acknowledgementsOf, insertAcknowledgement } from '../../storage/safety/acknowledgements.js';
import { currentSettings } from '../../storage/settings/settings.js';
import { recordEvent, recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';

/** The cautions of an assessment, each with its acknowledgement. */
export async function listCautions(
  context: Context,
  actor: TeamMember,
  assessmentId: string,
): Promise<Outcome<readonly StandingCaution[]>> {
  const cautions = await cautionsOf(context.db, actor, assessmentId);
  if (cautions === null) return refused({ code: 'not-found', what: 'assessment' });
  await recordRead(context, actor, { action: 'cautions-read', subjectId: assessmentId });
  return done(cautions);
}

/** Puts the member's name to having seen a caution, with what was done about it. It is done once, and never undone. */
export async function acknowledgeCaution(
  context: Context,
  actor: TeamMember,
  assessmentId: string,
  request: { readonly cautionId: string; readonly measureId: string | null; readonly actionTaken: string },
): Promise<Outcome<readonly StandingCaution[]>> {
  return context.db.transaction().execute(async (trx) => {
    const cautions = await cautionsOf(trx, actor, assessmentId);
    if (cautions === null) return refused({ code: 'not-found', what: 'assessment' });
    const caution = cautions.find(
      (each) => each.id === request.cautionId && each.measureId === request.measureId,
    );
    if (caution === undefined || !caution.mustBeAcknowledged) {
      const message = 'The assessment has no caution of this id and measure that asks to be acknowledged.';
      return refused({
        code: 'rules-broken',
        faults: [{ pointer: '/cautionId', code: 'no-such-caution', message }],
      });
    }
    if (caution.acknowledgement !== null) return refused({ code: 'already-acknowledged' });
    await insertAcknowledgement(trx, {
      id: context.newId(),
      assessmentId,
      ...request,
      now: context.clock.now(),
      accountId: actor.accountId,
    });
    const { cautionId, measureId } = request;
    await recordEvent(context, trx, actor, {
      action: 'caution-acknowledged',
      subjectId: assessmentId,
      details: { cautionId, measureId },
    });
    return done((await cautionsOf(trx, actor, assessmentId)) ?? []);
  });
}

/** The cautions that stand in the record beside an assessment; null when it is absent or of another team. */
export async function cautionsOf(
  db: Executor,
  actor: TeamMember,
  assessmentId: string,
): Promise<readonly StandingCaution[] | null> {
  const versions = await versionsOfAssessment(db, actor.teamId, assessmentId);
  if (versions.length === 0) return null;
  const { settings } = await currentSettings(db, actor.teamId);
  return standingCautions(versions, await acknowledgementsOf(db, assessmentId), settings);
}
