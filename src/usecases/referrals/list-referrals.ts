import type { EntryFilter } from '../../domain/history/entered-in-error.js';
import { IN_ERROR_STAGE, stageOf } from '../../domain/pathway/stage.js';
import type { ShownStage, Stage } from '../../domain/pathway/stage.js';
import type { Referral } from '../../domain/referral/referral.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { loadReferralFacts } from '../../storage/facts/referral-facts.js';
import { pageOf } from '../../storage/page.js';
import type { Page, PageRequest, Position } from '../../storage/page.js';
import { findReferral, findReferrals, listReferralPositions } from '../../storage/referrals/referrals.js';
import { currentSettings } from '../../storage/settings/settings.js';
import { recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';

/** A referral with the stage that its facts put it in. */
export interface StagedReferral {
  readonly referral: Referral;
  readonly stage: ShownStage;
}

/** What a list of referrals is narrowed to. */
export interface ReferralListFilter {
  readonly siteId: string | null;
  readonly patientId: string | null;
  readonly stage: Stage | null;
  /** Those entered in error have no stage: a list by stage shows none of them. */
  readonly entries?: EntryFilter;
}

/** One referral with its stage. */
export async function getReferral(
  context: Context,
  actor: TeamMember,
  id: string,
): Promise<Outcome<StagedReferral>> {
  const referral = await findReferral(context.db, actor.teamId, id);
  if (referral === null) return refused({ code: 'not-found', what: 'referral' });
  await recordRead(context, actor, {
    action: 'referral-read',
    patientId: referral.patientId,
    referralId: id,
  });
  return done(await withStage(context, actor, referral));
}

/** A referral that is at hand, with its stage. */
export async function withStage(
  context: Context,
  actor: TeamMember,
  referral: Referral,
): Promise<StagedReferral> {
  if (referral.enteredInError !== null) return { referral, stage: IN_ERROR_STAGE };
  const stages = await stagesOf(context, actor, [referral.id]);
  return { referral, stage: stages.get(referral.id) ?? 'awaiting-triage' };
}

/**
 * The team's referrals, latest receipt first.
 *
 * The stage is derived, so a list by stage reads on until a page is full; only open referrals are read for an open stage.
 */
export async function listReferrals(
  context: Context,
  actor: TeamMember,
  filter: ReferralListFilter,
  request: PageRequest,
): Promise<Page<StagedReferral>> {
  const isClosed = filter.stage === null ? null : filter.stage === 'closed';
  const matches: { readonly position: Position; readonly stage: ShownStage }[] = [];
  let after = request.after;
  const batch = filter.stage === null ? request.limit + 1 : BATCH;
  while (matches.length <= request.limit) {
    const positions = await listReferralPositions(
      context.db,
      actor.teamId,
      { siteId: filter.siteId, patientId: filter.patientId, isClosed, entries: filter.entries ?? 'standing' },
      { after, count: batch },
    );
    const stages = await stagesOf(
      context,
      actor,
      positions.map((position) => position.id),
    );
    for (const position of positions) {
      const stage = position.isInError ? IN_ERROR_STAGE : stages.get(position.id);
      if (stage !== undefined && (filter.stage === null || stage === filter.stage))
        matches.push({ position, stage });
    }
    after = positions.at(-1) ?? null;
    if (positions.length < batch) break;
  }
  const page = pageOf(matches, request, (match) => match.position);
  const referrals = await findReferrals(
    context.db,
    actor.teamId,
    page.rows.map((match) => match.position.id),
  );
  const rows = page.rows.flatMap(({ position, stage }) => {
    const referral = referrals.get(position.id);
    return referral === undefined ? [] : [{ referral, stage }];
  });
  const referralIds = rows.map(({ referral }) => referral.id);
  await recordRead(context, actor, { action: 'referrals-listed', details: { referralIds } });
  return { rows, next: page.next };
}

const BATCH = 200;

async function stagesOf(
  context: Context,
  actor: TeamMember,
  ids: readonly string[],
): Promise<ReadonlyMap<string, Stage>> {
  const { settings } = await currentSettings(context.db, actor.teamId);
  const facts = await loadReferralFacts(context.db, actor.teamId, ids, settings);
  const today = context.clock.today();
  return new Map(
    facts.flatMap((fact): readonly (readonly [string, Stage])[] => {
      const stage = stageOf(fact, today);
      return stage === null ? [] : [[fact.referralId, stage]];
    }),
  );
}
